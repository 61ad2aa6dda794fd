package meadcell.batch.calculation;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The formulas of users that rest on cellar functions, {@code formulas.tsv}: a family, a tab, and a
 * formula for row 2 or below the data, in which ...
 *
 * <ul>
 *   <li>{@code {…}} is an array formula, {@code [3,1]} behind it its height and width;
 *   <li>{@code @5} behind it puts it into row 5, beside the data;
 *   <li>{@code #3} behind it is a shared formula of three rows from row 2 on.
 * </ul>
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

  private Corpus() {}

  static List<Line> lines() throws IOException {
    InputStream resource = Corpus.class.getResourceAsStream("formulas.tsv");
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(resource, StandardCharsets.UTF_8))) {
      return reader.lines().map(Corpus::line).toList();
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
