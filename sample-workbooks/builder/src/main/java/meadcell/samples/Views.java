package meadcell.samples;

import java.util.Locale;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.PaneInformation;

/**
 * How an OpenDocument spreadsheet is shown: the sheet in front, frozen rows, no grid. An office
 * without windows stores nothing of it.
 */
final class Views {
  private static final String SET = "<config:config-item-set config:name=\"ooo:view-settings\">";
  private static final int FROZEN = 2;

  private Views() {}

  /** {@return the settings with views as this workbook has them} */
  static String put(String settings, Workbook book) {
    if (!settings.contains(SET) || settings.contains("config:name=\"Views\"")) {
      throw new IllegalStateException("the office stores its views in another way now");
    }
    StringBuilder tables = new StringBuilder();
    for (Sheet sheet : book) {
      tables.append(entry(" config:name=\"" + escaped(sheet.getSheetName()) + "\"", table(sheet)));
    }
    String view =
        item("ViewId", "string", "view1")
            + map("named", "Tables", tables.toString())
            + item("ActiveTable", "string", escaped(book.getSheetName(book.getActiveSheetIndex())))
            + item("ShowGrid", "boolean", "false");
    return settings.replace(SET, SET + map("indexed", "Views", entry("", view)));
  }

  private static String table(Sheet sheet) {
    PaneInformation pane = sheet.getPaneInformation();
    int rows = pane == null ? 0 : pane.getHorizontalSplitTopRow();
    int columns = pane == null ? 0 : pane.getVerticalSplitLeftColumn();
    return item("HorizontalSplitMode", "short", columns > 0 ? FROZEN : 0)
        + item("VerticalSplitMode", "short", rows > 0 ? FROZEN : 0)
        + item("HorizontalSplitPosition", "int", columns)
        + item("VerticalSplitPosition", "int", rows)
        + item("ActiveSplitRange", "short", columns > 0 ? 3 : 2)
        + item("PositionRight", "int", columns)
        + item("PositionBottom", "int", rows)
        + item("ShowGrid", "boolean", sheet.isDisplayGridlines());
  }

  private static String item(String name, String type, Object value) {
    return String.format(
        Locale.ROOT,
        "<config:config-item config:name=\"%s\" config:type=\"%s\">%s</config:config-item>",
        name,
        type,
        value);
  }

  private static String map(String kind, String name, String entries) {
    String element = "config:config-item-map-" + kind;
    return "<" + element + " config:name=\"" + name + "\">" + entries + "</" + element + ">";
  }

  private static String entry(String name, String items) {
    return "<config:config-item-map-entry" + name + ">" + items + "</config:config-item-map-entry>";
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
  }
}
