package meadcell.ferment;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import meadcell.catalogue.Refusal;
import org.junit.jupiter.api.Test;

/**
 * FERMENT.FORECAST must not be sure too early: simulated logistic ferments with hydrometer noise of
 * 0.0005, read to 0.001, from five readings on and cut off anywhere.
 */
class ForecastSimulationTest {
  private static final int LOGS = 3000;
  private static final double NOISE = 0.0005;
  private static final double WORST = 0.01;

  private final Random random = new Random(20261101);

  @Test
  void whatIsForecastComesTrue() {
    int answered = 0;
    double worst = 0;
    for (int log = 0; log < LOGS; log++) {
      double end = between(0.99, 1.03);
      double fall = between(0.08, 0.13);
      double rate = between(0.3, 1.3);
      double midpoint = between(3, 6);
      double[] days = new double[5 + random.nextInt(20)];
      double[] gravities = new double[days.length];
      double step = between(0.5, 2);
      for (int i = 0; i < days.length; i++) {
        days[i] = step * i;
        double read =
            end
                + fall / (1 + Math.exp(rate * (days[i] - midpoint)))
                + NOISE * random.nextGaussian();
        gravities[i] = Math.round(read * 1000) / 1000.0;
      }
      try {
        double forecast = Ferment.forecast(days, gravities, 0.001).terminal();
        worst = Math.max(worst, Math.abs(forecast - end));
        answered++;
      } catch (Refusal tooEarly) {
        assertTrue(tooEarly.getMessage().length() > 20);
      }
    }
    System.out.printf("%d of %d logs forecast, the worst off by %.4f%n", answered, LOGS, worst);
    assertTrue(answered > 0.7 * LOGS);
    assertTrue(worst < WORST);
  }

  private double between(double least, double most) {
    return least + (most - least) * random.nextDouble();
  }
}
