package meadcell.blend;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.Sucrose;

/** Blending: shares, strength, plans, and what is in a lot. */
@Family(
    name = "BLEND",
    about = "Blending: shares, strength, plans, and what is in a lot.",
    says = {BlendReason.class, Change.class})
public final class Blend {
  @Arg(
      name = "volumes",
      help = "Volume of each lot",
      is = Quantity.VOLUME,
      from = 0,
      to = Shared.MOST_VOLUME_L)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Volumes {}

  @Arg(
      name = "abvs",
      help = "Alcohol of each lot, 0 for water",
      is = Quantity.PERCENT_VOL,
      from = 0,
      to = 100)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Abvs {}

  private Blend() {}

  /** Shares of two lots in a blend. */
  public record Parts(
      @Gives(value = "share of first", is = Quantity.PERCENT) double first,
      @Gives(value = "share of second", is = Quantity.PERCENT) double second) {}

  /**
   * {@return pearson's square, a row}
   *
   * @param first value of the first lot
   * @param second value of the second lot
   * @param target value wanted
   */
  @CellarFunction(
      summary = "Shares of two lots that together have the target value.",
      formula = "first : second = |second − target| : |target − first|, stated in % of the blend.",
      source = "Mass balance of two lots (Pearson's square): common practice, no source.",
      example = "BLEND.PARTS(12;40;20)",
      note =
          "Exact for what mixes by volume: sugar in g/L, acid, SO₂. Alcohol is a little off (use"
              + " BLEND.FORTIFY), °Brix is exact by mass, pH does not mix this way at all.")
  public static Parts parts(
      @Arg(name = "first", help = "Value of the first lot", from = 0, to = 1e6) double first,
      @Arg(name = "second", help = "Value of the second lot", from = 0, to = 1e6) double second,
      @Arg(name = "target", help = "Value wanted", from = 0, to = 1e6) double target) {
    if (first == second) {
      throw new Refusal(BlendReason.BOTH_ALIKE).with("first", first, Quantity.NUMBER);
    }
    if (target < Math.min(first, second) || target > Math.max(first, second)) {
      throw new Refusal(BlendReason.TARGET_NOT_BETWEEN)
          .with("target", target, Quantity.NUMBER)
          .with("first", first, Quantity.NUMBER)
          .with("second", second, Quantity.NUMBER);
    }
    double share = 100 * (second - target) / (second - first);
    return new Parts(share, 100 - share);
  }

  /**
   * {@return volume-weighted mean}
   *
   * @param volumesL volume of each lot, L
   * @param values value of each lot
   */
  @CellarFunction(
      summary = "Value of a blend: sugar, acid, SO₂ and whatever else mixes by volume.",
      formula = "Σ volume · value ÷ Σ volume.",
      source = "Mass balance of what is dissolved.",
      example = "BLEND.MEAN({100;50};{12;18})",
      note =
          "Never for pH, which does not mix by volume: blend a sample and measure. Alcohol:"
              + " BLEND.ABV. Gravity: BLEND.GRAVITY.")
  public static double mean(
      @Volumes double[] volumesL,
      @Arg(name = "values", help = "Value of each lot", from = -1e6, to = 1e6) double[] values) {
    refuseEmpty(volumesL);
    double sum = 0;
    double volumeL = 0;
    for (int i = 0; i < volumesL.length; i++) {
      sum += volumesL[i] * values[i];
      volumeL += volumesL[i];
    }
    return sum / volumeL;
  }

  /**
   * {@return strength of a blend, % vol}
   *
   * @param volumesL volume of each lot, L
   * @param abvs alcohol of each lot, 0 for water, % vol
   */
  @CellarFunction(
      summary = "Alcohol of a blend, contraction counted.",
      gives = Quantity.PERCENT_VOL,
      formula = Shared.MASS_BALANCE,
      source = Shared.R22,
      example = "BLEND.ABV({100;10};{12;96})",
      note = Shared.SUGAR_IGNORED)
  public static double abv(@Volumes double[] volumesL, @Abvs double[] abvs) {
    refuseEmpty(volumesL);
    return WaterAndEthanol.blend(volumesL, abvs).abv();
  }

  /**
   * {@return volume of a blend, L}
   *
   * @param volumesL volume of each lot, L
   * @param abvs alcohol of each lot, 0 for water, % vol
   */
  @CellarFunction(
      summary = "Volume of a blend, contraction counted.",
      gives = Quantity.VOLUME,
      formula = Shared.MASS_BALANCE,
      source = Shared.R22,
      example = "BLEND.VOLUME({100;10};{12;96})",
      note =
          Shared.SUGAR_IGNORED + "\nA little water into mead makes it expand: that is no mistake.")
  public static double volume(@Volumes double[] volumesL, @Abvs double[] abvs) {
    refuseEmpty(volumesL);
    return WaterAndEthanol.blend(volumesL, abvs).volumeL();
  }

  /**
   * {@return gravity of a blend, SG}
   *
   * @param volumesL volume of each lot, L
   * @param gravities specific gravity of each lot, SG
   */
  @CellarFunction(
      summary = "Specific gravity of a blend.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "Masses V · SG and sugar masses V · SG · w(SG) add up; the gravity of the sucrose solution"
              + " with the sugar content they have together.",
      source = "Mass balance with ICUMSA SPS-4 densities of sucrose solutions.",
      example = "BLEND.GRAVITY({100;20};{1;1.3})",
      note =
          "Exact for musts. Gravities of meads (below 1 too) are treated as if their extract were"
              + " all there is: fair as long as the lots are of like strength.")
  public static double gravity(
      @Volumes double[] volumesL,
      @Arg(
              name = "gravities",
              help = "Specific gravity of each lot",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.48)
          double[] gravities) {
    refuseEmpty(volumesL);
    double mass = 0;
    double sugar = 0;
    for (int i = 0; i < volumesL.length; i++) {
      mass += volumesL[i] * gravities[i];
      sugar += volumesL[i] * gravities[i] * Sucrose.massFractionFromGravity(gravities[i]);
    }
    return Sucrose.specificGravity(sugar / mass);
  }

  private static void refuseEmpty(double[] volumesL) {
    for (double volumeL : volumesL) {
      if (volumeL > 0) {
        return;
      }
    }
    throw new Refusal(BlendReason.ALL_0);
  }
}
