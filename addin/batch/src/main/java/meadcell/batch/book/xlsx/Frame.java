package meadcell.batch.book.xlsx;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import meadcell.batch.book.xlsx.Relations.Relation;
import meadcell.batch.book.zip.PackageParts;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * What POI needs of a workbook to read its formulas: sheets by name, tables, defined names and
 * links to other workbooks. It gets nothing else, and so cannot stumble over it.
 */
final class Frame {
  private static final String SHEET =
      "<%1$s xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">%2$s</%1$s>";
  private static final String TYPES =
      "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
          + "<Default Extension=\"rels\""
          + " ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>";
  private static final String RELATIONS =
      "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">";
  private static final List<String> SHEETS = List.of("worksheet", "chartsheet", "dialogsheet");

  private final PackageParts parts;
  private final ContentTypes types;
  private final Kind kind;
  private final String main;
  private final Relations relations;
  private final Map<String, byte[]> frame = new LinkedHashMap<>();
  private final StringBuilder typed = new StringBuilder(TYPES);

  Frame(PackageParts parts, ContentTypes types, Kind kind, String main, Relations relations) {
    this.parts = parts;
    this.types = types;
    this.kind = kind;
    this.main = main;
    this.relations = relations;
  }

  /** Whether a relation leads to a sheet in the package. */
  static boolean isToSheet(Relation relation) {
    return relation.part() != null && SHEETS.stream().anyMatch(relation::is);
  }

  XSSFWorkbook read() throws IOException {
    put("_rels/.rels", list(new Relation("main", XlsxBook.RELATION + "officeDocument", main, "")));
    copy(main);
    StringBuilder related = new StringBuilder(RELATIONS);
    for (Relation relation : relations.all()) {
      String sheet = SHEETS.stream().filter(relation::is).findFirst().orElse(null);
      if (relation.part() == null || sheet == null && !relation.is("externalLink")) {
        continue;
      }
      related.append(written(relation));
      if (sheet == null) {
        copyWith(relation.part(), "externalLinkPath");
      } else {
        put(
            relation.part(),
            SHEET.formatted(sheet, sheet.equals("worksheet") ? "<sheetData/>" : ""));
        tables(relation.part());
      }
    }
    put(relations.name(), related + "</Relationships>");
    put(ContentTypes.NAME, typed + "</Types>");
    ByteArrayOutputStream zipped = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(zipped)) {
      for (Map.Entry<String, byte[]> part : frame.entrySet()) {
        zip.putNextEntry(new ZipEntry(part.getKey()));
        zip.write(part.getValue());
      }
    }
    return new XSSFWorkbook(new ByteArrayInputStream(zipped.toByteArray()));
  }

  private void tables(String sheet) throws IOException {
    copyRelated(new Relations(parts, sheet), "table");
  }

  private void copyWith(String part, String relationType) throws IOException {
    copy(part);
    copyRelated(new Relations(parts, part), relationType);
  }

  private void copyRelated(Relations from, String type) throws IOException {
    StringBuilder list = new StringBuilder();
    for (Relation relation : from.all()) {
      if (relation.is(type)) {
        list.append(written(relation));
        if (relation.part() != null) {
          copy(relation.part());
        }
      }
    }
    if (!list.isEmpty()) {
      put(from.name(), RELATIONS + list + "</Relationships>");
    }
  }

  private void copy(String part) throws IOException {
    byte[] utf8 = Encodings.inUtf8(parts.read(part));
    put(part, kind.inUsual(new String(utf8, StandardCharsets.UTF_8)));
  }

  private void put(String part, String text) {
    if (frame.put(part, text.getBytes(StandardCharsets.UTF_8)) == null && !part.endsWith(".rels")) {
      String type = types.of(part);
      typed.append("<Override PartName=\"/" + part + "\" ContentType=\"" + type + "\"/>");
    }
  }

  private String list(Relation relation) {
    return RELATIONS + written(relation) + "</Relationships>";
  }

  private String written(Relation relation) {
    String target =
        relation.part() == null
            ? "Target=\"" + XmlText.escaped(relation.target()) + "\" TargetMode=\"External\""
            : "Target=\"/" + XmlText.escaped(relation.part()) + "\"";
    return "<Relationship Id=\""
        + XmlText.escaped(relation.id())
        + "\" Type=\""
        + kind.inUsual(relation.type())
        + "\" "
        + target
        + "/>";
  }
}
