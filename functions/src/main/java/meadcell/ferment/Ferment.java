package meadcell.ferment;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.Sucrose;
import meadcell.ferment.Shared.Original;
import meadcell.ferment.Shared.Present;
import meadcell.ferment.Shared.Volume;
import meadcell.honey.Honey;

/** How far a ferment has gone. */
@Family(
    name = "FERMENT",
    about = "How far a ferment has gone, how it goes on, what it gives off.",
    says = {FermentReason.class, Because.class})
public final class Ferment {

  @Arg(
      name = "final",
      help = "Gravity at which it is expected to end",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 0.98,
      to = 1.2,
      byDefault = 0.995)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Final {}

  private Ferment() {}

  /**
   * {@return share of the sugar gone, %}
   *
   * @param original gravity of the must before fermentation, SG
   * @param present gravity now, SG
   * @param finalGravity gravity at which it is expected to end, SG
   */
  @CellarFunction(
      summary = "Share of the fermentable sugar that is gone.",
      gives = Quantity.PERCENT,
      formula =
          "Sugar turned, per kg of the must it began as, from original to present over that from"
              + " original to final, by Balling's balance.",
      source = Shared.BALANCE,
      example = "FERMENT.PROGRESS(1.1;1.05)",
      note =
          "Readings below 1.000 are normal. More than 100 says that it went below the final gravity"
              + " you expected.\n"
              + "present up to 0.002 above original counts as original: see ALCOHOL.ABV.")
  public static double progress(
      @Original(from = 1.01) double original, @Present double present, @Final double finalGravity) {
    requireBelow(original, finalGravity);
    return 100
        * Course.ethanolPerMust(original, present)
        / Course.ethanolPerMust(original, finalGravity);
  }

  /**
   * {@return gravity at a share of the way, SG} Named with a capital since {@code break} is a Java
   * keyword.
   *
   * @param original gravity of the must before fermentation, SG
   * @param sharePercent share of the sugar gone, %
   * @param finalGravity gravity at which it is expected to end, SG
   */
  @CellarFunction(
      summary = "Gravity at which a given share of the fermentable sugar is gone.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula = "The gravity at which FERMENT.PROGRESS is share.",
      source = Shared.BALANCE,
      example = "FERMENT.BREAK(1.1)",
      note =
          "The third break, one third of the sugar gone, is commonly the last moment to feed"
              + " nitrogen (common practice, no source).")
  public static double Break(
      @Original(from = 1.01) double original,
      @Arg(
              name = "share",
              help = "Share of the sugar gone",
              is = Quantity.PERCENT,
              above = 0,
              to = 100,
              byDefault = 33.3)
          double sharePercent,
      @Final double finalGravity) {
    requireBelow(original, finalGravity);
    return Course.gravity(original, finalGravity, sharePercent / 100);
  }

  private static void requireBelow(double original, double finalGravity) {
    if (finalGravity >= original) {
      throw new Refusal(FermentReason.FINAL_NOT_BELOW_ORIGINAL)
          .with("final", finalGravity, Quantity.NUMBER)
          .with("original", original, Quantity.NUMBER);
    }
  }

  /**
   * {@return original gravity as if all honey had been in the must from the start, SG}
   *
   * @param volumeL mead in the tank before feeding, L
   * @param original gravity of the must before fermentation, SG
   * @param present gravity just before feeding, SG
   * @param honeyKg honey fed, kg
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary =
          "Effective original gravity after honey was fed into a running ferment: the one to take"
              + " for alcohol from then on.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "The mead is turned back into the must it was, by Balling's balance; the honey is added;"
              + " the sugar content of the sum gives the gravity.",
      source = Shared.BALANCE + " Honey solids count as sucrose, as in HONEY.GRAVITY.",
      example = "FERMENT.ORIGINALAFTER(100;1.09;1.02;5)",
      note =
          "volume and present are those just before feeding. For a second feeding give the result as"
              + " original.\n"
              + "With the first original gravity kept, 5 kg of honey in 100 L hide some 1.7 % vol.")
  public static double originalAfter(
      @Volume(help = "Mead in the tank before feeding") double volumeL,
      @Original double original,
      @Present(help = "Gravity just before feeding") double present,
      @Arg(name = "honey", help = "Honey fed", is = Quantity.MASS, above = 0, to = 1e6)
          double honeyKg,
      @Arg(
              name = "moisture",
              help = "Water in the honey",
              is = Quantity.PERCENT,
              from = 10,
              to = 30,
              byDefault = Honey.MEAN_MOISTURE)
          double moisturePercent) {
    double mustKg = volumeL * Course.mustPerLitre(original, present) / 1000;
    double extractKg =
        mustKg * Sucrose.massFractionFromGravity(original) + honeyKg * (1 - moisturePercent / 100);
    double gravity = Sucrose.specificGravity(extractKg / (mustKg + honeyKg));
    if (gravity > Honey.THICKEST_MUST) {
      throw new Refusal(FermentReason.TOO_MUCH_HONEY)
          .with("gravity", gravity, Quantity.NUMBER, 4)
          .with("most", Honey.THICKEST_MUST, Quantity.NUMBER);
    }
    return gravity;
  }
}
