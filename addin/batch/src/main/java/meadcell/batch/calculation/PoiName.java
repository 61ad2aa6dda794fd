package meadcell.batch.calculation;

import java.util.Arrays;
import meadcell.batch.book.DefinedName;
import org.apache.poi.ss.formula.EvaluationName;
import org.apache.poi.ss.formula.FormulaType;
import org.apache.poi.ss.formula.ptg.AreaPtgBase;
import org.apache.poi.ss.formula.ptg.NamePtg;
import org.apache.poi.ss.formula.ptg.Ptg;
import org.apache.poi.ss.formula.ptg.RefPtgBase;

/** A defined name as POI's evaluator sees it. */
final class PoiName implements EvaluationName {
  private static final int NO_ROW = -1;

  private final DefinedName name;
  private final int index;
  private final PoiWorkbook workbook;

  /** Null until it is asked for; names are asked for by every formula that has them. */
  private Ptg[] definition;

  PoiName(DefinedName name, int index, PoiWorkbook workbook) {
    this.name = name;
    this.index = index;
    this.workbook = workbook;
  }

  @Override
  public String getNameText() {
    return name.name();
  }

  @Override
  public boolean isFunctionName() {
    return name.isFunction();
  }

  @Override
  public boolean hasFormula() {
    return name.formula() != null && !name.formula().isEmpty();
  }

  @Override
  public Ptg[] getNameDefinition() {
    if (definition == null) {
      definition =
          ParsedFormulas.parse(
              name.formula(), workbook, FormulaType.NAMEDRANGE, name.sheet(), NO_ROW);
    }
    return definition;
  }

  /** Whether it means other cells in other cells. */
  boolean moves() {
    return Arrays.stream(getNameDefinition()).anyMatch(PoiName::moves);
  }

  private static boolean moves(Ptg token) {
    return token instanceof RefPtgBase ref && (ref.isRowRelative() || ref.isColRelative())
        || token instanceof AreaPtgBase area
            && (area.isFirstRowRelative()
                || area.isFirstColRelative()
                || area.isLastRowRelative()
                || area.isLastColRelative());
  }

  @Override
  public boolean isRange() {
    return hasFormula();
  }

  @Override
  public NamePtg createPtg() {
    return new NamePtg(index);
  }
}
