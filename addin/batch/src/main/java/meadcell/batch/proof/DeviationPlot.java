package meadcell.batch.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import meadcell.catalogue.CheckRow;

/**
 * What a function misses its check values by, in parts of the tolerance, against the value itself:
 * a slant or a bow shows where a model leaves its table.
 */
final class DeviationPlot {
  private record Point(double value, double miss, String kind, String call) {}

  private static final int WIDTH = 560;
  private static final int HEIGHT = 96;
  private static final int LEFT = 34;
  private static final int BOTTOM = 18;

  /** Wider ranges are drawn by their logarithm. */
  private static final double LOGARITHMIC = 100;

  private final List<Point> points = new ArrayList<>();
  private final boolean isLogarithmic;
  private final double least;
  private final double most;

  DeviationPlot(List<CheckRow.Verdict> verdicts) {
    for (CheckRow.Verdict verdict : verdicts) {
      if (!verdict.row().call().contains("\"US\"")) { // one axis, one unit
        add(verdict, verdict.row().expected(), verdict.got());
      }
    }
    double smallest = points.stream().mapToDouble(Point::value).min().orElse(0);
    double greatest = points.stream().mapToDouble(Point::value).max().orElse(0);
    isLogarithmic = smallest > 0 && greatest / smallest > LOGARITHMIC;
    least = smallest;
    most = greatest;
  }

  private void add(CheckRow.Verdict verdict, Object expected, Object got) {
    if (expected instanceof Object[][] wanted && got instanceof Object[][] rows) {
      for (int i = 0; i < Math.min(wanted.length, rows.length); i++) {
        for (int j = 0; j < Math.min(wanted[i].length, rows[i].length); j++) {
          add(verdict, wanted[i][j], rows[i][j]);
        }
      }
    } else if (expected instanceof Double want && got instanceof Double have) {
      double tolerance = verdict.row().tolerance();
      double off = have - want;
      double miss = off == 0 ? 0 : off / (tolerance == 0 ? Math.abs(off) : tolerance);
      points.add(
          new Point(
              want,
              Math.max(-1.2, Math.min(1.2, miss)),
              verdict.row().kind().word(),
              verdict.row().call()));
    }
  }

  /** Fewer than three values, or one value only, show nothing. */
  boolean showsSomething() {
    return points.size() > 2 && most > least;
  }

  void write(Html html) {
    String label = points.size() + " deviations, in parts of the tolerance, against the value";
    html.in(
        "svg",
        () -> {
          html.put("title", label);
          for (int level = -1; level <= 1; level++) {
            line(html, y(level), level == 0 ? "axis" : "limit");
            text(html, LEFT - 4, y(level) + 4, "end", level > 0 ? "+1" : Integer.toString(level));
          }
          for (Point point : points) {
            html.in(
                "circle",
                () -> html.in("title", () -> html.text(point.call())),
                "cx",
                shown(x(point.value())),
                "cy",
                shown(y(point.miss())),
                "r",
                "2.4",
                "class",
                point.kind());
          }
          text(html, LEFT, HEIGHT - 4, "start", String.format(Locale.ROOT, "%.5g", least));
          text(html, WIDTH - 4, HEIGHT - 4, "end", String.format(Locale.ROOT, "%.5g", most));
          text(
              html,
              (LEFT + WIDTH) / 2.0,
              HEIGHT - 4,
              "middle",
              isLogarithmic ? "expected value, metric (logarithmic)" : "expected value, metric");
        },
        "viewBox",
        "0 0 " + WIDTH + " " + HEIGHT,
        "width",
        WIDTH,
        "height",
        HEIGHT,
        "role",
        "img",
        "aria-label",
        label);
    html.text("\n");
  }

  private static void line(Html html, double y, String kind) {
    html.in(
        "line", () -> {}, "x1", LEFT, "x2", WIDTH - 4, "y1", shown(y), "y2", shown(y), "class",
        kind);
  }

  private static void text(Html html, double x, double y, String anchor, String text) {
    html.in("text", () -> html.text(text), "x", shown(x), "y", shown(y), "text-anchor", anchor);
  }

  private double x(double value) {
    double part =
        isLogarithmic
            ? Math.log(value / least) / Math.log(most / least)
            : (value - least) / (most - least);
    return LEFT + 6 + part * (WIDTH - LEFT - 16);
  }

  private static double y(double miss) {
    double half = (HEIGHT - BOTTOM) / 2.0;
    return half - miss * (half - 10);
  }

  private static String shown(double pixels) {
    return String.format(Locale.ROOT, "%.1f", pixels);
  }
}
