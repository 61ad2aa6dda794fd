package meadcell.alcohol;

import static meadcell.alcohol.SimulatedMead.between;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.Random;
import meadcell.density.Balling;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SugarLeftTest {
  private static final OptionalDouble LEFT_OUT = OptionalDouble.empty();

  private static SugarLeft left(double original, double present) {
    return SugarLeft.of(original, present, LEFT_OUT);
  }

  @Test
  void aWeakMeadKeepsWhatAFixedAllowanceHid() {
    assertEquals(15, left(1.04, 1.004).likely(), 1);
  }

  @Test
  void aDryMeadIsDry() {
    assertTrue(left(1.1, 0.995).likely() <= 4);
    assertEquals(0, left(1.1, 0.995).limits(LEFT_OUT, 0.0005).low());
  }

  // Regulation (EC) 729/2008: least sugar-free extract of meads of 1 part of honey to 3, 2, 1, 0.5
  @ParameterizedTest
  @CsvSource({"1.112, 9, 15", "1.15, 12, 20", "1.222, 15, 25", "1.293, 15, 30"})
  void noMeadHasLessThanTheLawAsksFor(double original, double abv, double least) {
    double present = original;
    while (100 * Balling.fermented(original, present).abvFraction() < abv) {
      present -= 0.001;
    }
    SugarFree parts =
        SugarFree.of(Balling.fermented(original, present), Balling.EXTRACT_PER_ETHANOL);
    assertTrue(parts.gramsPerLitre() >= least, () -> "only " + parts.gramsPerLitre());
  }

  @Test
  void limitsHoldTheSugarOfSimulatedMeads() {
    Random random = new Random(20);
    int held = 0;
    int meads = 4000;
    for (int i = 0; i < meads; i++) {
      SimulatedMead mead =
          SimulatedMead.of(
              random,
              between(random, 0.1, 0.36),
              between(random, 0.6, 1),
              between(random, 0.4385, 0.478));
      double original = mead.original() + 0.0005 * random.nextGaussian();
      double present = mead.present() + 0.0005 * random.nextGaussian();
      Extract.SugarLimits left = left(original, present).limits(LEFT_OUT, 0.0005);
      if (left.low() <= mead.sugarLeft() && mead.sugarLeft() <= left.high()) {
        held++;
      }
    }
    double share = 100.0 * held / meads;
    System.out.printf("sugar left within its limits: %.1f %%%n", share);
    assertTrue(share >= 93, () -> "only " + share + " %");
  }

  @Test
  void allExtractIsTheMostThatCanBeSugar() {
    SugarLeft left = SugarLeft.of(1.1, 0.995, OptionalDouble.of(0));
    double extract = Extract.extract(1.1, 0.995);
    assertEquals(extract, left.limits(OptionalDouble.of(30), 0.0005).high(), 1e-9);
    assertEquals(extract, left.likely(), 1e-9);
  }
}
