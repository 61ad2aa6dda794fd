package meadcell.batch.book.xls;

import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.xls.Biff.Entry;
import org.apache.poi.hssf.usermodel.HSSFSheet;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.junit.jupiter.api.Test;

/** No record can be lost, and none changed, without the comparison saying so. */
class XlsComparisonTest {
  /** Lists of places, which every program writes anew; and the texts, which are compared in use. */
  private static final Set<Integer> NOT_SEEN =
      Set.of(Biff.BEGIN, Biff.END, 0x0085, 0x013D, 0x00FC, 0x00FF, 0x020B, 0x00D7, 0x0200, 0x00EB);

  private static List<Entry> records() throws Exception {
    HSSFWorkbook book = new HSSFWorkbook();
    HSSFSheet sheet = book.createSheet("log");
    rows(sheet, 0, row("SG", "Note"), row(1.05, "a"), row(1.04, "=A2*2"), row(true, "=\"a\"&B2"));
    CellStyle style = book.createCellStyle();
    style.setDataFormat(book.createDataFormat().getFormat("0.000"));
    sheet.getRow(1).getCell(0).setCellStyle(style);
    sheet.getRow(1).createCell(4).setCellStyle(style);
    sheet.setColumnWidth(1, 4000);
    sheet.addMergedRegion(CellRangeAddress.valueOf("C1:D2"));
    sheet.setArrayFormula("A2:A3*2", CellRangeAddress.valueOf("F2:F3"));
    var helper = sheet.getDataValidationHelper();
    sheet.addValidationData(
        helper.createValidation(
            helper.createDecimalConstraint(0, "0.9", "1.3"), new CellRangeAddressList(1, 9, 0, 0)));
    var drawing = sheet.createDrawingPatriarch();
    var comment = drawing.createCellComment(book.getCreationHelper().createClientAnchor());
    comment.setString(book.getCreationHelper().createRichTextString("mine"));
    comment.setAddress(0, 0);
    book.createSheet("other").createRow(0).createCell(0).setCellFormula("log!A2");
    var name = book.createName();
    name.setNameName("gravity");
    name.setRefersToFormula("log!$A$2:$A$3");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    book.write(out);
    return Biff.records(Biff.root(out.toByteArray()));
  }

  private static XlsComparison comparison(List<Entry> before, List<Entry> after) {
    return new XlsComparison(before, after, List.of());
  }

  @Test
  void everyLostRecordIsSeen() throws Exception {
    List<Entry> records = records();
    assertDoesNotThrow(() -> comparison(records, records).requireNoLoss());
    Set<Integer> kinds = new HashSet<>();
    for (int i = 0; i < records.size(); i++) {
      if (NOT_SEEN.contains(records.get(i).kind())) {
        continue;
      }
      List<Entry> after = new ArrayList<>(records);
      Entry lost = after.remove(i);
      String what = Integer.toHexString(lost.kind()) + " at " + i;
      FileRefused refused =
          assertThrows(FileRefused.class, () -> comparison(records, after).requireNoLoss(), what);
      assertTrue(refused.getMessage().contains("save it as .xlsx"), refused.getMessage());
      kinds.add(lost.kind());
    }
    assertTrue(kinds.size() > 40, kinds.size() + " kinds of records were tried");
  }

  @Test
  void everyChangedCellIsSeen() throws Exception {
    List<Entry> records = records();
    int tried = 0;
    for (int i = 0; i < records.size(); i++) {
      Entry record = records.get(i);
      if (XlsCells.KINDS.contains(record.kind()) && record.data().length > 8) {
        List<Entry> after = new ArrayList<>(records);
        byte[] data = record.data().clone();
        data[6] ^= 1;
        after.set(i, new Entry(record.kind(), data));
        assertThrows(FileRefused.class, () -> comparison(records, after).requireNoLoss());
        tried++;
      }
    }
    assertEquals(11, tried);
  }
}
