package meadcell.batch.calculation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Refusal;
import org.apache.poi.ss.formula.functions.FreeRefFunction;
import org.apache.poi.ss.formula.udf.UDFFinder;

/**
 * Every function of a catalogue as POI's evaluator finds it: by its name in any case, also with
 * {@code _xll.} before. One instance serves one workbook and keeps the refusals met in it.
 */
public final class PoiFunctions implements UDFFinder {

  private record Cell(int sheet, int row, int column) {}

  /** A refused call and the cell that made it. */
  public record Refused(int sheet, int row, int column, String function, Refusal refusal) {}

  private final Catalogue catalogue;
  private final Proven proven;
  private final Map<FunctionSpec, PoiFunction> adapters = new HashMap<>();
  private final Map<String, PoiFunction> found = new HashMap<>();
  private final Map<Cell, List<Refused>> refused = new LinkedHashMap<>();

  public PoiFunctions(Catalogue catalogue) {
    this(catalogue, Proven.TABLE);
  }

  /** The same by another table of what is proven of the spreadsheet's own functions. */
  PoiFunctions(Catalogue catalogue, Proven proven) {
    this.catalogue = catalogue;
    this.proven = proven;
  }

  Proven proven() {
    return proven;
  }

  public Catalogue catalogue() {
    return catalogue;
  }

  @Override
  public FreeRefFunction findFunction(String name) {
    PoiFunction known = found.get(name);
    if (known == null && catalogue.find(name).isPresent()) {
      known =
          adapters.computeIfAbsent(catalogue.get(name), spec -> new PoiFunction(spec, this::add));
      found.put(name, known);
    }
    return known;
  }

  private void add(Refused call) {
    Cell cell = new Cell(call.sheet, call.row, call.column);
    refused.computeIfAbsent(cell, key -> new ArrayList<>(1)).add(call);
  }

  /** The refusals met in one cell, in order. */
  List<Refused> refusedIn(int sheet, int row, int column) {
    return refused.getOrDefault(new Cell(sheet, row, column), List.of());
  }

  /** The refusals since the last call of this method, cell by cell. */
  public List<Refused> takeRefused() {
    List<Refused> taken = refused.values().stream().flatMap(List::stream).toList();
    refused.clear();
    return taken;
  }

  /** Forgets remembered array results; needed when cells have changed. */
  public void forget() {
    adapters.values().forEach(PoiFunction::forget);
  }
}
