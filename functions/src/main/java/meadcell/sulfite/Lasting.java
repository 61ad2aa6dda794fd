package meadcell.sulfite;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/**
 * When free SO₂ will have fallen to a limit, and between which days. Readings of known uncertainty
 * are taken once as falling by the same share a day and once by the same amount; the limits hold
 * both courses, for nobody knows which it is.
 */
record Lasting(double day, double earliest, double latest, boolean byReadings) {
  /** Two-sided limits of 95 of 100. */
  private static final double COVERAGE = 1.96;

  /** A forecast further ahead is worth nothing (common practice, no source). */
  private static final double FURTHEST_DAYS = 3650;

  private static final double DAYS_PER_YEAR = 365.25;

  /** SO₂ for 1 mg of oxygen: 2 to 4 mg were measured and reckoned, around 2.83. */
  private static final double RATIO_FACTOR = Math.sqrt(2);

  /** What comes back from bound SO₂ may make it last so much longer: common practice, no source. */
  private static final double RELEASE = 1.4;

  /** A weighted straight line with known uncertainties. */
  private static final class Line {
    private double weights;
    private double meanX;
    private double meanY;
    private double squares;
    private final double slope;
    private final double scatter;

    Line(double[] x, double[] y, double[] u) {
      for (int i = 0; i < x.length; i++) {
        weights += 1 / (u[i] * u[i]);
        meanX += x[i] / (u[i] * u[i]);
        meanY += y[i] / (u[i] * u[i]);
      }
      meanX /= weights;
      meanY /= weights;
      double products = 0;
      for (int i = 0; i < x.length; i++) {
        squares += (x[i] - meanX) * (x[i] - meanX) / (u[i] * u[i]);
        products += (x[i] - meanX) * (y[i] - meanY) / (u[i] * u[i]);
      }
      slope = products / squares;
      double chi = 0;
      for (int i = 0; i < x.length; i++) {
        double off = (y[i] - at(x[i])) / u[i];
        chi += off * off;
      }
      // readings that scatter more than they say are less sure
      scatter = x.length > 2 ? Math.max(1, Math.sqrt(chi / (x.length - 2))) : 1;
    }

    double at(double x) {
      return meanY + slope * (x - meanX);
    }

    double uncertaintyAt(double x) {
      return scatter * Math.sqrt(1 / weights + (x - meanX) * (x - meanX) / squares);
    }

    boolean surelyFalls() {
      return slope + COVERAGE * scatter / Math.sqrt(squares) < 0;
    }
  }

  /** The oxygen that comes in, mg/L a year, and by which factor it may be off. */
  record Budget(double oxygenPerYear, double factor, double ratio) {}

  static Lasting of(double[] days, double[] free, double limit, double u, Optional<Budget> budget) {
    boolean several = Arrays.stream(days).distinct().count() > 1;
    if (several) {
      double[] logs = Arrays.stream(free).map(Math::log).toArray();
      double[] logU = Arrays.stream(free).map(f -> u / f).toArray();
      double[] plainU = new double[free.length];
      Arrays.fill(plainU, u);
      Line share = new Line(days, logs, logU);
      Line amount = new Line(days, free, plainU);
      if (share.surelyFalls() && amount.surelyFalls()) {
        return fromReadings(share, amount, limit, Arrays.stream(days).min().orElseThrow());
      }
    }
    return fromBudget(
        Arrays.stream(days).average().orElseThrow(),
        Arrays.stream(free).average().orElseThrow(),
        limit,
        u / Math.sqrt(free.length),
        budget.orElseThrow(
            () ->
                new Refusal(
                    several ? SulfiteReason.NOT_SURELY_FALLING : SulfiteReason.ONE_DAY_ALONE)));
  }

  private static Lasting fromReadings(Line share, Line amount, double limit, double first) {
    refuseAbove(limit, Math.exp(share.at(first)));
    double logLimit = Math.log(limit);
    double day = cross(share::at, logLimit, first);
    double earliest =
        Math.min(
            cross(x -> share.at(x) - COVERAGE * share.uncertaintyAt(x), logLimit, first),
            cross(x -> amount.at(x) - COVERAGE * amount.uncertaintyAt(x), limit, first));
    double latest =
        Math.max(
            cross(x -> share.at(x) + COVERAGE * share.uncertaintyAt(x), logLimit, first),
            cross(x -> amount.at(x) + COVERAGE * amount.uncertaintyAt(x), limit, first));
    return new Lasting(day, earliest, latest, true);
  }

  /** {@return the first day on which a course is down at a limit} */
  private static double cross(DoubleUnaryOperator course, double limit, double first) {
    if (course.applyAsDouble(first) <= limit) {
      return first;
    }
    double before = first;
    double after = first + 1;
    while (course.applyAsDouble(after) > limit) {
      before = after;
      after = first + 1.2 * (after - first);
      if (after > first + FURTHEST_DAYS) {
        throw hardlyFalls();
      }
    }
    for (int i = 0; i < 60; i++) {
      double middle = (before + after) / 2;
      if (course.applyAsDouble(middle) > limit) {
        before = middle;
      } else {
        after = middle;
      }
    }
    return after;
  }

  /** By the same amount a day, as air comes in. */
  private static Lasting fromBudget(
      double from, double free, double limit, double u, Budget budget) {
    refuseAbove(limit, free);
    double perDay = budget.ratio() * budget.oxygenPerYear() / DAYS_PER_YEAR;
    double span = (free - limit) / perDay;
    if (span > FURTHEST_DAYS) {
      throw hardlyFalls();
    }
    double sooner = Math.hypot(Math.log(budget.factor()), Math.log(RATIO_FACTOR));
    double factor = Math.exp(sooner);
    double longer = Math.exp(Math.hypot(sooner, Math.log(RELEASE)));
    double reading = COVERAGE * u / perDay;
    double early = Math.hypot(span * (1 - 1 / factor), reading);
    double late = Math.hypot(span * (longer - 1), reading * longer);
    return new Lasting(from + span, Math.max(from, from + span - early), from + span + late, false);
  }

  private static void refuseAbove(double limit, double start) {
    if (limit > start) {
      throw new Refusal(SulfiteReason.LIMIT_ABOVE_START)
          .with("limit", limit, Quantity.MILLIGRAM_PER_LITRE)
          .with("start", start, Quantity.MILLIGRAM_PER_LITRE, 3);
    }
  }

  private static Refusal hardlyFalls() {
    return new Refusal(SulfiteReason.HARDLY_FALLS).with("years", (int) (FURTHEST_DAYS / 365));
  }
}
