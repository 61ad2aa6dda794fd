package meadcell.batch.calculation;

import meadcell.batch.book.DefinedName;
import org.apache.poi.ss.formula.EvaluationName;
import org.apache.poi.ss.formula.FormulaParser;
import org.apache.poi.ss.formula.FormulaType;
import org.apache.poi.ss.formula.ptg.NamePtg;
import org.apache.poi.ss.formula.ptg.Ptg;

/** A defined name as POI's evaluator sees it. */
final class PoiName implements EvaluationName {
  private final DefinedName name;
  private final int index;
  private final PoiWorkbook workbook;

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
    return FormulaParser.parse(name.formula(), workbook, FormulaType.NAMEDRANGE, name.sheet());
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
