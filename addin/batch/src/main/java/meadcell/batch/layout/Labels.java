package meadcell.batch.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.layout.Headings.Heading;
import meadcell.batch.plan.Header;
import meadcell.batch.plan.Names;
import meadcell.catalogue.Unit;

/** The labelled cells of a sheet, found by what is written beside, above or before them. */
public final class Labels {
  /** A label and its value in one cell, as {@code OG: 1.105}. */
  private static final Pattern INLINE =
      Pattern.compile("(\\D{1,40}?)\\s*(?:[:=]\\s*|\\s)([~≈]?[+-]?[\\d.,]*\\d[^;|:=]*)");

  /**
   * A labelled value.
   *
   * @param place the cell that holds it
   * @param unit the one that its label or the cell beside it names, or null
   * @param strange what stands there for a unit and is none that is known; empty otherwise
   * @param inline the value as a text, where the label stands in the same cell; null otherwise
   */
  public record Value(Place label, Place place, Unit unit, String strange, String inline) {}

  private final BookSheet sheet;
  private final Headings headings;
  private final Names names;

  public Labels(BookSheet sheet, Headings headings, Names names) {
    this.sheet = sheet;
    this.headings = headings;
    this.names = names;
  }

  /**
   * What a label says, or null. For a table it is the nearest label above it, one over its own
   * columns before any other.
   *
   * @param table null for a cell that stands by itself
   */
  public Value labelled(String name, Table table) throws Ambiguous {
    List<Heading> all = new ArrayList<>();
    headings.rows().forEach(all::addAll);
    List<Heading> found = headings.named(all, name);
    List<Value> inline = found.isEmpty() ? inline(all, name) : List.of();
    List<Place> places =
        found.isEmpty()
            ? inline.stream().map(Value::label).toList()
            : found.stream().map(Heading::place).toList();
    List<Place> nearest = table == null ? places : nearest(places, table);
    if (nearest.size() > 1) {
      throw new Ambiguous(
          "the label \"" + name + "\" stands at " + nearest.get(0) + " and at " + nearest.get(1));
    }
    if (nearest.isEmpty()) {
      return null;
    }
    Place label = nearest.get(0);
    for (Heading heading : found) {
      if (heading.place().equals(label)) {
        return value(heading);
      }
    }
    return inline.stream().filter(value -> value.label().equals(label)).findFirst().orElseThrow();
  }

  /** What stands beside or below a label. */
  public Value value(Heading label) {
    Place place = valueOf(label.place());
    Header header = label.header();
    Unit unit = header.unit().orElse(null);
    String strange = header.strange();
    String beside = sheet.content(new Place(place.row(), place.column() + 1)).typedText();
    if (unit == null && strange.isEmpty() && beside != null && place.row() == label.place().row()) {
      unit = Header.unitAlone(beside).orElse(null);
      strange = Header.strange(beside);
    }
    return new Value(label.place(), place, unit, strange, null);
  }

  private List<Value> inline(List<Heading> all, String name) {
    List<Value> found = new ArrayList<>();
    for (Heading heading : all) {
      Value value = inline(heading);
      if (value != null) {
        Header header = inlineHeader(heading);
        if (header.name().equals(name) || names.areSynonyms(name, header)) {
          found.add(value);
        }
      }
    }
    return found;
  }

  /** The value that stands behind its label in one cell, or null. */
  public Value inline(Heading heading) {
    Matcher parts = INLINE.matcher(heading.text());
    if (!parts.matches()) {
      return null;
    }
    Header header = inlineHeader(heading);
    return new Value(
        heading.place(),
        heading.place(),
        header.unit().orElse(null),
        header.strange(),
        parts.group(2).strip());
  }

  /** The label that stands before its value in one cell. */
  public Header inlineHeader(Heading heading) {
    Matcher parts = INLINE.matcher(heading.text());
    return names.read(parts.matches() ? parts.group(1) : heading.text());
  }

  private static List<Place> nearest(List<Place> labels, Table table) {
    List<Place> above = labels.stream().filter(p -> p.row() < table.top()).toList();
    List<Place> over = above.stream().filter(p -> table.spans(p.column())).toList();
    List<Place> nearer = over.isEmpty() ? above : over;
    if (nearer.isEmpty()) {
      return labels;
    }
    int row = nearer.get(nearer.size() - 1).row();
    return nearer.stream().filter(place -> place.row() == row).toList();
  }

  /** The cell beside a label, or the one below where only that holds a value. */
  public Place valueOf(Place label) {
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
