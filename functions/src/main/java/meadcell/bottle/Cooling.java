package meadcell.bottle;

import java.util.OptionalDouble;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * How fast heat kills along a log of temperatures. Newton's law of cooling: what falls towards a
 * steady temperature does so exponentially, and three readings tell how. A straight line between
 * two of them stays too warm.
 */
final class Cooling {
  /** Beyond so many time constants between two readings it has fallen at once. */
  private static final double AT_ONCE = 50;

  private static final int NODES = 16;
  private static final int MOST_EVALUATIONS = 100_000;

  private final double[] minutes;
  private final double[] degrees;
  private final double perKelvin;
  private final double reference;

  Cooling(double[] minutes, double[] degrees, double zK, double reference) {
    this.minutes = minutes;
    this.degrees = degrees;
    this.perKelvin = Math.log(10) / zK;
    this.reference = reference;
  }

  /**
   * {@return minutes at the reference temperature that kill as much as those from a reading to the
   * next} Where both neighbours tell how it fell, the less of what they say.
   */
  double after(int i) {
    double least = straight(i);
    for (int first = Math.max(0, i - 1); first <= i && first + 2 < minutes.length; first++) {
      OptionalDouble rate = rate(first);
      if (rate.isPresent()) {
        least = Math.min(least, curved(i, rate.getAsDouble()));
      }
    }
    return least;
  }

  private double straight(int i) {
    double rise = perKelvin * (degrees[i + 1] - degrees[i]);
    return time(i) * lethal(degrees[i]) * (rise == 0 ? 1 : Math.expm1(rise) / rise);
  }

  private double curved(int i, double rate) {
    double time = time(i);
    if (rate * time > AT_ONCE) {
      return time * lethal(degrees[i + 1]);
    }
    double span = (degrees[i] - degrees[i + 1]) / -Math.expm1(-rate * time);
    return new IterativeLegendreGaussIntegrator(NODES, 1e-10, 1e-300)
        .integrate(
            MOST_EVALUATIONS, t -> lethal(degrees[i] + span * Math.expm1(-rate * t)), 0, time);
  }

  /** {@return by what share of its distance to the end it falls a minute, over two intervals} */
  private OptionalDouble rate(int first) {
    double fall = degrees[first] - degrees[first + 1];
    double nextFall = degrees[first + 1] - degrees[first + 2];
    double time = time(first);
    double nextTime = time(first + 1);
    boolean slowsDown = nextFall >= 0 && fall * nextTime > nextFall * time * (1 + 1e-9);
    if (!slowsDown) {
      return OptionalDouble.empty();
    }
    double most = AT_ONCE / Math.min(time, nextTime);
    double least = 1e-9 / (time + nextTime);
    if (excess(most, fall, nextFall, time, nextTime) >= 0) {
      return OptionalDouble.of(Double.POSITIVE_INFINITY);
    }
    return excess(least, fall, nextFall, time, nextTime) <= 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(
            new BrentSolver(1e-12, 1e-12)
                .solve(1000, rate -> excess(rate, fall, nextFall, time, nextTime), least, most));
  }

  /** Above 0 while at this rate the first interval would have less of the whole fall. */
  private static double excess(
      double rate, double fall, double nextFall, double time, double nextTime) {
    return -fall * Math.exp(-rate * time) * Math.expm1(-rate * nextTime)
        + nextFall * Math.expm1(-rate * time);
  }

  private double time(int i) {
    return minutes[i + 1] - minutes[i];
  }

  private double lethal(double degrees) {
    return Math.exp(perKelvin * (degrees - reference));
  }
}
