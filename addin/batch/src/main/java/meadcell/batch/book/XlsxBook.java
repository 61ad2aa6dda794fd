package meadcell.batch.book;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.poi.ooxml.POIXMLDocumentPart;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.openxml4j.opc.PackageRelationshipTypes;
import org.apache.poi.xssf.model.ExternalLinksTable;
import org.apache.poi.xssf.usermodel.XSSFRelation;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * A workbook of today, {@code .xlsx} or {@code .xlsm}. Only the parts that were changed are written
 * by POI; all others are copied byte for byte.
 */
final class XlsxBook extends PoiBook<XSSFWorkbook> {
  private final byte[] original;
  private final int stylesBefore;
  private final int stringsBefore;
  private boolean propertiesChanged;

  XlsxBook(XSSFWorkbook workbook, byte[] original) {
    super(workbook);
    workbook.setCellFormulaValidation(false); // formulas are checked before they come here
    this.original = original;
    this.stylesBefore = workbook.getNumCellStyles();
    this.stringsBefore = workbook.getSharedStringSource().getUniqueCount();
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
    ByteArrayOutputStream written = new ByteArrayOutputStream(original.length);
    workbook.write(written);
    new PackageMerge(original, written.toByteArray()).write(changedParts(), out);
  }

  private Set<String> changedParts() {
    Set<String> parts = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
    for (PoiSheet sheet : sheets()) {
      XSSFSheet xssf = (XSSFSheet) sheet.sheet;
      if (sheet.isChanged()) {
        parts.add(name(xssf));
      }
      if (sheet.areNotesChanged()) {
        for (POIXMLDocumentPart part : xssf.getRelations()) {
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
    // a chain that lists a cell without a formula makes Excel offer a repair
    parts.add("xl/calcChain.xml");
    return parts;
  }

  private static String name(POIXMLDocumentPart part) {
    return part.getPackagePart().getPartName().getName().substring(1);
  }
}
