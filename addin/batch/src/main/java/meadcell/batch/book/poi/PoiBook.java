package meadcell.batch.book.poi;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.DefinedName;
import meadcell.batch.book.NamedTable;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Workbook;

/** A workbook that Apache POI reads and writes. */
public abstract class PoiBook<W extends Workbook> implements Book {
  private record StyleKey(int style, String format) {}

  protected final W workbook;
  protected final List<BookSheet> sheets = new ArrayList<>();
  private final Map<StyleKey, Integer> styles = new HashMap<>();
  private CellContent.Look[] looks = new CellContent.Look[0];

  protected PoiBook(W workbook) {
    this.workbook = workbook;
  }

  @Override
  public List<BookSheet> sheets() {
    return sheets;
  }

  @Override
  public List<DefinedName> names() {
    return workbook.getAllNames().stream().map(PoiBook::definedName).toList();
  }

  private static DefinedName definedName(Name name) {
    String formula;
    try {
      formula = name.isFunctionName() ? null : name.getRefersToFormula();
    } catch (RuntimeException e) {
      formula = null; // POI cannot read it; only formulas with this name suffer
    }
    return new DefinedName(
        name.getNameName(), name.getSheetIndex(), formula, name.isFunctionName());
  }

  @Override
  public List<NamedTable> tables() {
    return List.of();
  }

  public CellContent.Look look(int style) {
    if (style < 0 || style >= workbook.getNumCellStyles()) {
      return CellContent.Look.PLAIN;
    }
    if (style >= looks.length) {
      looks = Arrays.copyOf(looks, style + 16);
    }
    if (looks[style] == null) {
      looks[style] = look(workbook.getCellStyleAt(style));
    }
    return looks[style];
  }

  private static CellContent.Look look(CellStyle style) {
    String format = style == null ? null : style.getDataFormatString();
    if (format == null) {
      return CellContent.Look.PLAIN;
    }
    return DateUtil.isADateFormat(style.getDataFormat(), format)
        ? CellContent.Look.DATE
        : format.contains("%") ? CellContent.Look.PERCENT : CellContent.Look.PLAIN;
  }

  /** Index of the style that a cell has when nobody gave it one. */
  protected abstract int plainStyle();

  /** One new style for each pair of a style and a format, never one for each cell. */
  public int style(int like, String format) {
    StyleKey key = new StyleKey(like, format);
    Integer known = styles.get(key);
    if (known == null) {
      known = createStyle(like, format);
      styles.put(key, known);
    }
    return known;
  }

  private int createStyle(int like, String format) {
    CellStyle from = workbook.getCellStyleAt(like);
    if (from == null || format.isEmpty() || format.equals(from.getDataFormatString())) {
      return like;
    }
    CellStyle style = workbook.createCellStyle();
    style.cloneStyleFrom(from);
    style.setDataFormat(workbook.createDataFormat().getFormat(format));
    return style.getIndex();
  }

  @Override
  public void close() throws IOException {
    workbook.close();
  }
}
