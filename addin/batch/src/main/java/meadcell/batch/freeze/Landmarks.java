package meadcell.batch.freeze;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.CellSet;

/**
 * What the rows and columns of a workbook's sheets are known by: a row by the first things that
 * were typed into it, a column by the text above.
 */
final class Landmarks {
  private static final int KEYS_OF_A_ROW = 3;
  private static final int LONGEST = 40;

  /** Enough to tell typed numbers apart, few enough for every program to keep. */
  private static final MathContext DIGITS = new MathContext(12);

  private static final class Sheet {
    final List<String> rows = new ArrayList<>();
    final Map<String, Integer> alike = new HashMap<>();
    final Map<Integer, TreeMap<Integer, String>> texts = new HashMap<>();

    String heading(int row, TreeMap<Integer, String> column) {
      var above = column == null ? null : column.lowerEntry(row);
      return above == null ? "" : above.getValue();
    }
  }

  private final Book book;
  private final CellSet frozen;
  private final Map<Integer, Sheet> known = new HashMap<>();

  /** The landmarks of a workbook in which some cells hold what a formula gave. */
  Landmarks(Book book, CellSet frozen) {
    this.book = book;
    this.frozen = frozen;
  }

  /** The first thing typed into a row, for people. */
  CellContent key(int sheet, int row) {
    return typed(sheet, row).stream().findFirst().orElse(CellContent.BLANK);
  }

  private List<CellContent> typed(int sheet, int row) {
    List<CellContent> typed = new ArrayList<>();
    BookSheet cells = book.sheets().get(sheet);
    int last = cells.lastColumn(row);
    for (int column = 0; column <= last && typed.size() < KEYS_OF_A_ROW; column++) {
      CellContent content = cells.content(new Place(row, column));
      if (isTyped(content) && !frozen.contains(sheet, row, column)) {
        typed.add(content);
      }
    }
    return typed;
  }

  private static boolean isTyped(CellContent content) {
    return !content.isFormula() && !content.isBlank() && !content.value().isError();
  }

  private Sheet sheet(int index) {
    return known.computeIfAbsent(index, this::read);
  }

  private Sheet read(int index) {
    Sheet sheet = new Sheet();
    BookSheet cells = book.sheets().get(index);
    for (int row = 0; row <= cells.lastRow(); row++) {
      String keys =
          typed(index, row).stream()
              .map(content -> text(content.value()))
              .collect(Collectors.joining(" · "));
      sheet.rows.add(keys);
      sheet.alike.merge(keys, 1, Integer::sum);
      for (int column = 0; column <= cells.lastColumn(row); column++) {
        CellContent content = cells.content(new Place(row, column));
        if (content.typedText() != null && !frozen.contains(index, row, column)) {
          sheet
              .texts
              .computeIfAbsent(column, key -> new TreeMap<>())
              .put(row, text(content.value()));
        }
      }
    }
    return sheet;
  }

  private static String text(Value value) {
    String text =
        value instanceof Value.Number plain
            ? BigDecimal.valueOf(plain.number()).round(DIGITS).stripTrailingZeros().toPlainString()
            : value.toString().strip().replaceAll("\\s+", " ").replace('|', '/');
    return text.length() <= LONGEST ? text : text.substring(0, LONGEST) + "…";
  }

  Label row(int sheet, int row) {
    List<String> rows = sheet(sheet).rows;
    String keys = row < rows.size() ? rows.get(row) : "";
    return keys.isEmpty() ? Label.NONE : new Label(keys, rowsLike(sheet, keys));
  }

  private int rowsLike(int sheet, String keys) {
    return sheet(sheet).alike.getOrDefault(keys, 0);
  }

  /** Of the cell's column, seen from the cell. */
  Label column(int sheet, Place place) {
    Sheet marks = sheet(sheet);
    String heading = marks.heading(place.row(), marks.texts.get(place.column()));
    return heading.isEmpty() ? Label.NONE : new Label(heading, columnsLike(sheet, place, heading));
  }

  private int columnsLike(int sheet, Place place, String heading) {
    Sheet marks = sheet(sheet);
    return (int)
        marks.texts.values().stream()
            .map(column -> marks.heading(place.row(), column))
            .filter(other -> Objects.equals(other, heading))
            .count();
  }

  /** Whether what this row was known by stands in another row now. */
  boolean isRowElsewhere(Label label, int sheet, int row) {
    return label.isElsewhere(row(sheet, row), rowsLike(sheet, label.text()));
  }

  /** Whether what this cell's column was known by stands above another column now. */
  boolean isColumnElsewhere(Label label, int sheet, Place place) {
    return label.isElsewhere(column(sheet, place), columnsLike(sheet, place, label.text()));
  }
}
