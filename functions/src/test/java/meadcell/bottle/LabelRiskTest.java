package meadcell.bottle;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class LabelRiskTest {

  // tables of the normal distribution: 2.5 % lie above the mean plus 1.96 standard deviations
  @Test
  void oneLimitNear() {
    Labelling.LabelRange allowed = new Labelling.LabelRange(12, 15);
    assertEquals(2.5, LabelRisk.percent(allowed, 15 - 0.3 * 1.959964, 0.3), 1e-4);
    assertEquals(50, LabelRisk.percent(allowed, 12, 0.1), 1e-9);
    assertEquals(0, LabelRisk.percent(allowed, 13.5, 0.05), 1e-12);
    assertEquals(100, LabelRisk.percent(allowed, 18, 0.1), 1e-9);
  }

  @Test
  void agreesWithAnotherLibrary() {
    Random random = new Random(6);
    for (int i = 0; i < 1000; i++) {
      double abv = 8 + 10 * random.nextDouble();
      double u = 0.02 + random.nextDouble();
      double from = abv - 3 * random.nextDouble();
      double to = abv + 3 * random.nextDouble();
      NormalDistribution referee = NormalDistribution.of(abv, u);
      double expected =
          100 * (referee.cumulativeProbability(from) + referee.survivalProbability(to));
      assertEquals(
          expected,
          LabelRisk.percent(new Labelling.LabelRange(from, to), abv, u),
          1e-9 + 1e-6 * expected);
    }
  }
}
