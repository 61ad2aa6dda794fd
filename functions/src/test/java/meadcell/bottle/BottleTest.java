package meadcell.bottle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import meadcell.bottle.Labelling.LabelRange;
import meadcell.bottle.Labelling.Rule;
import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class BottleTest {
  private static final List<String> WORDS = List.of("dry", "medium dry", "medium", "sweet");

  @Property
  void pressureInvertsCo2(
      @Between(min = -50, max = 1500, decimals = 2) double kPa,
      @Between(min = 0.1, max = 39, decimals = 2) double temperatureC,
      @Between(min = 1, max = 25, decimals = 2) double abv,
      @Between(max = 300, decimals = 1) double sugar) {
    double co2 = Pressure.co2(kPa, temperatureC, abv, sugar);
    assertEquals(kPa, Pressure.pressure(co2, temperatureC, abv, sugar), 1e-9 * (kPa + 101.325));
    assertTrue(Pressure.pressure(co2, temperatureC + 1, abv, sugar) > kPa, "warmer presses more");
    assertTrue(Pressure.pressure(co2 + 0.01, temperatureC, abv, sugar) > kPa);
  }

  /** Liger-Belair et al. 2017, Scientific Reports 7:10938, table 1: bar of CO₂ at 6, 12, 20 °C. */
  @Test
  void sparklingWinePressesAsMeasuredFromSixToTwentyDegrees() {
    double co2 = Pressure.co2(750 - 101.325, 20, 12.5, 10);
    assertEquals(4.7, (Pressure.pressure(co2, 6, 12.5, 10) + 101.325) / 100, 0.1);
    assertEquals(5.8, (Pressure.pressure(co2, 12, 12.5, 10) + 101.325) / 100, 0.1);
  }

  @Property
  void refermentedSugarIsFoundAgainAsGas(
      @Between(max = 150, decimals = 1) double sugar,
      @Between(min = 1, max = 16, decimals = 2) double abv,
      @Between(max = 15, decimals = 2) double co2,
      @Between(min = 1, max = 40, decimals = 1) double temperatureC) {
    double kPa = Pressure.referment(sugar, abv, co2, temperatureC);
    double held = CarbonDioxide.dissolved(kPa, temperatureC, abv + sugar / 16.83, 0);
    assertEquals(co2 + 2 * 44.009 / 180.156 * sugar, held, 1e-9);
    assertTrue(Pressure.referment(sugar + 1, abv, co2, temperatureC) > kPa);
  }

  @Property
  void primingGivesTheRiseItWasMadeFor(
      @Between(min = 1, max = 5000, decimals = 1) double volumeL,
      @Between(min = 0.1, max = 12, decimals = 2) double rise,
      @Between(min = 10, max = 100, decimals = 1) double percent) {
    double sucrose = Pressure.priming(volumeL, rise, percent) * percent / 100;
    assertEquals(rise, sucrose / volumeL * 4 * 44.009 / 342.297, 1e-9);
  }

  @Property
  void aLabelIsWithinItsOwnRangeAndTheRangeWithinItsClass(
      @Between(min = 0.5, max = 24, decimals = 1) double label, Rule rule) {
    LabelRange range = Labelling.labelRange(label, rule);
    assertTrue(range.lowest() <= label && label <= range.highest());
    assertTrue(range.highest() - range.lowest() <= 3 + 1e-9);
    if (rule == Rule.USA) {
      for (double end : new double[] {14, 16, 21, 24}) {
        assertEquals(label <= end, range.highest() <= end, label + " and " + end);
        assertTrue(label <= end || range.lowest() >= end, label + " and " + end);
      }
    }
  }

  @Property
  void moreSugarIsNeverDrierAndMoreAcidNeverSweeter(
      @Between(max = 60, decimals = 1) double sugar,
      @Between(max = 15, decimals = 1) double acidity) {
    OptionalDouble acid = OptionalDouble.of(acidity);
    int word = WORDS.indexOf(Labelling.sweetness(sugar, acid));
    assertTrue(word <= WORDS.indexOf(Labelling.sweetness(sugar + 0.5, acid)));
    assertTrue(word >= WORDS.indexOf(Labelling.sweetness(sugar, OptionalDouble.of(acidity + 0.5))));
    assertTrue(word <= WORDS.indexOf(Labelling.sweetness(sugar, OptionalDouble.empty())));
  }

  @Property
  void bottlesTakeWhatTheyHoldAndOneMoreWouldNotFill(
      @Between(min = 1, max = 5000, decimals = 1) double volumeL,
      @Between(min = 50, max = 3000, decimals = 0) double bottleMl,
      @Between(max = 50, decimals = 1) double loss) {
    double bottles = Bottle.count(volumeL, bottleMl, loss);
    double left = volumeL * 10 * (100 - loss) - bottles * bottleMl;
    assertTrue(left > -1e-5 && left < bottleMl, "left " + left);
  }

  @Property
  void volumeComesBackWithTheTemperature(
      @Between(min = 0.5, max = 40, decimals = 2) double from,
      @Between(min = 0.5, max = 40, decimals = 2) double to,
      @Between(min = 1, max = 96, decimals = 1) double abv) {
    double there = Bottle.volumeAt(225, from, to, abv, 0);
    assertEquals(225, Bottle.volumeAt(there, to, from, abv, 0), 1e-10);
  }

  @Property
  void energyAddsUp(
      @Between(max = 25, decimals = 1) double abv, @Between(max = 300, decimals = 1) double sugar) {
    Portion spirit = new Portion(100, abv, 0, 0, 0);
    Portion sweet = new Portion(100, 0, sugar, 0, 0);
    Portion both = new Portion(100, abv, sugar, 0, 0);
    Portion thrice = new Portion(300, abv, sugar, 0, 0);
    double apart = Labelling.energy(spirit) + Labelling.energy(sweet);
    assertEquals(apart, Labelling.energy(both), 1e-9);
    assertEquals(3 * apart, Labelling.energy(thrice), 1e-9);
    double inKcal = Labelling.kilocalories(spirit) + Labelling.kilocalories(sweet);
    assertEquals(inKcal, Labelling.kilocalories(both), 1e-9);
    assertEquals(3 * inKcal, Labelling.kilocalories(thrice), 1e-9);
    assertEquals(4.184, apart / Math.max(1e-9, inKcal), apart == 0 ? 5 : 0.07);
  }

  @Test
  void sulfitesAreDeclaredUnlessTheyAreSurelyBelowTheLimit() {
    assertEquals("declare", Labelling.sulfites(10, 0.001).word());
    assertEquals("not required", Labelling.sulfites(9.99, 0.001).word());
    assertEquals("not required", Labelling.sulfites(5, 3.03).word());
    assertEquals("declare", Labelling.sulfites(5, 3.04).word());
  }

  @Test
  void aBlankIsNoSugarThatCannotFerment() {
    var referment = Cellar.catalogue().get("BOTTLE.REFERMENT");
    referment.call(0.1, 13.0);
    assertEquals(
        Refusal.Kind.OUT_OF_RANGE,
        assertThrows(Refusal.class, () -> referment.call(0.0, 13.0)).kind());
  }

  @Test
  void aBlankIsNoAnalysisForSulfites() {
    var sulfites = Cellar.catalogue().get("BOTTLE.SULFITES");
    assertEquals("not required", sulfites.call(0.1, 3.0));
    assertEquals(
        Refusal.Kind.OUT_OF_RANGE,
        assertThrows(Refusal.class, () -> sulfites.call(0.0, 3.0)).kind());
  }

  @Test
  void madeOnlyFromHoneyAndWaterIsYesOrNo() {
    assertThrows(
        Refusal.class,
        () -> Cellar.catalogue().get("BOTTLE.TAXCLASS").call(8.0, 5.0, "natural", 0.5));
  }
}
