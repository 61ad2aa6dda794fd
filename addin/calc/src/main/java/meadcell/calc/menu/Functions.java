package meadcell.calc.menu;

import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.table.XCell;
import com.sun.star.uno.XComponentContext;
import java.util.List;

/** What the menu asks of the functions, which need a newer Java than the menu does. */
public interface Functions {
  /** The class that answers, by name only: loading it fails where Java is too old. */
  String CLASS = "meadcell.calc.CatalogueFunctions";

  /** How many check values are shipped. */
  int checks();

  /** The calls whose check values are not met; empty if all are. */
  List<String> missed();

  /** What each of our functions in a cell's formula was given and what it gives or refuses. */
  String explain(XComponentContext context, XSpreadsheetDocument document, XCell cell, Texts texts);
}
