package meadcell.batch.freeze;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;
import meadcell.batch.recalc.Recalculation;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;

/**
 * Puts frozen formulas back, where nothing but readings was changed since, and computes them again.
 */
public final class Thawing {
  /** Relative; programs differ in the last digit that they store. */
  private static final double ROUNDING = 1e-13;

  private static final String STAYS = "; its formula stays on the sheet \"Meadcell formulas\".";

  /**
   * What thawing did.
   *
   * @param isChanged whether the workbook now differs from what it was
   */
  public record Thawed(Report report, boolean isChanged) {}

  private final Book book;
  private final Catalogue catalogue;
  private final Addresses addresses;
  private final Moves moves;
  private final boolean refill;
  private final Report computed = new Report();
  private final Report report = new Report(computed.notes());
  private final Map<String, Value> thawed = new LinkedHashMap<>();
  private boolean forgotten;

  /**
   * A thawing of one workbook.
   *
   * @param refill whether formulas return to cells that were emptied, too
   */
  public Thawing(Book book, Catalogue catalogue, boolean refill) {
    this.book = book;
    this.catalogue = catalogue;
    this.addresses = new Addresses(book);
    this.moves = new Moves(addresses);
    this.refill = refill;
  }

  /** Thaws the workbook in memory. */
  public Thawed run() {
    Optional<FormulaSheet> kept = FormulaSheet.of(book, catalogue);
    List<FormulaSheet.Line> lines = kept.map(FormulaSheet::lines).orElse(List.of());
    if (lines.isEmpty()) {
      report.remark(Report.Code.FILE, "", "", "", "No frozen formulas are kept in this workbook.");
      return new Thawed(report, false);
    }
    Map<String, List<FormulaSheet.Line>> sheets = new LinkedHashMap<>();
    for (FormulaSheet.Line line : lines) {
      sheets.computeIfAbsent(line.frozen().sheet(), key -> new ArrayList<>()).add(line);
    }
    Landmarks landmarks = new Landmarks(book, kept.get().frozen(lines));
    Map<String, Optional<String>> obstacles = new HashMap<>(); // all before the first is thawed
    sheets.forEach((name, own) -> obstacles.put(name, obstacle(own, landmarks)));
    sheets.forEach((name, own) -> thaw(own, obstacles.get(name), kept.get()));
    if (!thawed.isEmpty()) {
      new Recalculation(book, catalogue, computed).run();
      computed.remarks().forEach(report::remark);
      tellChanges();
    }
    return new Thawed(report, report.isChanged() || forgotten);
  }

  private BookSheet sheet(String name) {
    return book.sheets().get(addresses.sheet(name).orElseThrow());
  }

  /** Why nothing on a sheet can be thawed. */
  private Optional<String> obstacle(List<FormulaSheet.Line> lines, Landmarks landmarks) {
    String name = lines.get(0).frozen().sheet();
    Optional<Integer> index = addresses.sheet(name);
    if (index.isEmpty()) {
      return Optional.of("the sheet is not there any more under this name");
    }
    return lines.stream()
        .filter(line -> !isBack(line.frozen()))
        .flatMap(line -> moves.why(line, index.get(), landmarks).stream())
        .findFirst()
        .map(reason -> "rows or columns were moved (" + reason + ")");
  }

  private CellContent content(Frozen frozen) {
    return sheet(frozen.sheet()).content(frozen.place());
  }

  /** Whether the formula stands in its place again. */
  private boolean isBack(Frozen frozen) {
    String formula = content(frozen).formula();
    return formula != null && formula.replace(" ", "").equals(frozen.formula().replace(" ", ""));
  }

  private void thaw(List<FormulaSheet.Line> lines, Optional<String> obstacle, FormulaSheet kept) {
    Map<String, List<FormulaSheet.Line>> units = new LinkedHashMap<>();
    for (FormulaSheet.Line line : lines) {
      Frozen frozen = line.frozen();
      if (addresses.sheet(frozen.sheet()).isPresent() && isBack(frozen)) {
        kept.clear(line);
        forgotten = true;
        continue;
      }
      String unit = frozen.array().isEmpty() ? frozen.place().a1() : frozen.array();
      units.computeIfAbsent(unit, key -> new ArrayList<>()).add(line);
    }
    for (List<FormulaSheet.Line> unit : units.values()) {
      if (obstacle.isPresent()) {
        unit.forEach(line -> leave(line.frozen(), "was not thawed, because " + obstacle.get()));
      } else if (unit.stream().allMatch(line -> left(line.frozen()).isEmpty())) {
        putBack(unit.stream().map(FormulaSheet.Line::frozen).toList());
        unit.forEach(kept::clear);
      } else {
        unit.forEach(line -> leave(line.frozen()));
      }
    }
  }

  /** Why a cell is left; nothing if its formula can return. */
  private Optional<String> left(Frozen frozen) {
    CellContent now = content(frozen);
    if (now.isFormula()) {
      return Optional.of("holds another formula now");
    }
    if (isSame(now.value(), frozen.gave()) || now.isBlank() && refill) {
      return Optional.empty();
    }
    return Optional.of(
        now.isBlank()
            ? "was emptied (--refill-empty puts the formula back)"
            : "holds " + now.value() + " now, where the formula gave " + frozen.gave());
  }

  private static boolean isSame(Value now, Value gave) {
    if (now instanceof Value.Number a && gave instanceof Value.Number b) {
      double difference = Math.abs(a.number() - b.number());
      return difference <= ROUNDING * Math.abs(b.number());
    }
    return now.toString().equals(gave.toString());
  }

  private void leave(Frozen frozen) {
    leave(frozen, left(frozen).orElse("was left, because other cells that it fills were changed"));
  }

  private void leave(Frozen frozen, String why) {
    report.remark(
        Report.Code.NOT_THAWED, frozen.sheet(), frozen.place().a1(), frozen.formula(), why + STAYS);
  }

  /** Puts back a formula, or one that fills several cells. */
  private void putBack(List<Frozen> cells) {
    Frozen first = cells.get(0);
    BookSheet sheet = sheet(first.sheet());
    cells.forEach(cell -> thawed.put(cell.sheet() + "!" + cell.place(), content(cell).value()));
    if (first.array().isEmpty()) {
      sheet.putFormula(first.place(), first.formula());
    } else {
      String[] corners = first.array().split(":", 2);
      sheet.putArray(new Span(Place.of(corners[0]), Place.of(corners[1])), first.formula());
    }
    cells.forEach(cell -> sheet.putValue(cell.place(), cell.gave()));
  }

  private void tellChanges() {
    for (Map.Entry<String, Value> cell : thawed.entrySet()) {
      int end = cell.getKey().lastIndexOf('!');
      String name = cell.getKey().substring(0, end);
      Place place = Place.of(cell.getKey().substring(end + 1));
      CellContent now = sheet(name).content(place);
      report.changed(
          Report.Change.ofFormula(name, place, now.formula(), cell.getValue(), now.value()));
    }
    computed.changes().stream()
        .filter(change -> !thawed.containsKey(change.sheet() + "!" + change.cell()))
        .forEach(report::changed);
  }
}
