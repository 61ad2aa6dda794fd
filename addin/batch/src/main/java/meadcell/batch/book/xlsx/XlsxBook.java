package meadcell.batch.book.xlsx;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Limits;
import meadcell.batch.book.NamedTable;
import meadcell.batch.book.Place;
import meadcell.batch.book.Span;
import meadcell.batch.book.Value;
import meadcell.batch.book.poi.PoiBook;
import meadcell.batch.book.zip.PackageParts;
import org.apache.poi.ooxml.POIXMLDocumentPart;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.openxml4j.opc.PackageRelationship;
import org.apache.poi.openxml4j.opc.PackageRelationshipTypes;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.xssf.model.CalculationChain;
import org.apache.poi.xssf.model.ExternalLinksTable;
import org.apache.poi.xssf.usermodel.XSSFRelation;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFTable;
import org.apache.poi.xssf.usermodel.XSSFTableColumn;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.openxmlformats.schemas.spreadsheetml.x2006.main.CTCalcCell;

/**
 * A workbook of today, {@code .xlsx} or {@code .xlsm}. POI has everything but the cells, which
 * {@link XlsxSheet} keeps; only the parts that were changed are written, all others are copied byte
 * for byte.
 */
final class XlsxBook extends PoiBook<XSSFWorkbook> {
  private static final String WORKSHEET = "spreadsheetml.worksheet+xml";
  private static final String SHARED_TEXTS = "spreadsheetml.sharedStrings+xml";
  private static final byte[] NO_TEXTS =
      "<sst xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"/>"
          .getBytes(StandardCharsets.UTF_8);

  private final byte[] original;
  private final PackageParts parts;
  private final Set<String> removed = new TreeSet<>();
  private final int sheetsBefore;
  private final int stylesBefore;
  private boolean propertiesChanged;

  XlsxBook(byte[] original, Limits limits) throws IOException {
    this(original, new PackageParts(original, limits));
  }

  private XlsxBook(byte[] original, PackageParts parts) throws IOException {
    super(withoutCells(parts));
    this.original = original;
    this.parts = parts;
    List<Value> texts = new ArrayList<>();
    for (String part : ContentTypes.parts(parts, SHARED_TEXTS)) {
      texts.addAll(SharedTexts.read(parts.read(part)));
    }
    requireProperties();
    for (int index = 0; index < workbook.getNumberOfSheets(); index++) {
      XSSFSheet frame = workbook.getSheetAt(index);
      if (frame.getSheetName() == null) {
        throw FileRefused.damaged("a sheet has no name", null);
      }
      var xml = new ByteArrayInputStream(parts.read(name(frame)));
      sheets.add(new XlsxSheet(this, frame, XlsxCellsReader.read(xml, workbook, texts, index)));
    }
    this.sheetsBefore = sheets.size();
    this.stylesBefore = workbook.getNumCellStyles();
  }

  /** Where they are lost, POI adds others, and then cannot read both. */
  private void requireProperties() throws IOException {
    var relations =
        workbook.getPackage().getRelationshipsByType(PackageRelationshipTypes.CORE_PROPERTIES);
    for (PackageRelationship relation : relations) {
      if (relations.size() > 1 || workbook.getPackage().getPart(relation) == null) {
        throw FileRefused.damaged("it has lost the part " + relation.getTargetURI(), null);
      }
    }
  }

  private static XSSFWorkbook withoutCells(PackageParts parts) throws IOException {
    for (String sheet : ContentTypes.parts(parts, WORKSHEET)) {
      byte[] xml = XlsxSheetXml.inUtf8(parts.read(sheet));
      parts.replace(sheet, XlsxSheetXml.withoutCells(xml));
    }
    for (String texts : ContentTypes.parts(parts, SHARED_TEXTS)) {
      parts.replace(texts, NO_TEXTS);
    }
    ByteArrayOutputStream frame = new ByteArrayOutputStream();
    parts.writeUnpacked(frame); // POI takes tightly packed parts for an attack
    return new XSSFWorkbook(new ByteArrayInputStream(frame.toByteArray()));
  }

  private List<XlsxSheet> xlsxSheets() {
    return sheets.stream().map(XlsxSheet.class::cast).toList();
  }

  @Override
  public BookSheet addSheet(String name) {
    XlsxSheet sheet = new XlsxSheet(this, workbook.createSheet(name), new XlsxCells());
    sheets.add(sheet);
    return sheet;
  }

  @Override
  public List<NamedTable> tables() {
    List<NamedTable> tables = new ArrayList<>();
    for (int index = 0; index < workbook.getNumberOfSheets(); index++) {
      for (XSSFTable table : workbook.getSheetAt(index).getTables()) {
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
  public int mostRows() {
    return SpreadsheetVersion.EXCEL2007.getMaxRows();
  }

  @Override
  protected int plainStyle() {
    return 0;
  }

  private POIXMLProperties.CustomProperties properties() {
    return workbook.getProperties().getCustomProperties();
  }

  @Override
  public Optional<String> property(String name) {
    return Optional.ofNullable(properties().getProperty(name)).map(p -> p.getLpwstr());
  }

  @Override
  public void property(String name, String value) {
    if (properties().contains(name)) {
      properties().getProperty(name).setLpwstr(value);
    } else {
      properties().addProperty(name, value);
    }
    propertiesChanged = true;
  }

  @Override
  public List<String> caveats() {
    List<String> caveats = new ArrayList<>();
    if (!workbook
        .getPackage()
        .getRelationshipsByType(PackageRelationshipTypes.DIGITAL_SIGNATURE_ORIGIN)
        .isEmpty()) {
      caveats.add("The file is signed; the change makes the signature invalid.");
    }
    if (workbook.getRelations().stream().anyMatch(ExternalLinksTable.class::isInstance)) {
      caveats.add("The file links to other workbooks; they were not opened.");
    }
    return caveats;
  }

  @Override
  public void write(OutputStream out) throws IOException {
    Set<String> changed = changedParts();
    byte[] frames = changed.isEmpty() ? original : frames();
    PackageParts written = new PackageParts(frames, Limits.NONE); // POI wrote it
    Map<String, PackageParts.Content> changedSheets = new HashMap<>();
    for (XlsxSheet sheet : xlsxSheets()) {
      if (sheet.isChanged()) {
        String name = name(sheet.frame());
        byte[] xml = parts.has(name) ? XlsxSheetXml.inUtf8(parts.read(name)) : written.read(name);
        changedSheets.put(name, target -> sheet.write(xml, target));
      }
    }
    new PackageMerge(original, frames).write(changed, changedSheets, out);
  }

  /** Everything but cells, as POI writes it. */
  private byte[] frames() throws IOException {
    ByteArrayOutputStream frames = new ByteArrayOutputStream();
    workbook.write(frames);
    return frames.toByteArray();
  }

  /**
   * Excel offers to repair a chain that lists a cell without a formula; without one, it makes it.
   */
  void removeCalculationChain() {
    CalculationChain chain = workbook.getCalculationChain();
    if (chain != null && removed.isEmpty()) {
      chain.getCTCalcChain().setCArray(new CTCalcCell[0]); // POI drops an empty one
      removed.add(name(chain));
    }
  }

  private Set<String> changedParts() {
    Set<String> parts = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
    parts.addAll(removed);
    for (XlsxSheet sheet : xlsxSheets()) {
      if (sheet.areNotesChanged()) {
        for (POIXMLDocumentPart part : sheet.frame().getRelations()) {
          String type = part.getPackagePart().getContentType();
          if (type.equals(XSSFRelation.SHEET_COMMENTS.getContentType())
              || type.equals(XSSFRelation.VML_DRAWINGS.getContentType())) {
            parts.add(name(part));
          }
        }
      }
    }
    if (workbook.getNumCellStyles() != stylesBefore) {
      parts.add(name(workbook.getStylesSource()));
    }
    if (propertiesChanged) {
      parts.add("docProps/custom.xml");
    }
    if (sheets.size() != sheetsBefore) {
      parts.add(name(workbook));
    }
    return parts;
  }

  private static String name(POIXMLDocumentPart part) {
    return part.getPackagePart().getPartName().getName().substring(1);
  }
}
