package meadcell.batch.safety;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import meadcell.batch.book.Packages;

/** The log as an OpenDocument spreadsheet, written by hand. */
final class OdsLog {
  private static final String OASIS = "urn:oasis:names:tc:opendocument:xmlns:";

  private OdsLog() {}

  static String text(String text) {
    return "<table:table-cell office:value-type=\"string\"><text:p>"
        + text
        + "</text:p></table:table-cell>";
  }

  static String number(String number) {
    return "<table:table-cell office:value-type=\"float\" office:value=\""
        + number
        + "\"><text:p>"
        + number
        + "</text:p></table:table-cell>";
  }

  static String row(String... cells) {
    return "<table:table-row>" + String.join("", cells) + "</table:table-row>";
  }

  /** A log with a typed result, at a temperature. */
  static String typed(String temperature) {
    return row(text("OG"), number("1.1"))
        + row("<table:table-cell/>")
        + row(text("SG"), text("Temp"), text("True SG"))
        + row(
            number("1.06"),
            number(temperature),
            "<table:table-cell office:value-type=\"string\"><text:p>about"
                + " <text:span>1.06</text:span></text:p></table:table-cell>");
  }

  static byte[] of(String rows) throws IOException {
    Map<String, String> parts = new TreeMap<>();
    parts.put("mimetype", "application/vnd.oasis.opendocument.spreadsheet");
    parts.put(
        "META-INF/manifest.xml",
        "<manifest:manifest xmlns:manifest=\""
            + OASIS
            + "manifest:1.0\" manifest:version=\"1.2\"><manifest:file-entry"
            + " manifest:full-path=\"/\" manifest:version=\"1.2\""
            + " manifest:media-type=\"application/vnd.oasis.opendocument.spreadsheet\"/>"
            + "<manifest:file-entry manifest:full-path=\"content.xml\""
            + " manifest:media-type=\"text/xml\"/></manifest:manifest>");
    parts.put(
        "content.xml",
        "<office:document-content xmlns:office=\""
            + OASIS
            + "office:1.0\" xmlns:table=\""
            + OASIS
            + "table:1.0\" xmlns:text=\""
            + OASIS
            + "text:1.0\" office:version=\"1.2\"><office:automatic-styles/><office:body>"
            + "<office:spreadsheet><table:table table:name=\"HH-22\"><table:table-column"
            + " table:number-columns-repeated=\"3\"/>"
            + rows
            + "</table:table></office:spreadsheet></office:body></office:document-content>");
    Map<String, byte[]> bytes = new TreeMap<>();
    parts.forEach((name, text) -> bytes.put(name, text.getBytes(StandardCharsets.UTF_8)));
    return Packages.zip(bytes);
  }
}
