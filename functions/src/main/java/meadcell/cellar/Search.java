package meadcell.cellar;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/** Looks through the range of one argument for the values with which a call gives a result. */
final class Search {
  private static final int EVEN = 256;
  private static final int BY_RATIO = 144;

  /** By ratio from this share of the highest value on. */
  private static final double LEAST_SHARE = 1e-6;

  private static final int HALVINGS = 60;
  private static final int MOST_STEPS = 1000;
  private static final double ACCURACY = 1e-13;

  /** Relative distance of two values that are one solution. */
  private static final double ONE = 1e-6;

  /** Relative distance of a result that is the wanted one. */
  private static final double REACHED = 1e-9;

  /** What is left at a jump, as a part of the difference at the ends of its bracket. */
  private static final double JUMP = 1e-6;

  private final ScalarCall call;
  private final int place;
  private final ArgSpec arg;
  private final double wanted;
  private final double lowest;
  private final double highest;
  private final List<Point> points = new ArrayList<>();
  private final List<Double> found = new ArrayList<>();
  private boolean jumps;
  private Refusal refused;

  /** A value and how far its result lies above the wanted one; not a number where it is refused. */
  private record Point(double x, double miss) {
    boolean isAnswered() {
      return !Double.isNaN(miss);
    }
  }

  /**
   * @param place of the argument that is looked for, from 0
   */
  Search(ScalarCall call, int place, double wanted) {
    this.call = call;
    this.place = place;
    this.wanted = wanted;
    arg = call.number(place);
    Range range = arg.range();
    if (Double.isInfinite(range.lowest()) || Double.isInfinite(range.highest())) {
      throw new Refusal(CellarReason.UNLIMITED).with("name", arg.name());
    }
    lowest = arg.quantity().fromMetric(range.lowest(), call.system());
    highest = arg.quantity().fromMetric(range.highest(), call.system());
  }

  /** {@return the only solution; none or several are refused} */
  double only() {
    grid().forEach(this::look);
    if (points.stream().noneMatch(Point::isAnswered)) {
      throw refused;
    }
    for (int i = 0; i < points.size(); i++) {
      if (points.get(i).miss() == 0) {
        add(points.get(i).x());
      }
      if (i > 0) {
        between(points.get(i - 1), points.get(i));
      }
      if (i > 1) {
        nearMiss(points.get(i - 2), points.get(i - 1), points.get(i));
      }
    }
    if (found.isEmpty()) {
      throw jumps
          ? new Refusal(CellarReason.JUMPS)
              .with("name", arg.name())
              .with("result", wanted, Quantity.NUMBER)
          : none();
    }
    if (isFlat(found.get(0))) {
      throw new Refusal(CellarReason.FLAT)
          .with("name", arg.name())
          .with("first", found.get(0), Quantity.NUMBER)
          .with("result", wanted, Quantity.NUMBER);
    }
    if (found.size() > 1) {
      throw new Refusal(CellarReason.SEVERAL)
          .with("name", arg.name())
          .with("result", wanted, Quantity.NUMBER)
          .with("first", found.get(0), Quantity.NUMBER)
          .with("other", found.get(found.size() - 1), Quantity.NUMBER);
    }
    return found.get(0);
  }

  private TreeSet<Double> grid() {
    TreeSet<Double> grid = new TreeSet<>();
    for (int i = 0; i < EVEN; i++) {
      grid.add(lowest + (highest - lowest) * i / EVEN);
    }
    grid.add(highest);
    for (int i = 1; lowest >= 0 && i < BY_RATIO; i++) {
      double x = highest * Math.pow(LEAST_SHARE, (double) i / BY_RATIO);
      if (x > lowest) {
        grid.add(x);
      }
    }
    return grid;
  }

  private double miss(double x) {
    if (!arg.takes(x, call.system())) {
      return Double.NaN;
    }
    Object[] arguments = call.copy();
    arguments[place] = x;
    try {
      return call.answer(arguments) - wanted;
    } catch (Refusal why) {
      refused = why;
      return Double.NaN;
    }
  }

  /** Adds a point and, where the function begins or ends to answer before it, the last answer. */
  private void look(double x) {
    Point next = new Point(x, miss(x));
    if (!points.isEmpty()) {
      Point last = points.get(points.size() - 1);
      if (last.isAnswered() != next.isAnswered()) {
        points.add(last.isAnswered() ? end(last, next.x()) : end(next, last.x()));
      }
    }
    points.add(next);
  }

  private Point end(Point answered, double outside) {
    Point inside = answered;
    double beyond = outside;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (inside.x() + beyond) / 2;
      Point tried = new Point(middle, miss(middle));
      if (tried.isAnswered()) {
        inside = tried;
      } else {
        beyond = middle;
      }
    }
    return inside;
  }

  private void between(Point a, Point b) {
    if (!(a.miss() * b.miss() < 0)) {
      return;
    }
    BrentSolver brent = new BrentSolver(ACCURACY, ACCURACY * Math.abs(b.x() - a.x()), 0);
    double x = brent.solve(MOST_STEPS, this::missOrFar, a.x(), b.x());
    double left = Math.abs(missOrFar(x));
    if (left <= JUMP * Math.abs(b.miss() - a.miss()) + REACHED * Math.abs(wanted)) {
      add(x);
    } else {
      jumps = true;
    }
  }

  private double missOrFar(double x) {
    double miss = miss(x);
    return Double.isNaN(miss) ? Double.MAX_VALUE : miss;
  }

  /** Where three points bend towards the wanted result without reaching it. */
  private void nearMiss(Point a, Point b, Point c) {
    boolean sameSide = a.miss() * b.miss() > 0 && b.miss() * c.miss() > 0;
    double nearest = Math.abs(b.miss());
    if (!sameSide
        || nearest > Math.abs(a.miss())
        || nearest > Math.abs(c.miss())
        || a.x() == c.x()) {
      return;
    }
    double x =
        new BrentOptimizer(ACCURACY, ACCURACY * Math.abs(c.x() - a.x()))
            .optimize(
                new MaxEval(MOST_STEPS),
                GoalType.MINIMIZE,
                new UnivariateObjectiveFunction(value -> Math.signum(b.miss()) * missOrFar(value)),
                new SearchInterval(a.x(), c.x(), b.x()))
            .getPoint();
    Point best = new Point(x, missOrFar(x));
    if (best.miss() * b.miss() < 0) {
      between(a, best);
      between(best, c);
    } else if (Math.abs(best.miss())
        <= REACHED * Math.max(Math.abs(wanted), Math.abs(a.miss() - b.miss()))) {
      add(x);
    }
  }

  private void add(double x) {
    for (double known : found) {
      if (Math.abs(x - known) <= ONE * Math.max(Math.abs(x), Math.abs(known))) {
        return;
      }
    }
    found.add(x);
  }

  /** A function in steps gives the same for a whole stretch of values. */
  private boolean isFlat(double x) {
    double step = 2 * ONE * Math.max(Math.abs(x), (highest - lowest) * LEAST_SHARE);
    return miss(x) == 0 && (miss(x - step) == 0 || miss(x + step) == 0);
  }

  private Refusal none() {
    double[] results =
        points.stream()
            .filter(Point::isAnswered)
            .mapToDouble(p -> p.miss() + wanted)
            .sorted()
            .toArray();
    return new Refusal(CellarReason.NO_SOLUTION)
        .with("name", arg.name())
        .with("result", wanted, Quantity.NUMBER)
        .with("lowest", lowest, Quantity.NUMBER)
        .with("highest", highest, Quantity.NUMBER)
        .with("least", results[0], Quantity.NUMBER)
        .with("most", results[results.length - 1], Quantity.NUMBER);
  }
}
