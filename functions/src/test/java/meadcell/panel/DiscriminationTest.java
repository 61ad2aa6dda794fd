package meadcell.panel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class DiscriminationTest {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  @Property
  void theShareAtADistanceGivesTheDistanceBack(
      @Between(min = 0.05, max = 7, decimals = 3) double distance, Panel.Protocol test) {
    double share = test.model.shareAt(distance);
    assertEquals(distance, test.model.distance(share), 1e-6);
    assertTrue(test.model.shareAt(distance + 0.01) > share);
  }

  /** The integrals as published, by the plainest quadrature. */
  @Property(tries = 50)
  void sharesAreThePublishedIntegrals(@Between(max = 6, decimals = 2) double distance) {
    double triangle = 0;
    double threeAfc = 0;
    double tetrad = 0;
    double step = 0.002;
    for (double z = -9 + step / 2; z < 9 + distance; z += step) {
      double density = NORMAL.density(z) * step;
      double at = NORMAL.cumulativeProbability(z);
      double before = NORMAL.cumulativeProbability(z - distance);
      threeAfc += at * at * NORMAL.density(z - distance) * step;
      tetrad += density * (2 * at * before - before * before);
      if (z > 0) {
        double shift = distance * Math.sqrt(2.0 / 3);
        double spread = z * Math.sqrt(3);
        triangle +=
            density
                * (NORMAL.cumulativeProbability(shift - spread)
                    + NORMAL.cumulativeProbability(-shift - spread));
      }
    }
    assertEquals(2 * triangle, Panel.Protocol.TRIANGLE.model.shareAt(distance), 1e-6);
    assertEquals(threeAfc, Panel.Protocol.THREE_AFC.model.shareAt(distance), 1e-6);
    assertEquals(1 - 2 * tetrad, Panel.Protocol.TETRAD.model.shareAt(distance), 1e-6);
  }

  @Test
  void lessThanGuessingHasNoDistance() {
    assertEquals(0, Sensitivity.dprime(50, Panel.Protocol.PAIRED));
    assertEquals(0, Sensitivity.dprime(100 / 3.0, Panel.Protocol.TRIANGLE), 1e-6);
    Refusal refusal =
        assertThrows(Refusal.class, () -> Sensitivity.dprime(30, Panel.Protocol.TRIANGLE));
    assertEquals(Refusal.Kind.NO_SOLUTION, refusal.kind());
  }
}
