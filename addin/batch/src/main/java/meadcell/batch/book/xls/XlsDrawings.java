package meadcell.batch.book.xls;

import meadcell.batch.book.BookSheet.Note;
import meadcell.batch.book.Place;
import org.apache.poi.hssf.model.InternalWorkbook;
import org.apache.poi.hssf.record.BoundSheetRecord;
import org.apache.poi.hssf.record.CountryRecord;
import org.apache.poi.hssf.record.SSTRecord;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.CreationHelper;
import org.apache.poi.ss.usermodel.Sheet;

/** Boxes that POI draws on the sheets of an {@code .xls} workbook. */
final class XlsDrawings {
  private static final int NOTE_WIDTH = 3;
  private static final int NOTE_HEIGHT = 4;
  private static final int LAST_COLUMN = 255;
  private static final int LAST_ROW = 65_535;

  private XlsDrawings() {}

  /** A new note for the cell at a place. */
  static Comment note(HSSFWorkbook workbook, Sheet sheet, Place place, Note note) {
    prepare(workbook);
    CreationHelper helper = workbook.getCreationHelper();
    ClientAnchor anchor = helper.createClientAnchor();
    int left = Math.min(place.column() + 1, LAST_COLUMN - NOTE_WIDTH);
    int top = Math.min(place.row(), LAST_ROW - NOTE_HEIGHT);
    anchor.setRow1(top);
    anchor.setRow2(top + NOTE_HEIGHT);
    anchor.setCol1(left);
    anchor.setCol2(left + NOTE_WIDTH);
    Comment comment = sheet.createDrawingPatriarch().createCellComment(anchor);
    comment.setAuthor(note.author());
    comment.setString(helper.createRichTextString(note.text()));
    return comment;
  }

  /**
   * Makes the list of drawings where there is none, which POI would put behind the country that not
   * every program writes, or else in front of everything.
   */
  private static void prepare(HSSFWorkbook workbook) {
    InternalWorkbook records = workbook.getInternalWorkbook();
    records.findDrawingGroup();
    boolean hasCountry = records.findFirstRecordBySid(CountryRecord.sid) != null;
    if (records.getDrawingManager() != null || hasCountry) {
      return;
    }
    CountryRecord mark = new CountryRecord();
    int texts = records.findFirstRecordLocBySid(SSTRecord.sid);
    int place = texts < 0 ? lastSheet(records) + 1 : texts;
    records.getWorkbookRecordList().add(place, mark);
    records.createDrawingGroup();
    records.getWorkbookRecordList().remove(mark);
  }

  private static int lastSheet(InternalWorkbook records) {
    int last = 0;
    for (int i = 0; i < records.getNumRecords(); i++) {
      last = records.getRecords().get(i) instanceof BoundSheetRecord ? i : last;
    }
    return last;
  }
}
