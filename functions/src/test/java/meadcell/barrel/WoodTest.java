package meadcell.barrel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import meadcell.catalogue.Refusal;
import meadcell.density.EthanolWater;
import meadcell.property.Between;
import meadcell.property.Property;
import meadcell.property.Size;
import org.junit.jupiter.api.Test;

/** What a barrel's past leaves in the present liquid. */
class WoodTest {
  private static double[] history(List<Double> fills, double soakedL, double exchange) {
    double[] volumesL = fills.stream().mapToDouble(Double::doubleValue).toArray();
    return WoodContact.history(volumesL, soakedL, exchange, 0);
  }

  @Property
  void sharesSumToAHundred(
      @Size(min = 1, max = 9) List<@Between(min = 1, max = 600) Double> fills,
      @Between(min = 0.1, max = 30) double soakedL,
      @Between(min = 1, max = 100) double exchange,
      @Between(min = 0, max = 100) double toppedL) {
    double[] volumesL = fills.stream().mapToDouble(Double::doubleValue).toArray();
    double[] shares = WoodContact.history(volumesL, soakedL, exchange, toppedL);
    assertEquals(fills.size(), shares.length);
    assertEquals(100, Arrays.stream(shares).sum(), 1e-9);
    assertTrue(Arrays.stream(shares).allMatch(share -> share >= 0));
  }

  @Property
  void laterFillsAndToppingNeverRaiseAnOldShare(
      @Size(min = 1, max = 8) List<@Between(min = 1, max = 600) Double> fills,
      @Between(min = 1, max = 600) double nextL,
      @Between(min = 0.1, max = 30) double soakedL,
      @Between(min = 1, max = 100) double exchange) {
    double[] before = history(fills, soakedL, exchange);
    List<Double> more = new java.util.ArrayList<>(fills);
    more.add(nextL);
    double[] after = history(more, soakedL, exchange);
    for (int i = 0; i < before.length; i++) {
      assertTrue(after[i] <= before[i]);
    }
    double[] volumesL = fills.stream().mapToDouble(Double::doubleValue).toArray();
    double[] topped = WoodContact.history(volumesL, soakedL, exchange, nextL);
    for (int i = 0; i < before.length - 1; i++) {
      assertTrue(topped[i] <= before[i]);
    }
  }

  @Property
  void theLastOccupantIsWhatCameOutOfTheWood(
      @Between(min = 1, max = 600) double firstL,
      @Between(min = 1, max = 600) double secondL,
      @Between(min = 0.1, max = 30) double soakedL,
      @Between(min = 1, max = 100) double exchange) {
    double carried = WoodContact.carryover(secondL, soakedL, exchange);
    assertEquals(carried, history(List.of(firstL, secondL), soakedL, exchange)[0], 1e-9);
    assertTrue(carried < WoodContact.carryover(secondL, 1.1 * soakedL, exchange));
    assertTrue(carried > WoodContact.carryover(1.1 * secondL, soakedL, exchange));
  }

  @Property
  void spiritConservesEthanolAndMass(
      @Between(min = 1, max = 600) double volumeL,
      @Between(min = 0.5, max = 20) double abv,
      @Between(min = 0.1, max = 30) double soakedL,
      @Between(min = 25, max = 96) double spiritAbv) {
    double mixed = WoodContact.spiritGain(volumeL, abv, soakedL, spiritAbv, 0);
    double mass = volumeL * density(abv) + soakedL * density(spiritAbv);
    double mixedL = mass / density(mixed);
    assertEquals(volumeL * abv + soakedL * spiritAbv, mixedL * mixed, 1e-8 * mixedL * mixed);
    assertTrue(mixed > abv && mixed < spiritAbv);
    assertTrue(mixed > WoodContact.spiritGain(volumeL, abv, soakedL, spiritAbv, soakedL / 2));
    assertEquals(abv, WoodContact.spiritGain(volumeL, abv, soakedL, spiritAbv, soakedL), 1e-9);
  }

  private static double density(double abv) {
    return EthanolWater.density(EthanolWater.massFraction(abv / 100), 20);
  }

  @Test
  void moreCannotDrainThanWasSoaked() {
    assertEquals(
        "drained is 6 L, more than soaked, 5 L.",
        assertThrows(Refusal.class, () -> WoodContact.spiritGain(220, 12, 5, 60, 6)).getMessage());
  }
}
