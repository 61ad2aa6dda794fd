package meadcell.batch.book.poi;

import java.util.List;
import meadcell.batch.book.DefinedName;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Workbook;

/** The defined names of a workbook. */
public final class PoiNames {
  private PoiNames() {}

  public static List<DefinedName> of(Workbook workbook) {
    return workbook.getAllNames().stream().map(PoiNames::definedName).toList();
  }

  private static DefinedName definedName(Name name) {
    String formula;
    try {
      formula = name.isFunctionName() ? null : name.getRefersToFormula();
    } catch (RuntimeException e) {
      formula = null; // POI cannot read it; only formulas with this name suffer
    }
    return new DefinedName(
        name.getNameName(), name.getSheetIndex(), formula, name.isFunctionName());
  }
}
