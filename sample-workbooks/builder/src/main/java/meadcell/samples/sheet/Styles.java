package meadcell.samples.sheet;

import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The cell styles of one workbook, each made once. */
final class Styles {
  private static final String FONT = "Arial";

  private final XSSFWorkbook workbook;
  private final Map<String, XSSFCellStyle> styles = new HashMap<>();
  private boolean rowsStay;

  Styles(XSSFWorkbook workbook) {
    this.workbook = workbook;
    XSSFFont standard = workbook.getFontAt(0);
    standard.setFontName(FONT);
    standard.setFontHeightInPoints((short) 10);
  }

  /** From now on rows do not grow: a long word that is worked out is written smaller. */
  void keepRows() {
    rowsStay = true;
  }

  XSSFCellStyle of(Look look, String format, boolean leftAligned) {
    return of(look, format, leftAligned, false);
  }

  /** The same, for a locked cell that does not show its formula. */
  XSSFCellStyle of(Look look, String format, boolean leftAligned, boolean veiled) {
    return styles.computeIfAbsent(
        look + format + leftAligned + veiled,
        key -> {
          XSSFCellStyle style = make(look, format, leftAligned);
          style.setHidden(veiled && style.getLocked());
          return style;
        });
  }

  private XSSFCellStyle make(Look look, String format, boolean leftAligned) {
    XSSFCellStyle style = workbook.createCellStyle();
    XSSFFont font = workbook.createFont();
    font.setFontName(FONT);
    font.setFontHeightInPoints((short) look.points);
    font.setBold(look.bold);
    font.setColor(color(look.ink));
    style.setFont(font);
    style.setDataFormat(workbook.createDataFormat().getFormat(format));
    boolean shrinks = rowsStay && look == Look.RESULT;
    style.setWrapText(look != Look.TITLE && !shrinks);
    style.setShrinkToFit(shrinks && leftAligned);
    style.setVerticalAlignment(look.vertical());
    if (look.align != null) {
      style.setAlignment(look.align);
    } else if (leftAligned) {
      style.setAlignment(HorizontalAlignment.LEFT);
      style.setIndention(
          (short) (look.fill != null || look == Look.NOTE || look == Look.TYPED ? 1 : 0));
    }
    if (look.fill != null) {
      style.setFillForegroundColor(color(look.fill));
      style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
    }
    if (look.frame != null) {
      frame(style, look.frame);
    } else if (look == Look.RESULT || look == Look.HEADER) {
      style.setBorderBottom(BorderStyle.THIN);
      style.setBorderRight(BorderStyle.THIN);
      style.setBottomBorderColor(color("FFFFFF"));
      style.setRightBorderColor(color("FFFFFF"));
    }
    if (look == Look.HEADING) {
      style.setBorderBottom(BorderStyle.THIN);
      style.setBottomBorderColor(color(look.ink));
    }
    style.setLocked(look != Look.INPUT && look != Look.TYPED);
    return style;
  }

  private static void frame(XSSFCellStyle style, String ink) {
    style.setBorderTop(BorderStyle.THIN);
    style.setBorderBottom(BorderStyle.THIN);
    style.setBorderLeft(BorderStyle.THIN);
    style.setBorderRight(BorderStyle.THIN);
    style.setTopBorderColor(color(ink));
    style.setBottomBorderColor(color(ink));
    style.setLeftBorderColor(color(ink));
    style.setRightBorderColor(color(ink));
  }

  static XSSFColor color(String hex) {
    return new XSSFColor(HexFormat.of().parseHex("FF" + hex)); // opaque
  }
}
