package meadcell.batch.calculation;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Formulas that rest on cellar functions: what people write, {@code formulas.tsv}, and calls in
 * every shape, {@code calls.tsv}. A line is a family, a tab, and a formula that may stand below the
 * data, in which ...
 *
 * <ul>
 *   <li>{@code {…}} is an array formula, {@code [3,1]} behind it its height and width;
 *   <li>{@code @5} behind it puts it into row 5, beside the data;
 *   <li>{@code #3} behind it is a shared formula of three rows from row 2 on.
 * </ul>
 *
 * <p>In calls, a line {@code =name} begins a list of values; {@code <name>} stands for each of
 * them, {@code <name~usual>} for the usual one and, one slot after the other, for each of them.
 */
final class Corpus {

  /**
   * One formula.
   *
   * @param row the row it must stand in, or 0
   * @param copies how many rows share it
   */
  record Line(
      String family, String formula, boolean array, int height, int width, int row, int copies) {}

  private static final Pattern EVERY = Pattern.compile("<([a-z]+)>");
  private static final Pattern ONE_OF =
      Pattern.compile("<([a-z]+)~((?:[^<>\"]|\"[^\"]*\"|>(?=[0-9]))+)>");

  private Corpus() {}

  /** What people write. */
  static List<Line> formulas() throws IOException {
    return read("formulas.tsv").stream().map(Corpus::line).toList();
  }

  /** Every function and operator, one argument after the other replaced by all kinds of input. */
  static List<Line> calls() throws IOException {
    Map<String, List<String>> lists = new HashMap<>();
    Set<String> calls = new LinkedHashSet<>();
    for (String line : read("calls.tsv")) {
      if (line.startsWith("=")) {
        List<String> list = List.of(line.substring(1).split("\t"));
        lists.put(list.get(0), list.subList(1, list.size()));
      } else {
        expand(line, lists, calls);
      }
    }
    return calls.stream().map(Corpus::line).toList();
  }

  private static void expand(
      String template, Map<String, List<String>> lists, Set<String> expanded) {
    Matcher every = EVERY.matcher(template);
    if (every.find()) {
      for (String value : lists.get(every.group(1))) {
        expand(every.replaceFirst(Matcher.quoteReplacement(value)), lists, expanded);
      }
      return;
    }
    expanded.add(ONE_OF.matcher(template).replaceAll("$2"));
    Matcher slot = ONE_OF.matcher(template);
    while (slot.find()) {
      for (String value : lists.get(slot.group(1))) {
        String filled =
            template.substring(0, slot.start()) + value + template.substring(slot.end());
        expanded.add(ONE_OF.matcher(filled).replaceAll("$2"));
      }
    }
  }

  private static List<String> read(String name) throws IOException {
    InputStream resource = Corpus.class.getResourceAsStream(name);
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(resource, StandardCharsets.UTF_8))) {
      return reader.lines().toList();
    }
  }

  private static Line line(String text) {
    String family = text.substring(0, text.indexOf('\t'));
    String formula = text.substring(text.indexOf('\t') + 1);
    Matcher size = Pattern.compile("(.*\\})\\[(\\d+),(\\d+)\\]").matcher(formula);
    int height = 1;
    int width = 1;
    if (size.matches()) {
      formula = size.group(1);
      height = Integer.parseInt(size.group(2));
      width = Integer.parseInt(size.group(3));
    }
    Matcher place = Pattern.compile("(.*)([@#])(\\d+)").matcher(formula);
    int row = 0;
    int copies = 1;
    if (place.matches()) {
      formula = place.group(1);
      int number = Integer.parseInt(place.group(3));
      row = place.group(2).equals("@") ? number : 2;
      copies = place.group(2).equals("#") ? number : 1;
    }
    boolean array =
        formula.startsWith("{")
            && formula.endsWith("}")
            && !formula.matches("\\{[^{}]*[,;][^(){}]*\\}");
    return new Line(
        family,
        array ? formula.substring(1, formula.length() - 1) : formula,
        array,
        height,
        width,
        row,
        copies);
  }
}
