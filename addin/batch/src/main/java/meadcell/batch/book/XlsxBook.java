package meadcell.batch.book;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.poi.ooxml.POIXMLDocumentPart;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.openxml4j.opc.PackageRelationshipTypes;
import org.apache.poi.xssf.model.CalculationChain;
import org.apache.poi.xssf.model.ExternalLinksTable;
import org.apache.poi.xssf.usermodel.XSSFRelation;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * A workbook of today, {@code .xlsx} or {@code .xlsm}. POI has everything but the cells, which
 * {@link XlsxSheet} keeps; only the parts that were changed are written, all others are copied byte
 * for byte.
 */
final class XlsxBook extends PoiBook<XSSFWorkbook> {
  private static final String WORKSHEET = "spreadsheetml.worksheet+xml";

  private final byte[] original;
  private final PackageParts parts;
  private final Set<String> removed = new TreeSet<>();
  private final int sheetsBefore;
  private final int stylesBefore;
  private final int stringsBefore;
  private boolean propertiesChanged;

  XlsxBook(byte[] original) throws IOException {
    this(original, new PackageParts(original));
  }

  private XlsxBook(byte[] original, PackageParts parts) throws IOException {
    super(withoutCells(parts));
    this.original = original;
    this.parts = parts;
    for (int index = 0; index < workbook.getNumberOfSheets(); index++) {
      XSSFSheet frame = workbook.getSheetAt(index);
      var xml = new ByteArrayInputStream(parts.read(name(frame)));
      sheets.add(new XlsxSheet(this, frame, XlsxCellsReader.read(xml, workbook, index)));
    }
    this.sheetsBefore = sheets.size();
    this.stylesBefore = workbook.getNumCellStyles();
    this.stringsBefore = workbook.getSharedStringSource().getUniqueCount();
  }

  private static XSSFWorkbook withoutCells(PackageParts parts) throws IOException {
    for (String sheet : parts.ofType(WORKSHEET)) {
      byte[] xml = XlsxSheetXml.inUtf8(parts.read(sheet));
      parts.replace(sheet, XlsxSheetXml.withoutCells(xml));
    }
    ByteArrayOutputStream frame = new ByteArrayOutputStream();
    parts.write(frame);
    return new XSSFWorkbook(new ByteArrayInputStream(frame.toByteArray()));
  }

  @Override
  int plainStyle() {
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
    touch();
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
    ByteArrayOutputStream written = new ByteArrayOutputStream();
    workbook.write(written);
    Map<String, byte[]> changedSheets = new HashMap<>();
    for (BookSheet sheet : sheets) {
      if (sheet instanceof XlsxSheet xlsx && xlsx.isChanged()) {
        String name = name(xlsx.frame());
        changedSheets.put(name, xlsx.write(XlsxSheetXml.inUtf8(parts.read(name))));
      }
    }
    new PackageMerge(original, written.toByteArray()).write(changedParts(), changedSheets, out);
  }

  /**
   * Excel offers to repair a chain that lists a cell without a formula; without one, it makes it.
   */
  void removeCalculationChain() {
    CalculationChain chain = workbook.getCalculationChain();
    if (chain != null && removed.isEmpty()) {
      workbook.getPackagePart().removeRelationship(workbook.getRelationId(chain));
      workbook.getPackage().removePart(chain.getPackagePart().getPartName());
      removed.add(name(chain));
    }
  }

  private Set<String> changedParts() {
    Set<String> parts = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
    parts.addAll(removed);
    for (BookSheet sheet : sheets) {
      if (sheet instanceof XlsxSheet xlsx && xlsx.areNotesChanged()) {
        for (POIXMLDocumentPart part : xlsx.frame().getRelations()) {
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
    if (workbook.getSharedStringSource().getUniqueCount() != stringsBefore) {
      parts.add(name(workbook.getSharedStringSource()));
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
