package meadcell.ferment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.alcohol.Extract;
import meadcell.catalogue.Refusal;
import meadcell.density.Mixture;
import meadcell.density.Water;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class FermentTest {
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
    double extractKg = Extract.extract(original, present) / 10 + 0.828 * honeyKg;
    double massKg = present * Water.bettinSpieweck(20) / 10 + honeyKg;
    double gravity = gravityOf(ethanolKg / massKg, extractKg / massKg);
    double fed = massKg / (gravity * Water.bettinSpieweck(20));
    assertEquals(ethanolKg / fed, Course.ethanol(effective, gravity), 1e-6);
    assertEquals(extractKg / fed, Extract.extract(effective, gravity), 1e-6);
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
    double gas = Release.gas(100, original, present);
    assertEquals(2 * gas, Release.gas(200, original, present), 1e-9);
    assertTrue(Release.gas(100, original, present - 0.001) > gas);
    double day = 0.001;
    double made = Release.heat(100, original, present - day) - Release.heat(100, original, present);
    assertEquals(
        made * 1000 / 86400, Release.cooling(100, original, present, day), made * 1000 / 86400e2);
  }

  @Property
  void roomAirLiesBetweenOutsideAndGas(
      @Between(min = 0.001, max = 1, decimals = 3) double gas,
      @Between(min = 100, max = 1000, decimals = 1) double room,
      @Between(min = 0.2, max = 10, decimals = 2) double airChanges) {
    double ppm = Release.roomCo2(gas, room, airChanges, 420);
    assertTrue(ppm > 420);
    assertTrue(Release.roomCo2(gas, room, 2 * airChanges, 420) < ppm);
  }

  @Test
  void aDeadlyRoomIsRefusedWithTheReason() {
    Refusal refusal = assertThrows(Refusal.class, () -> Release.roomCo2(5, 60, 0.5, 420));
    assertTrue(refusal.getMessage().contains("dangerous to life"), refusal.getMessage());
    assertTrue(Release.roomCo2(0.5, 60, 0.5, 420) < 40_000);
  }

  /** Two volumes of honey to one of water: 1.293. */
  @Test
  void thickMusts() {
    double half = Ferment.Break(1.293, 50, 1.1);
    assertEquals(50, Ferment.progress(1.293, half, 1.1), 1e-8);
    assertTrue(Release.gas(100, 1.293, 1.15) > Release.gas(100, 1.293, 1.2));
    assertTrue(Release.cooling(100, 1.293, 1.2, 0.005) > 0);
    double[] days = {0, 7, 14, 28, 42, 56, 84, 112};
    double[] gravities = {1.293, 1.27, 1.243, 1.206, 1.187, 1.1765, 1.167, 1.163};
    Prospect.Forecast forecast = Prospect.forecast(days, gravities, 0.001);
    assertTrue(forecast.terminal() < 1.163 && forecast.lower() > 1.14, forecast::toString);
  }

  @Test
  void refusals() {
    assertThrows(Refusal.class, () -> Ferment.progress(1.08, 1.09, 0.995));
    assertThrows(Refusal.class, () -> Ferment.progress(1.08, 1.05, 1.08));
    assertThrows(Refusal.class, () -> Ferment.Break(1.02, 33.3, 1.03));
    assertThrows(Refusal.class, () -> Ferment.originalAfter(10, 1.1, 1.05, 200, 17.2));
    assertThrows(Refusal.class, () -> Release.gas(100, 1.05, 1.06));
  }
}
