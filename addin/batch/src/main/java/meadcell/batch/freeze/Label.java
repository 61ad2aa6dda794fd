package meadcell.batch.freeze;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What a row or a column is known by.
 *
 * @param text empty where nothing tells it from others
 * @param alike how many of its sheet have the same
 */
record Label(String text, int alike) {
  static final Label NONE = new Label("", 0);
  private static final String BETWEEN = " | ";
  private static final Pattern ALIKE = Pattern.compile("(.*) \\(one of (\\d{1,7})\\)");

  /** Reads what {@link #toString} wrote. */
  static Label of(String written) {
    Matcher alike = ALIKE.matcher(written);
    return alike.matches()
        ? new Label(alike.group(1), Integer.parseInt(alike.group(2)))
        : new Label(written, written.isEmpty() ? 0 : 1);
  }

  /** Reads what {@link #written} wrote. */
  static List<Label> all(String written) {
    return Arrays.stream(written.split(" *\\| *", -1)).map(Label::of).toList();
  }

  static String written(List<Label> labels) {
    return labels.stream().map(Label::toString).collect(Collectors.joining(BETWEEN));
  }

  /**
   * Whether what had this label stands somewhere else now: it is not here any more, and yet there
   * are no fewer of its kind. A label that was only typed anew is one fewer.
   *
   * @param here the label at the same place now
   * @param alikeNow how many have this label now
   */
  boolean isElsewhere(Label here, int alikeNow) {
    return !text.isEmpty() && !text.equals(here.text) && alikeNow >= alike;
  }

  @Override
  public String toString() {
    return alike > 1 ? text + " (one of " + alike + ")" : text;
  }
}
