package meadcell.blend;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;

/** Honey into a mead: how much, and what comes of it. */
@Family(name = "BLEND")
public final class Sweetening {
  private static final String SWEETENING =
      "Mass, ethanol and extract before and after are the same, honey solids counted as sucrose. The"
          + " mead's SG is that of its extract plus that of its alcohol less 1 (Tabarié).";
  private static final String SWEETENING_SOURCE =
      "Mass balance. Sucrose: ICUMSA SPS-4. Ethanol–water: OIML R 22 (1975). Mixture: Tabarié,"
          + " OIV-MA-AS2-03B. That honey solids count as sucrose is from memory: the usual"
          + " approximation for musts. Default moisture: White et al. 1962, USDA Technical Bulletin"
          + " 1261, mean of 490 honeys.";
  private static final String SWEETENING_NOTE =
      "Without abv the answer is up to 1 % low: 100 L from 0.998 to 1.012 take 4.49 kg then, 4.53 kg"
          + " counted with 13.5 % vol.";
  private static final String REFERMENT_CAUTION =
      "Live yeast ferments the honey: bottles may burst and casks blow their bungs. Stabilise first"
          + " or keep it where gas can leave; carbon dioxide gathers in closed rooms and kills.";

  @Arg(
      name = "volume",
      help = "Mead to sweeten",
      is = Quantity.VOLUME,
      above = 0,
      to = Shared.MOST_VOLUME_L)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface MeadVolume {}

  @Arg(
      name = "gravity",
      help = "Its specific gravity",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 0.98,
      to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface MeadGravity {}

  @Arg(
      name = "target",
      help = "Specific gravity wanted",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 0.98,
      to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface GravityWanted {}

  @Arg(
      name = "abv",
      help = "Alcohol of the mead; left out for a must",
      is = Quantity.PERCENT_VOL,
      from = 0,
      to = 30,
      byDefault = 0)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface MeadStrength {}

  @Arg(
      name = "moisture",
      help = "Water in the honey",
      is = Quantity.PERCENT,
      from = 10,
      to = 30,
      byDefault = 17.2)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Moisture {}

  private Sweetening() {}

  /**
   * {@return honey for a target gravity, kg}
   *
   * @param volumeL mead to sweeten, L
   * @param gravity its specific gravity, SG
   * @param target specific gravity wanted, SG
   * @param abv alcohol of the mead; left out for a must, % vol
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary = "Honey to add to a mead for a target gravity.",
      gives = Quantity.MASS,
      formula = SWEETENING,
      source = SWEETENING_SOURCE,
      example = "BLEND.SWEETEN(225;0.998;1.012;13.5)",
      note = SWEETENING_NOTE,
      caution = REFERMENT_CAUTION)
  public static double sweeten(
      @MeadVolume double volumeL,
      @MeadGravity double gravity,
      @GravityWanted double target,
      @MeadStrength double abv,
      @Moisture double moisturePercent) {
    return Sweetened.to(target, volumeL, gravity, abv, moisturePercent).honeyKg();
  }

  /**
   * {@return strength after sweetening, % vol}
   *
   * @param volumeL mead to sweeten, L
   * @param gravity its specific gravity, SG
   * @param target specific gravity wanted, SG
   * @param abv alcohol of the mead, % vol
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary = "Alcohol of a mead after sweetening it with honey.",
      gives = Quantity.PERCENT_VOL,
      formula = SWEETENING,
      source = SWEETENING_SOURCE,
      example = "BLEND.SWEETENEDABV(225;0.998;1.012;13.5)",
      note = SWEETENING_NOTE,
      caution = REFERMENT_CAUTION)
  public static double sweetenedAbv(
      @MeadVolume double volumeL,
      @MeadGravity double gravity,
      @GravityWanted double target,
      @Arg(name = "abv", help = "Alcohol of the mead", is = Quantity.PERCENT_VOL, from = 1, to = 30)
          double abv,
      @Moisture double moisturePercent) {
    return Sweetened.to(target, volumeL, gravity, abv, moisturePercent).abv();
  }

  /**
   * {@return volume after sweetening, L}
   *
   * @param volumeL mead to sweeten, L
   * @param gravity its specific gravity, SG
   * @param target specific gravity wanted, SG
   * @param abv alcohol of the mead; left out for a must, % vol
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary = "Volume of a mead after sweetening it with honey.",
      gives = Quantity.VOLUME,
      formula = SWEETENING,
      source = SWEETENING_SOURCE,
      example = "BLEND.SWEETENEDVOLUME(225;0.998;1.012;13.5)",
      note = SWEETENING_NOTE,
      caution = REFERMENT_CAUTION)
  public static double sweetenedVolume(
      @MeadVolume double volumeL,
      @MeadGravity double gravity,
      @GravityWanted double target,
      @MeadStrength double abv,
      @Moisture double moisturePercent) {
    return Sweetened.to(target, volumeL, gravity, abv, moisturePercent).volumeL();
  }
}
