package meadcell.batch.book.xls;

import java.util.HashMap;
import java.util.Map;
import meadcell.batch.book.CellContent;
import org.apache.poi.hssf.usermodel.HSSFCellStyle;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.DateUtil;

/** The styles of the cells of an {@code .xls} workbook. */
final class XlsStyles {
  private record Key(int style, String format) {}

  /** The format's first cell style after its 15 built-in parents. */
  static final int PLAIN = 15;

  /** The number format that nobody chose. */
  static final short GENERAL = 0;

  /** POI makes no more than 4,030, the most that Excel reads. */
  private static final int MOST = 4_000;

  private final HSSFWorkbook workbook;
  private final Map<Key, Integer> created = new HashMap<>();
  private final Map<Integer, CellContent.Look> looks = new HashMap<>();

  XlsStyles(HSSFWorkbook workbook) {
    this.workbook = workbook;
  }

  CellContent.Look look(int style) {
    return looks.computeIfAbsent(style, index -> look(workbook.getCellStyleAt(index)));
  }

  private static CellContent.Look look(HSSFCellStyle style) {
    String format = style == null ? null : style.getDataFormatString();
    if (format == null) {
      return CellContent.Look.PLAIN;
    }
    return DateUtil.isADateFormat(style.getDataFormat(), format)
        ? CellContent.Look.DATE
        : format.contains("%") ? CellContent.Look.PERCENT : CellContent.Look.PLAIN;
  }

  /** One new style for each pair of a style and a format, never one for each cell. */
  int like(int like, String format) {
    return created.computeIfAbsent(new Key(like, format), this::createStyle);
  }

  private int createStyle(Key key) {
    HSSFCellStyle from = workbook.getCellStyleAt(key.style);
    if (from == null
        || key.format.isEmpty()
        || key.format.equals(from.getDataFormatString())
        || workbook.getNumCellStyles() >= MOST) {
      return key.style;
    }
    HSSFCellStyle style = workbook.createCellStyle();
    style.cloneStyleFrom(from);
    style.setDataFormat(workbook.createDataFormat().getFormat(key.format));
    return style.getIndex();
  }
}
