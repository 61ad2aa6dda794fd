package meadcell.blend;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.law.UsHoneyWine;

/** Spirit or water for a strength. */
@Family(name = "BLEND")
public final class Strength {
  @Arg(name = "target", help = "Alcohol wanted", is = Quantity.PERCENT_VOL, from = 1, to = 100)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface StrengthWanted {}

  private Strength() {}

  /**
   * {@return spirit to add, L}
   *
   * @param volumeL mead to fortify, L
   * @param abv alcohol of the mead, % vol
   * @param spirit alcohol of the spirit, % vol
   * @param target alcohol wanted, % vol
   */
  @CellarFunction(
      summary = "Spirit to add for a target strength, contraction counted.",
      gives = Quantity.VOLUME,
      formula = Shared.MASS_BALANCE + " The spirit for which % vol is target.",
      source = Shared.R22,
      example = "BLEND.FORTIFY(100;12;96;18)",
      note = Shared.SUGAR_IGNORED,
      caution =
          "Spirit burns: no flame or spark near it. Adding spirit may need a licence and may change the"
              + " tax class. "
              + UsHoneyWine.SPIRIT)
  public static double fortify(
      @Arg(
              name = "volume",
              help = "Mead to fortify",
              is = Quantity.VOLUME,
              above = 0,
              to = Shared.MOST_VOLUME_L)
          double volumeL,
      @Arg(
              name = "abv",
              help = "Alcohol of the mead",
              is = Quantity.PERCENT_VOL,
              from = 1,
              to = 100)
          double abv,
      @Arg(
              name = "spirit",
              help = "Alcohol of the spirit",
              is = Quantity.PERCENT_VOL,
              from = 1,
              to = 100)
          double spirit,
      @StrengthWanted double target) {
    if (target < abv || target >= spirit) {
      throw new Refusal(BlendReason.SPIRIT_CANNOT_REACH)
          .with("target", target, Quantity.PERCENT_VOL)
          .with("abv", abv, Quantity.PERCENT_VOL)
          .with("spirit", spirit, Quantity.PERCENT_VOL);
    }
    return WaterAndEthanol.of(volumeL, abv).partsToReach(WaterAndEthanol.of(1, spirit), target);
  }

  /**
   * {@return water to add, L}
   *
   * @param volumeL liquid to reduce, L
   * @param abv its alcohol, % vol
   * @param target alcohol wanted, % vol
   */
  @CellarFunction(
      summary = "Water to add for a lower strength, contraction counted.",
      gives = Quantity.VOLUME,
      formula = Shared.MASS_BALANCE + " The water for which % vol is target.",
      source = Shared.R22,
      example = "BLEND.REDUCE(100;40;20)",
      note = Shared.SUGAR_IGNORED,
      caution = "Water added to a finished mead may be limited by law: check the current text.")
  public static double reduce(
      @Arg(
              name = "volume",
              help = "Liquid to reduce",
              is = Quantity.VOLUME,
              above = 0,
              to = Shared.MOST_VOLUME_L)
          double volumeL,
      @Arg(name = "abv", help = "Its alcohol", is = Quantity.PERCENT_VOL, from = 1, to = 100)
          double abv,
      @StrengthWanted double target) {
    if (target > abv) {
      throw new Refusal(BlendReason.WATER_CANNOT_RAISE)
          .with("target", target, Quantity.PERCENT_VOL)
          .with("abv", abv, Quantity.PERCENT_VOL);
    }
    return WaterAndEthanol.of(volumeL, abv).partsToReach(WaterAndEthanol.of(1, 0), target);
  }
}
