package meadcell.sulfite;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.Arrays;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/** Readings that fall by the same share every day: a straight line through their logarithms. */
final class Decline {
  @Arg(name = "days", help = "Day of each reading", is = Quantity.DATE, from = 0, to = 300000)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Days {}

  @Arg(
      name = "free",
      help = "Free SO₂ on that day",
      is = Quantity.MILLIGRAM_PER_LITRE,
      above = 0,
      to = 1000)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Free {}

  @Arg(
      name = "limit",
      help = "Free SO₂ to act at",
      is = Quantity.MILLIGRAM_PER_LITRE,
      above = 0,
      to = 1000)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Limit {}

  /** A forecast further ahead is worth nothing (common practice, no source). */
  private static final int FURTHEST_DAYS = 3650;

  private final SimpleRegression line = new SimpleRegression();
  private final double first;
  private final double last;

  Decline(double[] days, double[] values) {
    first = Arrays.stream(days).min().orElseThrow();
    last = Arrays.stream(days).max().orElseThrow();
    if (first == last) {
      throw new Refusal(SulfiteReason.ONE_DAY);
    }
    for (int i = 0; i < days.length; i++) {
      line.addData(days[i] - first, Math.log(values[i]));
    }
  }

  double dayWhen(double limit) {
    double start = Math.exp(line.getIntercept());
    if (limit > start) {
      throw new Refusal(SulfiteReason.LIMIT_ABOVE_START)
          .with("limit", limit, Quantity.MILLIGRAM_PER_LITRE)
          .with("start", start, Quantity.MILLIGRAM_PER_LITRE, 3);
    }
    double day = first + (Math.log(limit) - line.getIntercept()) / line.getSlope();
    if (line.getSlope() >= 0 || day > last + FURTHEST_DAYS) {
      throw new Refusal(SulfiteReason.HARDLY_FALLS).with("years", FURTHEST_DAYS / 365);
    }
    return day;
  }
}
