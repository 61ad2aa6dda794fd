package meadcell.batch.fill;

import static java.util.stream.Collectors.joining;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Figures;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.RelativeForms;
import meadcell.batch.report.Origin;

/**
 * Which cells are Meadcell's own, remembered in a document property as hashes: of their formulas in
 * relative form, so that rows may be inserted or sorted in between; of plain values with their
 * place, so that a number that a person typed is not taken for one of ours.
 */
final class OwnCells {
  private static final String PROPERTY = Origin.CELLS;

  private final Set<String> before = new HashSet<>();
  private final Set<String> now = new TreeSet<>();
  private final OwnValues values = new OwnValues();
  private final RelativeForms relative = new RelativeForms();
  private final Map<String, String> forms = new HashMap<>();

  OwnCells(Book book) {
    for (String word : book.property(PROPERTY).orElse("").split(" ")) {
      if (OwnValues.isMark(word)) {
        values.read(word);
      } else if (!word.isEmpty()) {
        before.add(word);
      }
    }
  }

  /** Whether the cell holds what an earlier run put there. */
  boolean isOwn(BookSheet sheet, Place place, CellContent content) {
    return !before.isEmpty() && before.contains(hash(sheet, place, content))
        || !content.isFormula()
            && values.contains(column(sheet, place), place.row(), number(sheet, place, content));
  }

  void add(BookSheet sheet, Place place, CellContent content) {
    if (content.isFormula()) {
      now.add(hash(sheet, place, content));
    } else {
      values.add(column(sheet, place), place.row(), number(sheet, place, content));
    }
  }

  /** Stores the cells of this run; those of other plans stay known. */
  void store(Book book) {
    Set<String> all = new TreeSet<>(before);
    all.addAll(now);
    String text = Stream.concat(all.stream(), values.words().stream()).collect(joining(" "));
    if (!text.equals(book.property(PROPERTY).orElse(""))) {
      book.property(PROPERTY, text);
    }
  }

  private String column(BookSheet sheet, Place place) {
    return forms.computeIfAbsent(
        sheet.name() + "!" + place.column(), name -> Long.toHexString(number(name)));
  }

  private String hash(BookSheet sheet, Place place, CellContent content) {
    if (content.isFormula()) {
      return forms.computeIfAbsent(
          relative.of(content.formula(), place.row(), place.column()),
          text -> hash(text.toLowerCase(Locale.ROOT).replace(" ", "")));
    }
    return Long.toHexString(number(sheet, place, content));
  }

  /** What a plain value hashes to in its place. */
  private static long number(BookSheet sheet, Place place, CellContent content) {
    Value value = content.value();
    String figures =
        value instanceof Value.Number plain
            ? Figures.of(plain.number())
            : value instanceof Value.Truth truth
                ? String.valueOf(truth.isTrue()) // as earlier versions remembered it
                : value.toString();
    return number(sheet.name() + "!" + place + "=" + figures);
  }

  private static String hash(String text) {
    return Long.toHexString(number(text));
  }

  private static long number(String text) {
    long hash = 0xcbf29ce484222325L; // FNV-1a
    for (int i = 0; i < text.length(); i++) {
      hash = (hash ^ text.charAt(i)) * 0x100000001b3L;
    }
    return hash;
  }
}
