package meadcell.ferment;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** A log as a cellar keeps it: hydrometer noise of 0.0005, rounded to 0.001 or to 0.0005. */
record Readings(double[] days, double[] gravities) {
  static final double NOISE = 0.0005;

  /** Days between readings. */
  static final int[] EVERY = {1, 7, 14, 30};

  /** So many readings, the last on that day. */
  static Readings upTo(
      double lastDay, int count, double every, DoubleUnaryOperator gravity, Random random) {
    double step = random.nextBoolean() ? 0.001 : 0.0005;
    double[] days = new double[count];
    double[] gravities = new double[count];
    for (int i = 0; i < count; i++) {
      days[i] = lastDay - (count - 1 - i) * every;
      double read = gravity.applyAsDouble(days[i]) + NOISE * random.nextGaussian();
      gravities[i] = Math.round(read / step) * step;
    }
    return new Readings(days, gravities);
  }

  double last() {
    return gravities[gravities.length - 1];
  }
}
