package meadcell.batch.book.xls;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.poi.PoiBook;
import meadcell.batch.book.poi.PoiSheet;
import org.apache.poi.hpsf.CustomProperties;
import org.apache.poi.hpsf.DocumentSummaryInformation;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.udf.UDFFinder;

/** An old binary workbook, {@code .xls}. */
final class XlsBook extends PoiBook<HSSFWorkbook> {
  /** To this format every function that is not built in is one of an add-in. */
  private static final UDFFinder ADD_IN = name -> (args, context) -> ErrorEval.NAME_INVALID;

  XlsBook(HSSFWorkbook workbook) {
    super(workbook);
    workbook.addToolPack(ADD_IN);
    workbook.forEach(sheet -> sheets.add(new PoiSheet(this, sheet)));
  }

  @Override
  public BookSheet addSheet(String name) {
    BookSheet sheet = new PoiSheet(this, workbook.createSheet(name));
    sheets.add(sheet);
    return sheet;
  }

  @Override
  public int mostRows() {
    return SpreadsheetVersion.EXCEL97.getMaxRows();
  }

  @Override
  protected int plainStyle() {
    return 15; // the format's first cell style after its 15 built-in parents
  }

  private CustomProperties properties() {
    workbook.createInformationProperties();
    DocumentSummaryInformation summary = workbook.getDocumentSummaryInformation();
    CustomProperties properties = summary.getCustomProperties();
    return properties == null ? new CustomProperties() : properties;
  }

  @Override
  public Optional<String> property(String name) {
    DocumentSummaryInformation summary = workbook.getDocumentSummaryInformation();
    return summary == null || summary.getCustomProperties() == null
        ? Optional.empty()
        : Optional.ofNullable((String) summary.getCustomProperties().get(name));
  }

  @Override
  public void property(String name, String value) {
    CustomProperties properties = properties();
    properties.put(name, value);
    workbook.getDocumentSummaryInformation().setCustomProperties(properties);
  }

  @Override
  public List<String> caveats() {
    return List.of();
  }

  @Override
  public void write(OutputStream out) throws IOException {
    ByteArrayOutputStream written = new ByteArrayOutputStream();
    workbook.write(written);
    new HSSFWorkbook(new ByteArrayInputStream(written.toByteArray())).close(); // it reads back
    written.writeTo(out);
  }
}
