package meadcell.calc;

import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.table.XCell;
import com.sun.star.uno.XComponentContext;
import java.util.List;
import meadcell.calc.menu.Functions;
import meadcell.calc.menu.Texts;
import meadcell.catalogue.CheckRow;
import meadcell.cellar.Cellar;

/** The functions' side of the menu. */
public final class CatalogueFunctions implements Functions {
  private final List<CheckRow> checks = CheckRow.load(Cellar.catalogue());

  @Override
  public int checks() {
    return checks.size();
  }

  @Override
  public List<String> missed() {
    return checks.stream()
        .map(row -> row.verdict(Cellar.catalogue()))
        .filter(verdict -> !verdict.holds())
        .map(verdict -> verdict.row().call())
        .toList();
  }

  @Override
  public String explain(
      XComponentContext context, XSpreadsheetDocument document, XCell cell, Texts texts) {
    return new Explanation(context, texts).of(document, cell);
  }
}
