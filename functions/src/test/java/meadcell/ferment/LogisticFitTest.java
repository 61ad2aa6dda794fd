package meadcell.ferment;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class LogisticFitTest {
  // T. Carlson 1913, growth of yeast by the hour, in R. Pearl, Quarterly Review of Biology
  // 2:532–548 (1927)
  private static final double[] YEAST = {
    9.6, 18.3, 29.0, 47.2, 71.1, 119.1, 174.6, 257.3, 350.7, 441.0, 513.3, 559.7, 594.8, 629.4,
    640.8, 651.1, 655.9, 659.6, 661.8
  };
  private static final double[] HOURS = IntStream.range(0, 19).asDoubleStream().toArray();

  // recomputed from the printed table with two other statistics programs
  @Test
  void yeastGrowth() {
    LogisticFit fit = LogisticFit.fromZero(HOURS, YEAST);
    assertEquals(663.022, fit.span(), 0.0005);
    assertEquals(4.27076, fit.a(), 0.000005);
    assertEquals(0.546995, fit.r(), 0.0000005);
    assertEquals(194.325, fit.sumOfSquares(), 0.0005);
    assertArrayEquals(new double[] {1.70, 0.0409, 0.00558}, fit.standardErrors(), 0.005);
    assertEquals(0.0409, fit.standardErrors()[1], 0.00005);
    assertEquals(0.00558, fit.standardErrors()[2], 0.000005);
  }

  // Pearl's printed fit, from memory: K 665, a 4.1896, r 0.5355; its sum of squares recomputed
  @Test
  void noWorseThanThePrintedFit() {
    double squares = 0;
    for (int i = 0; i < YEAST.length; i++) {
      double residual = YEAST[i] - 665 / (1 + Math.exp(4.1896 - 0.5355 * HOURS[i]));
      squares += residual * residual;
    }
    assertEquals(246.05, squares, 0.005);
    assertTrue(LogisticFit.fromZero(HOURS, YEAST).sumOfSquares() < squares);
  }

  @Property(tries = 200)
  void recoversTheCurveItWasMadeFrom(
      @Between(min = -10, max = 40) double floor,
      @Between(min = 20, max = 150) double span,
      @Between(min = 0.2, max = 1.5) double rate,
      @Between(min = 2, max = 8) double midpoint) {
    double[] times = IntStream.range(0, 15).asDoubleStream().toArray();
    double[] values = new double[times.length];
    for (int i = 0; i < values.length; i++) {
      values[i] = floor + span / (1 + Math.exp(rate * (times[i] - midpoint)));
    }
    LogisticFit fit = LogisticFit.of(times, values);
    assertEquals(floor, fit.floor(), 1e-4);
    assertEquals(span, fit.span(), 1e-4);
    assertEquals(-rate, fit.r(), 1e-4);
    assertEquals(midpoint, fit.midpoint(), 1e-4);
    assertEquals(midpoint, fit.timeAt(fit.span() / 2), 1e-4);
    assertEquals(-span * rate / 4, fit.slope(fit.midpoint()), 1e-3);
  }
}
