package meadcell.ferment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.alcohol.Alcohol;
import meadcell.catalogue.Refusal;
import meadcell.density.Mixture;
import meadcell.density.Water;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class FermentTest {
  private static final double[] DAYS = {0, 2, 4, 6, 8, 10, 12};
  private static final double[] FALL = {1.1, 1.094, 1.079, 1.053, 1.028, 1.013, 1.007};

  @Property
  void breakInvertsProgress(
      @Between(min = 1.03, max = 1.2) double original,
      @Between(min = 0.01, max = 100, decimals = 2) double share) {
    double gravity = Ferment.Break(original, share, 0.995);
    assertEquals(share, Ferment.progress(original, gravity, 0.995), 1e-8);
    assertTrue(gravity < original && gravity >= 0.995 - 1e-12);
  }

  @Property
  void progressGrowsAsGravityFalls(
      @Between(min = 1.05, max = 1.2) double original,
      @Between(min = 0.996, max = 1.049) double present) {
    assertTrue(
        Ferment.progress(original, present - 0.001, 0.995)
            > Ferment.progress(original, present, 0.995));
  }

  /** Feeding moves nothing but honey: alcohol and extract are what they were, plus the honey. */
  @Property
  void feedingKeepsTheBalance(
      @Between(min = 1.05, max = 1.13) double original,
      @Between(min = 0.997, max = 1.05) double present,
      @Between(min = 0.1, max = 10, decimals = 3) double honeyKg) {
    double effective = Ferment.originalAfter(100, original, present, honeyKg, 17.2);
    double ethanolKg = Course.ethanol(original, present) / 10;
    double extractKg = Alcohol.extract(original, present) / 10 + 0.828 * honeyKg;
    double massKg = present * Water.bettinSpieweck(20) / 10 + honeyKg;
    double gravity = gravityOf(ethanolKg / massKg, extractKg / massKg);
    double fed = massKg / (gravity * Water.bettinSpieweck(20));
    assertEquals(ethanolKg / fed, Course.ethanol(effective, gravity), 1e-6);
    assertEquals(extractKg / fed, Alcohol.extract(effective, gravity), 1e-6);
  }

  private static double gravityOf(double ethanolShare, double extractShare) {
    double gravity = 1;
    for (int i = 0; i < 60; i++) {
      double density = gravity * Water.bettinSpieweck(20);
      gravity = Mixture.gravity(extractShare * density, ethanolShare * density / 789.2391233);
    }
    return gravity;
  }

  @Test
  void feedingInTwoStepsOrOneIsTheSameBeforeFermentationStarts() {
    double once = Ferment.originalAfter(100, 1.09, 1.09, 8, 17.2);
    double half = Ferment.originalAfter(100, 1.09, 1.09, 4, 17.2);
    double massKg = 100 * 1.09 * Water.bettinSpieweck(20) / 1000 + 4;
    double volume = massKg / (half * Water.bettinSpieweck(20) / 1000);
    assertEquals(once, Ferment.originalAfter(volume, half, half, 4, 17.2), 1e-12);
  }

  @Property
  void gasHeatAndCoolingGoWithVolumeAndSugar(
      @Between(min = 1.05, max = 1.2) double original,
      @Between(min = 0.996, max = 1.049) double present) {
    double gas = Ferment.gas(100, original, present);
    assertEquals(2 * gas, Ferment.gas(200, original, present), 1e-9);
    assertTrue(Ferment.gas(100, original, present - 0.001) > gas);
    double day = 0.001;
    double made = Ferment.heat(100, original, present - day) - Ferment.heat(100, original, present);
    assertEquals(
        made * 1000 / 86400, Ferment.cooling(100, original, present, day), made * 1000 / 86400e2);
  }

  @Property
  void roomAirLiesBetweenOutsideAndGas(
      @Between(min = 0.001, max = 1, decimals = 3) double gas,
      @Between(min = 100, max = 1000, decimals = 1) double room,
      @Between(min = 0.2, max = 10, decimals = 2) double airChanges) {
    double ppm = Ferment.roomCo2(gas, room, airChanges, 420);
    assertTrue(ppm > 420);
    assertTrue(Ferment.roomCo2(gas, room, 2 * airChanges, 420) < ppm);
  }

  @Test
  void aDeadlyRoomIsRefusedWithTheReason() {
    Refusal refusal = assertThrows(Refusal.class, () -> Ferment.roomCo2(5, 60, 0.5, 420));
    assertTrue(refusal.getMessage().contains("dangerous to life"), refusal.getMessage());
    assertTrue(Ferment.roomCo2(0.5, 60, 0.5, 420) < 40_000);
  }

  @Test
  void forecastComesNearerItsEndWithTheTolerance() {
    Ferment.Forecast forecast = Ferment.forecast(DAYS, FALL, 0.001);
    assertTrue(Ferment.forecast(DAYS, FALL, 0.0005).day() > forecast.day());
    assertTrue(forecast.terminal() < 1.007);
    assertTrue(forecast.day() > 12);
  }

  @Test
  void forecastDoesNotDependOnTheCalendar() {
    double[] dates = new double[DAYS.length];
    for (int i = 0; i < dates.length; i++) {
      dates[i] = DAYS[i] + 46000;
    }
    Ferment.Forecast plain = Ferment.forecast(DAYS, FALL, 0.001);
    Ferment.Forecast dated = Ferment.forecast(dates, FALL, 0.001);
    assertEquals(plain.terminal(), dated.terminal(), 1e-12);
    assertEquals(plain.day() + 46000, dated.day(), 1e-6);
  }

  @Test
  void forecastRefusesWhatDoesNotFallOrHasNotTurned() {
    refusesForecast(new double[] {0, 2, 4, 6}, new double[] {1.1, 1.08, 1.05, 1.03}, "4 readings");
    refusesForecast(
        new double[] {0, 1, 2, 3, 4}, new double[] {1.03, 1.03, 1.031, 1.03, 1.03}, "fall by");
    refusesForecast(
        new double[] {0, 1, 2, 3, 4}, new double[] {1.03, 1.04, 1.05, 1.06, 1.07}, "fall by");
    refusesForecast(
        new double[] {0, 1, 2, 3, 4, 5},
        new double[] {1.1, 1.098, 1.094, 1.088, 1.079, 1.067},
        "do not show an end");
    refusesForecast(
        new double[] {0, 2, 2, 6, 8}, new double[] {1.1, 1.08, 1.05, 1.03, 1.02}, "later");
  }

  private static void refusesForecast(double[] days, double[] gravities, String why) {
    Refusal refusal = assertThrows(Refusal.class, () -> Ferment.forecast(days, gravities, 0.001));
    assertTrue(refusal.getMessage().contains(why), refusal.getMessage());
  }

  @Test
  void refusals() {
    assertThrows(Refusal.class, () -> Ferment.progress(1.08, 1.09, 0.995));
    assertThrows(Refusal.class, () -> Ferment.progress(1.08, 1.05, 1.08));
    assertThrows(Refusal.class, () -> Ferment.Break(1.02, 33.3, 1.03));
    assertThrows(Refusal.class, () -> Ferment.originalAfter(10, 1.1, 1.05, 200, 17.2));
    assertThrows(Refusal.class, () -> Ferment.gas(100, 1.05, 1.06));
  }
}
