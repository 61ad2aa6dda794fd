package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import meadcell.batch.book.Packages;

/** A package whose XML is written by hand, for what POI cannot make. */
final class Parts {
  static final String LOG = "xl/worksheets/sheet1.xml";
  static final String OTHER = "xl/worksheets/sheet2.xml";
  static final String TEXTS = "xl/sharedStrings.xml";
  static final String WORKBOOK = "xl/workbook.xml";
  private static final String OFFICE =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";

  private final Map<String, byte[]> parts;

  Parts(Path file) throws IOException {
    parts = Packages.parts(Files.readAllBytes(file));
  }

  void save(Path file) throws IOException {
    Files.write(file, Packages.zip(parts));
  }

  String text(String part) {
    return text(parts.get(part));
  }

  /** A part as text, whatever its encoding; without its declaration. */
  static String text(byte[] part) {
    boolean wide = part.length > 1 && (part[0] == (byte) 0xFE || part[0] == (byte) 0xFF);
    String text = new String(part, wide ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8);
    return text.replaceFirst("^<\\?xml[^>]*\\?>", "");
  }

  void remove(String part) {
    parts.remove(part);
  }

  void put(String part, byte[] bytes) {
    parts.put(part, bytes);
  }

  void put(String part, String text) {
    put(part, text.getBytes(StandardCharsets.UTF_8));
  }

  void replace(String part, String from, String to) {
    String before = text(part);
    assertTrue(before.contains(from), () -> from + " is not in " + before);
    put(part, before.replace(from, to));
  }

  void replaceAll(String part, String pattern, String to) {
    put(part, text(part).replaceAll(pattern, to));
  }

  /** Rows, or cells of a row that the sheet does not have, behind all others. */
  void addRows(String sheet, String rows) {
    replace(sheet, "</sheetData>", rows + "</sheetData>");
  }

  void add(String part, String contentType, String text) {
    put(part, text);
    replace(
        "[Content_Types].xml",
        "</Types>",
        "<Override PartName=\"/" + part + "\" ContentType=\"" + contentType + "\"/></Types>");
  }

  void addSpreadsheetPart(String part, String type, String text) {
    add(part, "application/vnd.openxmlformats-officedocument.spreadsheetml." + type + "+xml", text);
  }

  /** Relates a part to another by a type of the standard, or one in full. */
  void relate(String from, String id, String type, String target) {
    int slash = from.lastIndexOf('/');
    String index = from.substring(0, slash) + "/_rels" + from.substring(slash) + ".rels";
    if (!parts.containsKey(index)) {
      put(
          index,
          "<Relationships"
              + " xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
              + "</Relationships>");
    }
    String full = type.startsWith("http") ? type : OFFICE + type;
    String mode = target.startsWith("file:") ? "\" TargetMode=\"External" : "";
    replace(
        index,
        "</Relationships>",
        "<Relationship Id=\""
            + id
            + "\" Type=\""
            + full
            + "\" Target=\""
            + target
            + mode
            + "\"/></Relationships>");
  }
}
