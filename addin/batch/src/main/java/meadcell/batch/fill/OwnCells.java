package meadcell.batch.fill;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import meadcell.batch.book.Book;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.plan.Figures;
import meadcell.batch.poi.RelativeForm;

/**
 * Which cells are Meadcell's own, remembered in a document property as hashes of their formulas in
 * relative form (or of their values), so that rows may be inserted or sorted in between, and a
 * number that a person typed is never taken for one of ours.
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
  boolean isOwn(CellContent content, Place place) {
    return !before.isEmpty() && before.contains(hash(content, place));
  }

  void add(CellContent content, Place place) {
    now.add(hash(content, place));
  }

  /** Stores the cells of this run; those of other plans stay known. */
  boolean store(Book book) {
    Set<String> all = new TreeSet<>(before);
    if (!all.addAll(now)) {
      return false;
    }
    book.property(PROPERTY, all.stream().collect(Collectors.joining(" ")));
    return true;
  }

  private String hash(CellContent content, Place place) {
    if (content.isFormula()) {
      String form = RelativeForm.of(content.formula(), place.row(), place.column());
      return forms.computeIfAbsent(
          form, text -> hash(text.toLowerCase(Locale.ROOT).replace(" ", "")));
    }
    return hash(
        content.value() instanceof Double number ? Figures.of(number) : "" + content.value());
  }

  private static String hash(String text) {
    long hash = 0xcbf29ce484222325L; // FNV-1a
    for (int i = 0; i < text.length(); i++) {
      hash = (hash ^ text.charAt(i)) * 0x100000001b3L;
    }
    return Long.toHexString(hash);
  }
}
