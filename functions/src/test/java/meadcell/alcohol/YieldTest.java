package meadcell.alcohol;

import static meadcell.alcohol.SimulatedMead.between;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import meadcell.catalogue.Refusal;
import meadcell.density.Balling;
import meadcell.density.Mixture;
import meadcell.density.Sucrose;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class YieldTest {

  // OIV-MA-AS2-02 Table II: must density in kg/L and the strength that 16.83 g/L of sugar give;
  // dry white wines keep 22 g/L of extract
  @ParameterizedTest
  @CsvSource({"1.0556, 7.44", "1.0729, 10.06", "1.0818, 11.40", "1.0908, 12.75", "1.1047, 14.82"})
  void wineIsWithinTwiceTheUncertainty(double density, double abv) {
    double original = density / (Sucrose.WATER_20 / 1000);
    double present = Mixture.gravity(22, abv / 100);
    double computed = 100 * Balling.fermented(original, present).abvFraction();
    System.out.printf("wine: %.2f %% vol by 16.83 g/L, %.2f by balance%n", abv, computed);
    assertEquals(abv, computed, 2 * Yield.RELATIVE_UNCERTAINTY * computed);
  }

  // Ough, Amerine and Jones 1963 to 1985, as quoted: mean yields of wines measured over nine years,
  // from 0.588 to 0.665 % vol for 1 °Brix by region; dry wine at 0.993
  @ParameterizedTest
  @CsvSource({"20", "22", "24", "26"})
  void measuredWinesOfAllRegionsLieAroundIt(double brix) {
    double computed =
        100 * Balling.fermented(Sucrose.specificGravity(brix / 100), 0.993).abvFraction();
    System.out.printf(
        "wine: %.3f %% vol for 1 °Brix at %.0f °Brix by balance%n", computed / brix, brix);
    assertTrue(computed > 0.588 * brix && computed < 0.665 * brix);
  }

  // Mead of natural fermentation (2021, abstract): 17.60 °Brix, 11.04 % vol in the laboratory after
  // 112 days; its last gravity is not told, so the driest that meads are known to reach
  @Test
  void theOnePublishedPairOfAPlainMeadIsWithinTwiceTheUncertainty() {
    double computed = 100 * Balling.fermented(Sucrose.specificGravity(0.176), 0.992).abvFraction();
    System.out.printf("mead: 11.04 %% vol measured, %.2f by balance%n", computed);
    assertEquals(11.04, computed, 2 * Yield.RELATIVE_UNCERTAINTY * computed);
  }

  @Test
  void strengthsOfSimulatedMeadsAreWithinTheUncertainty() {
    Random random = new Random(21);
    int held = 0;
    double bias = 0;
    int meads = 4000;
    for (int i = 0; i < meads; i++) {
      SimulatedMead mead = mead(random, between(random, 0.4385, 0.478));
      double computed = 100 * Balling.fermented(mead.original(), mead.present()).abvFraction();
      bias += (computed / mead.abv() - 1) / meads;
      if (Math.abs(computed / mead.abv() - 1) < 2 * Yield.RELATIVE_UNCERTAINTY) {
        held++;
      }
    }
    System.out.printf(
        "balance: %.1f %% of strengths within twice its uncertainty, bias %+.1f %% of the strength%n",
        100.0 * held / meads, 100 * bias);
    assertTrue(held > 0.8 * meads);
  }

  @Test
  void calibrationFindsWhatTheYeastMade() {
    Random random = new Random(22);
    double ethanolPerSugar = 0.445;
    double[] originals = new double[12];
    double[] presents = new double[12];
    double[] measured = new double[12];
    for (int i = 0; i < originals.length; i++) {
      SimulatedMead mead = mead(random, ethanolPerSugar);
      originals[i] = mead.original() + 0.0005 * random.nextGaussian();
      presents[i] = mead.present() + 0.0005 * random.nextGaussian();
      measured[i] = mead.abv() + 0.05 * random.nextGaussian();
    }
    Uncertainty.Calibration found = Yield.fit(originals, presents, measured);
    int better = 0;
    int meads = 1000;
    double squares = 0;
    for (int i = 0; i < meads; i++) {
      SimulatedMead next = mead(random, ethanolPerSugar);
      double plain = 100 * Balling.fermented(next.original(), next.present()).abvFraction();
      double calibrated =
          100 * Balling.fermented(next.original(), next.present(), 1 / found.yield()).abvFraction();
      squares += Math.pow(calibrated - next.abv(), 2) / meads;
      better += Math.abs(calibrated - next.abv()) < Math.abs(plain - next.abv()) ? 1 : 0;
    }
    System.out.printf(
        "calibrated: yield %.4f ± %.4f, residual %.3f %% vol, root mean square of new meads %.3f%n",
        found.yield(), found.standardError(), found.residual(), Math.sqrt(squares));
    assertTrue(better > 0.95 * meads);
    assertTrue(Math.sqrt(squares) < 2 * found.residual());
  }

  @Test
  void calibrationRefusesWhatCannotBelongTogether() {
    double[] originals = {1.1, 1.09, 1.08};
    double[] presents = {0.995, 0.996, 0.997};
    assertThrows(Refusal.class, () -> Yield.fit(originals, presents, new double[] {7, 6.5, 6}));
    assertThrows(
        Refusal.class,
        () -> Yield.fit(new double[] {1.1, 1.09}, new double[] {1, 1}, new double[] {13, 11.5}));
  }

  private static SimulatedMead mead(Random random, double ethanolPerSugar) {
    return SimulatedMead.of(
        random, between(random, 0.15, 0.3), between(random, 0.8, 1), ethanolPerSugar);
  }
}
