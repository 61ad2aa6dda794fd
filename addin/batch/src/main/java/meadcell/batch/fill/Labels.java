package meadcell.batch.fill;

import java.util.ArrayList;
import java.util.List;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.fill.Headings.Heading;
import meadcell.batch.plan.Header;

/** The labelled cells of a sheet, found by what is written beside or above them. */
final class Labels {
  private final BookSheet sheet;
  private final Headings headings;

  Labels(BookSheet sheet, Headings headings) {
    this.sheet = sheet;
    this.headings = headings;
  }

  /**
   * The cell beside or below a label, or null. For a table it is the nearest label above it, one
   * over its own columns before any other.
   *
   * @param table null for a cell that stands by itself
   */
  Place labelled(String name, Table table) throws Ambiguous {
    List<Place> found = new ArrayList<>();
    for (List<Heading> row : headings.rows()) {
      for (Heading heading : row) {
        if (heading.has(name)) {
          found.add(heading.place());
        }
      }
    }
    if (table != null) {
      found = nearest(found, table);
    }
    if (found.size() > 1) {
      throw new Ambiguous(
          "the label \"" + name + "\" stands at " + found.get(0) + " and at " + found.get(1));
    }
    return found.isEmpty() ? null : valueOf(found.get(0));
  }

  private static List<Place> nearest(List<Place> labels, Table table) {
    List<Place> above = labels.stream().filter(p -> p.row() < table.headerRow()).toList();
    List<Place> over = above.stream().filter(p -> table.spans(p.column())).toList();
    List<Place> nearer = over.isEmpty() ? above : over;
    if (nearer.isEmpty()) {
      return labels;
    }
    int row = nearer.get(nearer.size() - 1).row();
    return nearer.stream().filter(place -> place.row() == row).toList();
  }

  /** The label whose value is at a place. */
  Header labelOf(String name, Place value) {
    for (List<Heading> row : headings.rows()) {
      for (Heading heading : row) {
        if (heading.has(name) && valueOf(heading.place()).equals(value)) {
          return heading.header();
        }
      }
    }
    return Header.of(name);
  }

  private Place valueOf(Place label) {
    Place end = sheet.mergedEnd(label);
    Place beside = new Place(label.row(), end.column() + 1);
    Place below = new Place(end.row() + 1, label.column());
    return !holdsValue(beside) && holdsValue(below) ? below : beside;
  }

  private boolean holdsValue(Place place) {
    CellContent content = sheet.content(place);
    String text = content.typedText();
    return text == null ? !content.isBlank() : text.chars().anyMatch(Character::isDigit);
  }
}
