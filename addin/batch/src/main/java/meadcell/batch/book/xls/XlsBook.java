package meadcell.batch.book.xls;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.DefinedName;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.NamedTable;
import meadcell.batch.book.Setting;
import meadcell.batch.book.poi.PoiNames;
import org.apache.poi.hpsf.CustomProperties;
import org.apache.poi.hpsf.DocumentSummaryInformation;
import org.apache.poi.hssf.record.PrecisionRecord;
import org.apache.poi.hssf.record.ProtectRecord;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.filesystem.DirectoryNode;
import org.apache.poi.ss.SpreadsheetVersion;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.udf.UDFFinder;

/**
 * An old binary workbook, {@code .xls}, read and written by POI. What POI wrote is compared, record
 * by record, with what was there.
 */
final class XlsBook implements Book {
  /** To this format every function that is not built in is one of an add-in. */
  private static final UDFFinder ADD_IN = name -> (args, context) -> ErrorEval.NAME_INVALID;

  static final String TOO_OLD =
      "The file was made by Excel 95 or an older program; open it in a spreadsheet program, and save"
          + " it as .xlsx.";

  /** Of the format since Excel 97. */
  private static final int VERSION = 0x0600;

  final HSSFWorkbook workbook;
  private final List<Biff.Entry> original;
  private final List<XlsSheet> sheets = new ArrayList<>();
  private final XlsStyles styles;

  XlsBook(DirectoryNode root) throws IOException {
    if (!root.hasEntryCaseInsensitive("Workbook")) {
      throw new FileRefused(
          root.hasEntryCaseInsensitive("Book")
              ? TOO_OLD
              : "The file is not the kind of workbook that its name says.");
    }
    original = Biff.records(root);
    if (original.isEmpty() || original.get(0).number(0) != VERSION) {
      throw new FileRefused(TOO_OLD);
    }
    DirectoryNode read = root;
    if (LinkTables.isMissing(original)) {
      ByteArrayOutputStream copy = new ByteArrayOutputStream();
      root.getFileSystem().writeFilesystem(copy);
      read = Biff.root(copy.toByteArray());
      Biff.replace(read, LinkTables.added(original));
    }
    workbook = new HSSFWorkbook(read, true);
    workbook.addToolPack(ADD_IN);
    styles = new XlsStyles(workbook);
    List<XlsParts> parts = XlsParts.of(original);
    if (parts.size() != workbook.getNumberOfSheets() + 1) {
      throw FileRefused.damaged("it has more or fewer sheets than it says", null);
    }
    for (int i = 0; i < workbook.getNumberOfSheets(); i++) {
      sheets.add(new XlsSheet(this, workbook.getSheetAt(i), parts.get(i + 1)));
    }
  }

  @Override
  public List<? extends BookSheet> sheets() {
    return sheets;
  }

  @Override
  public boolean isStructureProtected() {
    return workbook.getInternalWorkbook().findFirstRecordBySid(ProtectRecord.sid)
            instanceof ProtectRecord structure
        && structure.getProtect();
  }

  @Override
  public BookSheet addSheet(String name) {
    XlsSheet sheet = new XlsSheet(this, workbook.createSheet(name), null);
    sheets.add(sheet);
    return sheet;
  }

  @Override
  public List<DefinedName> names() {
    return PoiNames.of(workbook);
  }

  @Override
  public List<NamedTable> tables() {
    return List.of();
  }

  @Override
  public Set<Setting> settings() {
    Set<Setting> settings = EnumSet.noneOf(Setting.class);
    if (workbook.getInternalWorkbook().isUsing1904DateWindowing()) {
      settings.add(Setting.OTHER_DAYS);
    }
    if (workbook.getInternalWorkbook().findFirstRecordBySid(PrecisionRecord.sid)
            instanceof PrecisionRecord precision
        && !precision.getFullPrecision()) {
      settings.add(Setting.AS_SHOWN);
    }
    return settings;
  }

  @Override
  public int mostRows() {
    return SpreadsheetVersion.EXCEL97.getMaxRows();
  }

  XlsStyles styles() {
    return styles;
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
    List<Biff.Entry> after = Biff.records(Biff.root(written.toByteArray()));
    new XlsComparison(original, after, sheets).requireNoLoss();
    written.writeTo(out);
  }

  @Override
  public void close() throws IOException {
    workbook.close();
  }
}
