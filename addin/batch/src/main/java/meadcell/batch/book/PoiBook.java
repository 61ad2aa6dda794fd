package meadcell.batch.book;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meadcell.batch.poi.CatalogueFunctions;
import meadcell.batch.poi.PoiCalculation;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.Workbook;

/** A workbook that Apache POI reads and writes. */
abstract class PoiBook<W extends Workbook> implements Book {
  private record StyleKey(int style, String format) {}

  final W workbook;
  final List<BookSheet> sheets = new ArrayList<>();
  private final Map<StyleKey, Integer> styles = new HashMap<>();
  private final Map<Integer, CellContent.Look> looks = new HashMap<>();
  private boolean changed;

  PoiBook(W workbook) {
    this.workbook = workbook;
  }

  @Override
  public List<BookSheet> sheets() {
    return sheets;
  }

  @Override
  public BookSheet addSheet(String name) {
    touch();
    sheets.add(new PoiSheet(this, workbook.createSheet(name)));
    return sheets.get(sheets.size() - 1);
  }

  @Override
  public Calculation calculation(CatalogueFunctions functions, Live live) {
    return new PoiCalculation(sheets, workbook, functions, live);
  }

  @Override
  public boolean isChanged() {
    return changed;
  }

  void touch() {
    changed = true;
  }

  CellContent.Look look(int styleIndex) {
    return looks.computeIfAbsent(
        styleIndex,
        index -> {
          CellStyle style = workbook.getCellStyleAt(index);
          String format = style == null ? null : style.getDataFormatString();
          if (format == null) {
            return CellContent.Look.PLAIN;
          }
          return DateUtil.isADateFormat(style.getDataFormat(), format)
              ? CellContent.Look.DATE
              : format.contains("%") ? CellContent.Look.PERCENT : CellContent.Look.PLAIN;
        });
  }

  /** Index of the style that a cell has when nobody gave it one. */
  abstract int plainStyle();

  /** One new style for each pair of a style and a format, never one for each cell. */
  int style(int like, String format) {
    return styles.computeIfAbsent(
        new StyleKey(like, format),
        key -> {
          CellStyle from = workbook.getCellStyleAt(like);
          if (from == null || format.isEmpty() || format.equals(from.getDataFormatString())) {
            return like;
          }
          CellStyle style = workbook.createCellStyle();
          style.cloneStyleFrom(from);
          style.setDataFormat(workbook.createDataFormat().getFormat(format));
          return (int) style.getIndex();
        });
  }

  @Override
  public abstract void write(OutputStream out) throws IOException;

  @Override
  public void close() throws IOException {
    workbook.close();
  }
}
