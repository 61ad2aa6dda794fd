package meadcell.blend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import meadcell.catalogue.Refusal;
import meadcell.density.Sucrose;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class BlendTest {
  private static final double WATER = Sucrose.density(0, 20) / 1000;

  private static void refused(org.junit.jupiter.api.function.Executable call) {
    Refusal refusal = assertThrows(Refusal.class, call);
    assertEquals(Refusal.Kind.INCONSISTENT, refusal.kind());
  }

  @Property
  void partsMeanTheTarget(
      @Between(max = 100) double first,
      @Between(max = 100) double second,
      @Between(min = 0.01, max = 0.99, decimals = 2) double along) {
    assumeTrue(first != second);
    double target = first + along * (second - first);
    Blend.Parts parts = Blend.parts(first, second, target);
    assertEquals(100, parts.first() + parts.second(), 1e-12);
    assertEquals(
        target,
        Blend.mean(new double[] {parts.first(), parts.second()}, new double[] {first, second}),
        1e-9);
  }

  @Property
  void ethanolIsConservedAndStrengthLiesBetween(
      @Between(max = 1000) double firstL,
      @Between(min = 0.1, max = 1000) double secondL,
      @Between(max = 100) double first,
      @Between(max = 100) double second) {
    double[] volumes = {firstL, secondL};
    double[] abvs = {first, second};
    double abv = Blend.abv(volumes, abvs);
    assertEquals(firstL * first + secondL * second, Blend.volume(volumes, abvs) * abv, 1e-7);
    assertTrue(abv >= Math.min(first, second) - 1e-9 && abv <= Math.max(first, second) + 1e-9);
  }

  @Property
  void blendingInStepsIsBlendingAtOnce(
      @Between(min = 0.1, max = 1000) double a,
      @Between(min = 0.1, max = 1000) double b,
      @Between(min = 0.1, max = 1000) double c) {
    double[] both = {a, b};
    double[] strengths = {12, 96};
    double[] steps = {Blend.volume(both, strengths), c};
    double[] after = {Blend.abv(both, strengths), 40};
    double[] all = {a, b, c};
    double[] each = {12, 96, 40};
    assertEquals(Blend.abv(all, each), Blend.abv(steps, after), 1e-9);
    assertEquals(Blend.volume(all, each), Blend.volume(steps, after), 1e-8);
  }

  @Property
  void addingWhatWasAskedForReachesTheTarget(
      @Between(min = 0.1, max = 1000) double volumeL,
      @Between(min = 1, max = 40) double abv,
      @Between(min = 60, max = 100) double spirit,
      @Between(min = 0.01, max = 0.99) double along) {
    double stronger = abv + along * (spirit - abv);
    double addedL = Strength.fortify(volumeL, abv, spirit, stronger);
    assertEquals(
        stronger, Blend.abv(new double[] {volumeL, addedL}, new double[] {abv, spirit}), 1e-8);
    double weaker = abv * along;
    double waterL = Strength.reduce(volumeL, abv, weaker);
    assertEquals(weaker, Blend.abv(new double[] {volumeL, waterL}, new double[] {abv, 0}), 1e-8);
  }

  @Property
  void gravityLiesBetweenAndLikeLotsChangeNothing(
      @Between(min = 0.1, max = 1000) double firstL,
      @Between(min = 0.1, max = 1000) double secondL,
      @Between(min = 0.98, max = 1.48) double first,
      @Between(min = 0.98, max = 1.48) double second) {
    double[] volumes = {firstL, secondL};
    double blend = Blend.gravity(volumes, new double[] {first, second});
    assertTrue(blend >= Math.min(first, second) - 1e-9 && blend <= Math.max(first, second) + 1e-9);
    assertEquals(first, Blend.gravity(volumes, new double[] {first, first}), 1e-12);
  }

  @Property
  void sweeteningAMustIsBlendingItWithHoneySyrup(
      @Between(min = 0.1, max = 1000) double volumeL,
      @Between(min = 0.98, max = 1.1) double gravity,
      @Between(min = 0.0001, max = 0.1) double rise,
      @Between(min = 13, max = 25, decimals = 2) double moisture) {
    double target = gravity + rise;
    double honeyKg = Sweetening.sweeten(volumeL, gravity, target, 0, moisture);
    double syrup = Sucrose.specificGravity(1 - moisture / 100);
    double[] volumes = {volumeL, honeyKg / (syrup * WATER)};
    assertEquals(target, Blend.gravity(volumes, new double[] {gravity, syrup}), 1e-10);
  }

  @Property
  void sweeteningKeepsMassAndEthanolAndGoesInSteps(
      @Between(min = 0.1, max = 1000) double volumeL,
      @Between(min = 0.99, max = 1.05) double gravity,
      @Between(min = 0.0001, max = 0.1) double rise,
      @Between(min = 8, max = 20) double abv) {
    double target = gravity + rise;
    double moisture = 17.2;
    double honeyKg = Sweetening.sweeten(volumeL, gravity, target, abv, moisture);
    double afterL = Sweetening.sweetenedVolume(volumeL, gravity, target, abv, moisture);
    double afterAbv = Sweetening.sweetenedAbv(volumeL, gravity, target, abv, moisture);
    assertEquals(afterL * target * WATER, volumeL * gravity * WATER + honeyKg, volumeL * 1e-11);
    assertEquals(volumeL * abv, afterL * afterAbv, volumeL * 1e-9);
    assertTrue(afterL > volumeL);

    double half = gravity + rise / 2;
    double halfL = Sweetening.sweetenedVolume(volumeL, gravity, half, abv, moisture);
    double halfAbv = Sweetening.sweetenedAbv(volumeL, gravity, half, abv, moisture);
    double steps =
        Sweetening.sweeten(volumeL, gravity, half, abv, moisture)
            + Sweetening.sweeten(halfL, half, target, halfAbv, moisture);
    assertEquals(honeyKg, steps, volumeL * 1e-9);
  }

  @Test
  void nothingToAddIsNothing() {
    assertEquals(0, Strength.fortify(100, 12, 96, 12), 1e-12);
    assertEquals(0, Strength.reduce(100, 12, 12), 1e-12);
    assertEquals(0, Sweetening.sweeten(100, 1.01, 1.01, 12, 17.2), 1e-12);
    assertEquals(12, Sweetening.sweetenedAbv(100, 1.01, 1.01, 12, 17.2), 1e-12);
  }

  @Test
  void whatCannotBeIsRefused() {
    refused(() -> Blend.parts(12, 12, 12));
    refused(() -> Blend.parts(12, 40, 11.9));
    refused(() -> Blend.parts(12, 40, 40.1));
    refused(() -> Blend.mean(new double[] {0, 0}, new double[] {1, 2}));
    refused(() -> Blend.abv(new double[] {0}, new double[] {12}));
    refused(() -> Strength.fortify(100, 12, 96, 11.9));
    refused(() -> Strength.fortify(100, 12, 96, 96));
    refused(() -> Strength.reduce(100, 12, 12.1));
    refused(() -> Sweetening.sweeten(100, 1.01, 1.009, 12, 17.2));
    refused(() -> Sweetening.sweeten(100, 0.981, 1.01, 12, 17.2));
    assertTrue(Sweetening.sweeten(100, 0.983, 1.01, 12, 17.2) > 0);
  }
}
