package meadcell.catalogue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * One number that a call must reproduce, and what kind of evidence the number is.
 *
 * <p>Rows live in {@code /meadcell/check/<family>.tsv}, tab-separated: call, expected, tolerance,
 * kind, source, where. Lines that start with {@code #} are comments. The tolerance is absolute;
 * half the last printed digit unless the source says otherwise.
 *
 * @param call literal call, see {@link LiteralCall}
 * @param expected Double, String, or a range of them
 * @param tolerance largest allowed absolute difference
 * @param kind how much the number proves
 * @param source published source, or {@code common practice, no source}, or {@code from memory: …}
 * @param where table, section or page in the source; how it was worked
 */
public record CheckRow(
    String call, Object expected, double tolerance, Evidence kind, String source, String where) {

  /** What came out for a row. */
  public record Verdict(CheckRow row, Object got, boolean holds) {
    /** {@return the result as a check row would hold it, so that its shape shows} */
    public String gotText() {
      return LiteralCall.literal(got);
    }

    /** {@return what was expected, in the same way} */
    public String expectedText() {
      return LiteralCall.literal(row.expected);
    }
  }

  /**
   * {@return all rows of a catalogue's families}
   *
   * @param catalogue the functions
   */
  public static List<CheckRow> load(Catalogue catalogue) {
    List<CheckRow> rows = new ArrayList<>();
    for (FamilySpec family : catalogue.families().values()) {
      String path = "/meadcell/check/" + family.name().toLowerCase(Locale.ROOT) + ".tsv";
      try (InputStream in = family.classes().get(0).getResourceAsStream(path)) {
        if (in == null) {
          throw new IllegalStateException("no check values: " + path);
        }
        new String(in.readAllBytes(), StandardCharsets.UTF_8)
            .lines()
            .filter(line -> !line.isBlank() && !line.startsWith("#"))
            .map(line -> parse(path, line))
            .forEach(rows::add);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return rows;
  }

  /**
   * {@return how many rows there are of each kind, in words}
   *
   * @param rows some check rows
   */
  public static String totals(List<CheckRow> rows) {
    return Arrays.stream(Evidence.values())
        .map(kind -> rows.stream().filter(row -> row.kind == kind).count() + " " + kind.word())
        .collect(Collectors.joining(", "));
  }

  /** {@return the name of the function that the row is about} */
  public String function() {
    return call.substring(0, call.indexOf('('));
  }

  private static CheckRow parse(String path, String line) {
    String[] cells = line.split("\t", -1);
    if (cells.length != 6) {
      throw new IllegalStateException(path + ": not six columns: " + line);
    }
    try {
      Object expected = LiteralCall.parseValue(cells[1]);
      double tolerance = Double.parseDouble(cells[2]);
      return new CheckRow(cells[0], expected, tolerance, Evidence.of(cells[3]), cells[4], cells[5]);
    } catch (IllegalArgumentException e) {
      throw new IllegalStateException(path + ": " + e.getMessage() + " in " + line, e);
    }
  }

  /**
   * {@return the catalogue's own answer, compared}
   *
   * @param catalogue the functions
   */
  public Verdict verdict(Catalogue catalogue) {
    LiteralCall literal = LiteralCall.parse(call);
    return verdict(catalogue.get(literal.function()).call(literal.arguments()));
  }

  /**
   * {@return an answer computed elsewhere, compared}
   *
   * @param got the answer
   */
  public Verdict verdict(Object got) {
    return new Verdict(this, got, agrees(expected, got));
  }

  private boolean agrees(Object want, Object have) {
    if (want instanceof Object[][] wanted && have instanceof Object[][] rows) {
      boolean same = wanted.length == rows.length;
      for (int i = 0; same && i < wanted.length; i++) {
        same = wanted[i].length == rows[i].length;
        for (int j = 0; same && j < wanted[i].length; j++) {
          same = agrees(wanted[i][j], rows[i][j]);
        }
      }
      return same;
    }
    if (want instanceof Double a && have instanceof Double b) {
      return Math.abs(a - b) <= tolerance;
    }
    return want.equals(have);
  }
}
