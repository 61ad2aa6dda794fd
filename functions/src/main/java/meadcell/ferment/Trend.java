package meadcell.ferment;

import meadcell.catalogue.Quantity;
import meadcell.catalogue.Statement;
import meadcell.catalogue.Verdict;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/**
 * Whether a ferment still falls, from its latest readings.
 *
 * <p>Normal theory with the readings' uncertainty known: the fall per day is the slope of a
 * straight line, and its one-sided 95 % limits are 1.645 u / √Σ(t − mean t)² from it. The readings
 * are the latest ones, as few as make that half-width at most 0.6 of {@code minFall}, but at least
 * three. Where even all readings do not suffice, only a fall can be told.
 */
record Trend(
    int readings,
    double fall,
    double halfWidth,
    double level,
    boolean rises,
    boolean longEnough,
    double u,
    double minFall) {
  /** 95 % point of the normal distribution, one side. */
  static final double Z = 1.6448536269514722;

  private static final int LEAST_READINGS = 3;
  private static final double NARROW = 0.6;

  /** Nobody expects an end more exactly than this: common practice, no source. */
  private static final double EXPECTATION = 0.002;

  private static final double ROUNDING = 1e-9;
  private static final double MONTH = 30;

  /** Days between readings to come where there is no interval to go by. */
  private static final double WEEK = 7;

  static Trend of(double[] days, double[] gravities, double u, double minFall) {
    SimpleRegression line = new SimpleRegression();
    int i = days.length;
    while (i > 0 && !longEnough(line, u, minFall)) {
      i--;
      line.addData(days[i], gravities[i]);
    }
    return new Trend(
        days.length - i,
        -line.getSlope(),
        halfWidth(line, u),
        line.predict(days[days.length - 1]),
        Rise.shows(line, days, gravities, u),
        longEnough(line, u, minFall),
        u,
        minFall);
  }

  private static boolean longEnough(SimpleRegression line, double u, double minFall) {
    return line.getN() >= LEAST_READINGS && halfWidth(line, u) <= NARROW * minFall;
  }

  static double halfWidth(SimpleRegression line, double u) {
    return Z * u / Math.sqrt(line.getXSumSquares());
  }

  private double least() {
    return fall - halfWidth;
  }

  private double most() {
    return fall + halfWidth;
  }

  Verdict verdict(double[] days, double[] gravities, double expected) {
    if (least() > 0) {
      return new Verdict("falling", limits(Because.FALLS));
    }
    if (!longEnough) {
      return new Verdict("cannot tell", due(days));
    }
    if (rises) {
      return new Verdict(
          "cannot tell",
          Statement.of(Because.RISES)
              .with("readings", readings)
              .with("last", gravities[gravities.length - 1], Quantity.SPECIFIC_GRAVITY));
    }
    if (most() >= minFall) {
      return new Verdict(
          "cannot tell",
          limits(Because.UNDECIDED)
              .with("minFall", minFall, Quantity.GRAVITY_PER_DAY)
              .with("days", interval(days), Quantity.DAYS));
    }
    double counts = expected + EXPECTATION;
    return new Verdict(
        level <= counts + ROUNDING ? "finished" : "stalled",
        limits(Because.STILL)
            .with("minFall", minFall, Quantity.GRAVITY_PER_DAY)
            .with("sugar", MONTH * minFall * Outlook.SUGAR_PER_GRAVITY, Quantity.GRAM_PER_LITRE, 2)
            .with("level", level, Quantity.NUMBER, 4)
            .with("expected", counts, Quantity.NUMBER)
            .with("giveOrTake", EXPECTATION, Quantity.NUMBER));
  }

  private Statement limits(Because message) {
    return Statement.of(message)
        .with("readings", readings)
        .with("fall", fall, Quantity.GRAVITY_PER_DAY, 2)
        .with("least", least(), Quantity.GRAVITY_PER_DAY, 2)
        .with("most", most(), Quantity.GRAVITY_PER_DAY, 2);
  }

  /** How many readings, going on as before, would make the half-width narrow enough. */
  private Statement due(double[] days) {
    double interval = interval(days);
    SimpleRegression line = new SimpleRegression();
    for (double day : days) {
      line.addData(day, 0);
    }
    int more = 0;
    while (!longEnough(line, u, minFall)) {
      more++;
      line.addData(days[days.length - 1] + more * interval, 0);
    }
    Statement due =
        readings < LEAST_READINGS
            ? Statement.of(Because.TOO_FEW)
            : Statement.of(Because.TOO_SHORT)
                .with("halfWidth", halfWidth, Quantity.GRAVITY_PER_DAY, 2)
                .with("narrow", NARROW * minFall, Quantity.GRAVITY_PER_DAY, 2);
    return due.with("readings", readings)
        .with("more", more)
        .with("days", more * interval, Quantity.DAYS, 3);
  }

  /** Mean days between readings, a day at least. */
  private static double interval(double[] days) {
    int last = days.length - 1;
    return last == 0 ? WEEK : Math.max(1, Math.rint((days[last] - days[0]) / last));
  }
}
