package meadcell.batch.fill;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Figures;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.calculation.RelativeForm;

/**
 * Which cells are Meadcell's own, remembered in a document property as hashes: of their formulas in
 * relative form, so that rows may be inserted or sorted in between; of plain values with their
 * place, so that a number that a person typed is never taken for one of ours.
 */
final class OwnCells {
  private static final String PROPERTY = "Meadcell cells";

  private final Set<String> before;
  private final Set<String> now = new TreeSet<>();
  private final Map<String, String> forms = new HashMap<>();

  OwnCells(Book book) {
    before =
        book.property(PROPERTY)
            .map(text -> Set.copyOf(Arrays.asList(text.split(" "))))
            .orElse(Set.of());
  }

  /** Whether the cell holds what an earlier run put there. */
  boolean isOwn(BookSheet sheet, Place place, CellContent content) {
    return !before.isEmpty() && before.contains(hash(sheet, place, content));
  }

  /** Whether the cell holds what this run put there. */
  boolean isOfThisRun(BookSheet sheet, Place place) {
    CellContent content = sheet.content(place);
    return !content.isBlank() && now.contains(hash(sheet, place, content));
  }

  void add(BookSheet sheet, Place place, CellContent content) {
    now.add(hash(sheet, place, content));
  }

  /** Stores the cells of this run; those of other plans stay known. */
  void store(Book book) {
    Set<String> all = new TreeSet<>(before);
    if (all.addAll(now)) {
      book.property(PROPERTY, all.stream().collect(Collectors.joining(" ")));
    }
  }

  private String hash(BookSheet sheet, Place place, CellContent content) {
    if (content.isFormula()) {
      String form = RelativeForm.of(content.formula(), place.row(), place.column());
      return forms.computeIfAbsent(
          form, text -> hash(text.toLowerCase(Locale.ROOT).replace(" ", "")));
    }
    Value value = content.value();
    String figures =
        value instanceof Value.Number plain
            ? Figures.of(plain.number())
            : value instanceof Value.Truth truth
                ? String.valueOf(truth.isTrue()) // as earlier versions remembered it
                : value.toString();
    return hash(sheet.name() + "!" + place + "=" + figures);
  }

  private static String hash(String text) {
    long hash = 0xcbf29ce484222325L; // FNV-1a
    for (int i = 0; i < text.length(); i++) {
      hash = (hash ^ text.charAt(i)) * 0x100000001b3L;
    }
    return Long.toHexString(hash);
  }
}
