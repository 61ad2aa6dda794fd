package meadcell.batch.book;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meadcell.batch.poi.CatalogueFunctions;
import meadcell.batch.poi.PoiCalculation;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.Workbook;

/** A workbook that Apache POI reads and writes. */
abstract class PoiBook<W extends Workbook> implements Book {
  private record StyleKey(int style, String format) {}

  final W workbook;
  private final List<PoiSheet> sheets = new ArrayList<>();
  private final Map<StyleKey, CellStyle> styles = new HashMap<>();
  private final Map<Integer, CellContent.Look> looks = new HashMap<>();
  private boolean changed;

  PoiBook(W workbook) {
    this.workbook = workbook;
    for (int i = 0; i < workbook.getNumberOfSheets(); i++) {
      sheets.add(new PoiSheet(this, workbook.getSheetAt(i)));
    }
  }

  @Override
  public List<PoiSheet> sheets() {
    return sheets;
  }

  @Override
  public Calculation calculation(CatalogueFunctions functions, Live live) {
    return new PoiCalculation(workbook, functions, live);
  }

  @Override
  public boolean isChanged() {
    return changed;
  }

  void touch() {
    changed = true;
  }

  CellContent.Look look(Cell cell) {
    CellStyle style = cell.getCellStyle();
    return looks.computeIfAbsent(
        (int) style.getIndex(),
        index -> {
          String format = style.getDataFormatString();
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
  CellStyle style(CellStyle from, String format) {
    return styles.computeIfAbsent(
        new StyleKey(from.getIndex(), format),
        key -> {
          if (format.isEmpty() || format.equals(from.getDataFormatString())) {
            return from;
          }
          CellStyle style = workbook.createCellStyle();
          style.cloneStyleFrom(from);
          style.setDataFormat(workbook.createDataFormat().getFormat(format));
          return style;
        });
  }

  @Override
  public abstract void write(OutputStream out) throws IOException;

  @Override
  public void close() throws IOException {
    workbook.close();
  }
}
