package meadcell.batch.freeze;

import static meadcell.office.uno.RemoteOffice.as;

import com.sun.star.lang.XComponent;
import com.sun.star.sheet.XSpreadsheet;
import com.sun.star.sheet.XSpreadsheetDocument;
import java.nio.file.Files;
import java.nio.file.Path;
import meadcell.office.uno.RemoteOffice;

/** What a person does to a log in a LibreOffice that does not know our functions. */
record OfficeEdits(RemoteOffice office) {
  /** Something done in the office. */
  interface Edit {
    void in(XSpreadsheet sheet) throws Exception;
  }

  /** Something done in the office to the document and its first sheet. */
  interface DocumentEdit {
    void in(XComponent document, XSpreadsheet sheet) throws Exception;
  }

  void in(Path file, Edit edit) throws Exception {
    in(file, (document, sheet) -> edit.in(sheet));
  }

  void in(Path file, DocumentEdit edit) throws Exception {
    Path copy = office.home().resolve(file.getFileName());
    Path result = office.home().resolve("saved-" + file.getFileName());
    Files.copy(file, copy);
    copy.toFile().setWritable(true, false); // what the office cannot write it does not change
    String format = file.toString().substring(file.toString().lastIndexOf('.') + 1);
    String filter =
        switch (format) {
          case "xlsx" -> "Calc MS Excel 2007 XML";
          case "xlsm" -> "Calc MS Excel 2007 VBA XML";
          case "xls" -> "MS Excel 97";
          default -> "calc8";
        };
    try (var book = office.open(copy.toUri().toString(), true)) {
      var sheets = as(XSpreadsheetDocument.class, book.document()).getSheets();
      edit.in(book.document(), as(XSpreadsheet.class, sheets.getByName(FermentLog.LOG)));
      book.store(result, filter);
    }
    Files.write(file, Files.readAllBytes(result));
    Files.delete(copy);
    Files.delete(result);
  }

  static void edited(XSpreadsheet sheet) throws Exception {
    sheet.getCellRangeByName("B5").getCellByPosition(0, 0).setValue(1.055);
    sheet.getCellRangeByName("C1").getCellByPosition(0, 0).setValue(1.1);
  }
}
