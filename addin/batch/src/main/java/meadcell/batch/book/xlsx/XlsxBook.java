package meadcell.batch.book.xlsx;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.DefinedName;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Limits;
import meadcell.batch.book.NamedTable;
import meadcell.batch.book.Place;
import meadcell.batch.book.Setting;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;
import meadcell.batch.book.poi.PoiNames;
import meadcell.batch.book.xlsx.Relations.Relation;
import meadcell.batch.book.zip.PackageParts;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFTableColumn;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * A workbook of today, {@code .xlsx} or {@code .xlsm}. POI reads its names, for formulas; cells,
 * styles and notes are read here. What changes is put into the parts that have it; all others are
 * copied byte for byte.
 */
final class XlsxBook implements Book {
  static final String RELATION =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";
  private static final String SPREADSHEET =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.";
  private static final String CUSTOM =
      "application/vnd.openxmlformats-officedocument.custom-properties+xml";

  private final PackageParts parts;
  private final ContentTypes types;
  private final Relations root;
  private final Relations relations;
  private final String main;
  private final MainPart mainXml;
  private final MainPartReader content;
  private final Kind kind;
  private final List<XlsxSheet> sheets = new ArrayList<>();
  private final Map<String, PackageParts.Content> changed = new HashMap<>();
  private final Set<String> added = new HashSet<>();
  private String stylePart;
  private final StyleSheet styles;
  private String customPart;
  private final CustomProperties properties;

  /** Null until it is asked for: to start POI takes a fifth of a short fill. */
  private XSSFWorkbook frame;

  XlsxBook(byte[] original, Limits limits) throws IOException {
    parts = new PackageParts(original, limits);
    types = new ContentTypes(parts);
    root = new Relations(parts, "");
    Relation toMain =
        root.first("officeDocument")
            .orElseThrow(() -> FileRefused.damaged("it holds no workbook", null));
    kind = Kind.byRelation(toMain.type());
    main = toMain.part();
    byte[] mainPart = Encodings.inUtf8(parts.read(main));
    content = MainPartReader.read(mainPart);
    mainXml = new MainPart(new XmlPart(mainPart), kind);
    relations = new Relations(parts, main);
    requireParts();
    stylePart = relations.first("styles").map(Relation::part).orElse(null);
    styles = new StyleSheet(xml(stylePart, StyleSheet.EMPTY));
    customPart = custom().map(Relation::part).orElse(null);
    properties = new CustomProperties(xml(customPart, CustomProperties.EMPTY), kind);
    List<Value> texts = new ArrayList<>();
    Relation shared = relations.first("sharedStrings").orElse(null);
    if (shared != null) {
      texts.addAll(SharedTexts.read(parts.read(shared.part())));
    }
    for (MainPartReader.Sheet sheet : content.sheets()) {
      Relation relation = relations.withId(sheet.id()).filter(Frame::isToSheet).orElse(null);
      if (relation != null) {
        sheets.add(read(sheet.name(), relation.part(), texts));
      }
    }
    if (sheets.isEmpty()) {
      throw FileRefused.damaged("it holds no sheet", null);
    }
  }

  private void requireParts() throws IOException {
    for (Relation relation : relations.all()) {
      boolean isNeeded = Frame.isToSheet(relation) || relation.is("externalLink");
      if (isNeeded && relation.part() != null && !parts.has(relation.part())) {
        throw FileRefused.damaged("it has lost the part " + relation.part(), null);
      }
    }
  }

  private XlsxSheet read(String name, String part, List<Value> texts) throws IOException {
    if (name == null) {
      throw FileRefused.damaged("a sheet has no name", null);
    }
    int index = sheets.size();
    var xml = new ByteArrayInputStream(parts.read(part));
    SharedFormulas shared = new SharedFormulas(this::frame, index);
    boolean isDate1904 = content.settings().contains(Setting.OTHER_DAYS);
    return new XlsxSheet(
        this, name, part, index, XlsxCellsReader.read(xml, shared, texts, isDate1904));
  }

  private XSSFWorkbook frame() {
    if (frame == null) {
      try {
        frame = new Frame(parts, types, kind, main, relations).read();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return frame;
  }

  private XmlPart xml(String part, String otherwise) throws IOException {
    return part == null ? XmlPart.of(kind.of(otherwise)) : XmlPart.of(parts.read(part));
  }

  private Optional<Relation> custom() {
    return root.first("custom-properties").or(() -> root.first("customProperties"));
  }

  PackageParts parts() {
    return parts;
  }

  Kind kind() {
    return kind;
  }

  @Override
  public List<? extends BookSheet> sheets() {
    return sheets;
  }

  @Override
  public List<DefinedName> names() {
    return content.hasNames() ? PoiNames.of(frame()) : List.of();
  }

  @Override
  public List<NamedTable> tables() {
    List<NamedTable> tables = new ArrayList<>();
    for (int index = 0; index < sheets.size(); index++) {
      if (!sheets.get(index).hasTables()) {
        continue;
      }
      for (XSSFTable table : frame().getSheetAt(index).getTables()) {
        tables.add(
            new NamedTable(
                table.getName(),
                index,
                new Span(
                    new Place(table.getStartRowIndex(), table.getStartColIndex()),
                    new Place(table.getEndRowIndex(), table.getEndColIndex())),
                table.getHeaderRowCount(),
                table.getTotalsRowCount(),
                table.getColumns().stream().map(XSSFTableColumn::getName).toList()));
      }
    }
    return tables;
  }

  @Override
  public Set<Setting> settings() {
    return content.settings();
  }

  @Override
  public int mostRows() {
    return SpreadsheetVersion.EXCEL2007.getMaxRows();
  }

  CellContent.Look look(int style) {
    return styles.look(style);
  }

  boolean isGeneral(int style) {
    return styles.isGeneral(style);
  }

  int style(int like, String format) {
    return styles.style(like, format);
  }

  @Override
  public Optional<String> property(String name) {
    return properties.get(name);
  }

  @Override
  public void property(String name, String value) {
    properties.put(name, value);
  }

  @Override
  public List<String> caveats() {
    List<String> caveats = new ArrayList<>();
    if (root.first("digital-signature/origin").isPresent()) {
      caveats.add("The file is signed; the change makes the signature invalid.");
    }
    if (relations.first("externalLink").isPresent()) {
      caveats.add("The file links to other workbooks; they were not opened.");
    }
    return caveats;
  }

  @Override
  public boolean isStructureProtected() {
    return content.isStructureLocked();
  }

  @Override
  public BookSheet addSheet(String name) {
    String part = newPart("xl/worksheets/sheet", ".xml", SPREADSHEET + "worksheet+xml");
    String id = relations.add(kind.of(RELATION + "worksheet"), part);
    mainXml.addSheet(name, id);
    XlsxSheet sheet = new XlsxSheet(this, name, part, sheets.size(), new XlsxCells());
    sheets.add(sheet);
    return sheet;
  }

  /** The name of a new part, which no other has: the first without a number, if it can be. */
  String newPart(String start, String end, String type) {
    String name = start + end;
    for (int number = 1; parts.has(name) || added.contains(name); number++) {
      name = start + number + end;
    }
    added.add(name);
    types.add(name, type);
    return name;
  }

  /**
   * Excel offers to repair a chain that lists a cell without a formula; without one, it makes it.
   */
  void removeCalculationChain() {
    relations
        .first("calcChain")
        .ifPresent(
            chain -> {
              relations.remove(chain);
              types.remove(chain.part());
              changed.put(chain.part(), null);
            });
  }

  @Override
  public void write(OutputStream out) throws IOException {
    sheets.forEach(sheet -> changed.putAll(sheet.changedParts()));
    if (styles.isChanged()) {
      if (stylePart == null) {
        stylePart = newPart("xl/styles", ".xml", SPREADSHEET + "styles+xml");
        relations.add(kind.of(RELATION + "styles"), stylePart);
      }
      put(stylePart, styles.changed());
    }
    if (properties.isChanged()) {
      if (customPart == null) {
        customPart = newPart("docProps/custom", ".xml", CUSTOM);
        root.add(kind.of(RELATION + "custom-properties"), customPart);
      }
      put(customPart, properties.changed());
    }
    if (mainXml.isChanged()) {
      put(main, mainXml.changed());
    }
    for (Relations each : List.of(root, relations)) {
      if (each.isChanged()) {
        put(each.name(), each.changed());
      }
    }
    if (types.isChanged()) {
      put(ContentTypes.NAME, types.changed());
    }
    parts.write(changed, out);
  }

  private void put(String part, byte[] bytes) {
    changed.put(part, target -> target.write(bytes));
  }

  @Override
  public void close() throws IOException {
    if (frame != null) {
      frame.close();
    }
  }
}
