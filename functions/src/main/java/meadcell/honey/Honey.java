package meadcell.honey;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.Sucrose;
import meadcell.density.Water;

/** Honey by its moisture: sugar, density, gravity, amounts. */
@Family(
    name = "HONEY",
    about = "Honey by its moisture: sugar, density, gravity, amounts.",
    says = HoneyReason.class)
public final class Honey {
  private static final String MOISTURE = "Water in the honey";

  /** Mean of 490 US honeys: White et al. 1962, USDA Technical Bulletin 1261. */
  public static final double MEAN_MOISTURE = 17.2;

  /** Share of honey solids that yeast can ferment: White et al. 1962, 78.1 of 82.8. */
  public static final double FERMENTABLE = 94;

  /** Specific gravity above which a mixture is no must. */
  public static final double THICKEST_MUST = 1.3;

  private static final String MUST_MODEL =
      "Sucrose density: ICUMSA SPS-4. That honey solids count as sucrose is from memory: the usual"
          + " approximation for musts. Default moisture: White et al. 1962, USDA Technical Bulletin"
          + " 1261, mean of 490 honeys.";
  private static final String MUST_NOTE =
      "Meant for musts, up to about 30 % solids (SG 1.13). At honey's own strength sucrose is 0.011"
          + " to 0.013 denser than honey of the same solids.\n"
          + "Honeys differ: 1 % more moisture is 1.2 % less honey sugar.";
  private static final String DENSITY_SOURCE =
      "From memory: White 1975, specific gravity by moisture, reprinted in Krell, FAO Agricultural"
          + " Services Bulletin 124 (1996). Water 0.9982 kg/L: Tanaka et al. 2001.";

  @Arg(
      name = "moisture",
      help = MOISTURE,
      is = Quantity.PERCENT,
      from = HoneyDensity.DRIEST,
      to = HoneyDensity.WETTEST,
      byDefault = MEAN_MOISTURE)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface TabledMoisture {}

  @Arg(name = "mass", help = "Honey", is = Quantity.MASS, above = 0, to = 1e6)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Mass {}

  @Arg(
      name = "moisture",
      help = MOISTURE,
      is = Quantity.PERCENT,
      from = 10,
      to = 30,
      byDefault = MEAN_MOISTURE)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Moisture {}

  private Honey() {}

  /** Kinds that the law sets apart: Council Directive 2001/110/EC, Annex II. */
  public enum Kind {
    /** Of nectar, where nothing else is set apart. */
    BLOSSOM(20, 60, 5),
    /** Of ling, Calluna. */
    HEATHER(23, 60, 5),
    /** Of honeydew, or of honeydew with nectar. */
    HONEYDEW(20, 45, 5),
    /** Of false acacia, and the others that may hold 10 g of sucrose in 100 g. */
    ACACIA(20, 60, 10),
    /** Of lavender or borage. */
    LAVENDER(20, 60, 15),
    /** For industry and baking. */
    BAKER(23, 60, 5),
    /** Of ling, for industry and baking. */
    BAKER_HEATHER(25, 60, 5);

    private final double mostMoisture;
    private final double leastFructoseGlucose;
    private final double mostSucrose;

    Kind(double mostMoisture, double leastFructoseGlucose, double mostSucrose) {
      this.mostMoisture = mostMoisture;
      this.leastFructoseGlucose = leastFructoseGlucose;
      this.mostSucrose = mostSucrose;
    }
  }

  /**
   * {@return moisture by refractometer, %}
   *
   * @param index refractive index as read, n
   * @param temperatureC temperature of the honey, °C
   */
  @CellarFunction(
      summary = "Water in honey from its refractive index.",
      gives = Quantity.PERCENT,
      formula =
          "W = (−0.26810 − log10(n − 1)) / 0.002243, with n at 20 °C: 0.00023 is added for each °C"
              + " above 20 and taken off for each below.",
      source =
          "AOAC 969.38 and the International Honey Commission's methods, after Chataway 1932 and"
              + " Wedmore 1955, as reprinted by Bogdanov, Book of Honey, ch. 4.",
      example = "HONEY.MOISTURE(1.4915)",
      note =
          "The formula is often reprinted with 1.73190 in place of −0.26810: the 1 had a bar over"
              + " it.\n"
              + "Melt crystals gently and let the sample settle: crystals and bubbles spoil the"
              + " reading.")
  public static double moisture(
      @Arg(
              name = "index",
              help = "Refractive index as read",
              is = Quantity.REFRACTIVE_INDEX,
              from = 1.467,
              to = 1.508)
          double index,
      @Arg(
              name = "temperature",
              help = "Temperature of the honey",
              is = Quantity.TEMPERATURE,
              from = 10,
              to = 40,
              byDefault = 20)
          double temperatureC) {
    double indexAt20 = index + 0.00023 * (temperatureC - 20);
    double percent = (-0.26810 - Math.log10(indexAt20 - 1)) / 0.002243;
    if (percent < 12.95 || percent > 25.05) {
      throw new Refusal(HoneyReason.MOISTURE_BEYOND_TABLE)
          .with("index", index, Quantity.REFRACTIVE_INDEX)
          .with("moisture", percent, Quantity.PERCENT, 3)
          .with("least", 13, Quantity.PERCENT)
          .with("most", 25, Quantity.PERCENT);
    }
    return percent;
  }

  /**
   * {@return weight of a litre, kg/L}
   *
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary = "Density of honey at 20 °C.",
      gives = Quantity.DENSITY,
      formula = "Specific gravity 20/20 °C by moisture, interpolated, times water's density.",
      source = DENSITY_SOURCE,
      example = "HONEY.DENSITY(17.2)",
      note = "Other tables differ by up to 0.004.")
  public static double density(@TabledMoisture double moisturePercent) {
    return HoneyDensity.kilogramsPerLitre(moisturePercent);
  }

  /**
   * {@return volume of a mass, L}
   *
   * @param massKg honey, kg
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary = "Volume that honey takes at 20 °C.",
      gives = Quantity.VOLUME,
      formula = "mass / density.",
      source = DENSITY_SOURCE,
      example = "HONEY.VOLUME(100;17.2)")
  public static double volume(@Mass double massKg, @TabledMoisture double moisturePercent) {
    return massKg / density(moisturePercent);
  }

  /**
   * {@return what the yeast can eat, kg}
   *
   * @param massKg honey, kg
   * @param moisturePercent water in the honey, %
   * @param fermentablePercent share of the solids that yeast can ferment, %
   */
  @CellarFunction(
      summary = "Fermentable sugar in honey.",
      gives = Quantity.MASS,
      formula = "mass · (1 − moisture/100) · fermentable/100.",
      source =
          "White et al. 1962, USDA Technical Bulletin 1261, as tabulated by Crane 1980: fructose"
              + " 38.2, glucose 31.3, sucrose 1.3, maltose-type sugars 7.3, together 78.1 of 82.8 %"
              + " solids.",
      example = "HONEY.SUGAR(100;17.2)",
      note =
          "Nutrition labels count all carbohydrate of honey as sugar and read about 5 % high. Of the"
              + " maltose-type sugars, counted here in full, yeast leaves a part: ALCOHOL.SUGARLEFT reckons"
              + " with 91 % of the solids.\n"
              + "Honeydew honeys hold more sugars that yeast leaves; take 90 or less (common"
              + " practice, no source).")
  public static double sugar(
      @Mass double massKg,
      @Moisture double moisturePercent,
      @Arg(
              name = "fermentable",
              help = "Share of the solids that yeast can ferment",
              is = Quantity.PERCENT,
              from = 50,
              to = 100,
              byDefault = FERMENTABLE)
          double fermentablePercent) {
    return solids(massKg, moisturePercent) * fermentablePercent / 100;
  }

  /**
   * {@return gravity of a honey must, SG}
   *
   * @param volumeL must, made up with water, L
   * @param massKg honey, kg
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary = "Specific gravity of honey made up with water to a volume.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "The SG of the sucrose solution that holds mass · (1 − moisture/100) in the volume, both"
              + " at 20 °C.",
      source = MUST_MODEL,
      example = "HONEY.GRAVITY(100;32;17.2)",
      note = MUST_NOTE)
  public static double gravity(
      @Arg(
              name = "volume",
              help = "Must, made up with water",
              is = Quantity.VOLUME,
              above = 0,
              to = 1e6)
          double volumeL,
      @Mass double massKg,
      @Moisture double moisturePercent) {
    double gramsPerLitre = 1000 * solids(massKg, moisturePercent) / volumeL;
    if (gramsPerLitre > Sucrose.gramsPerLitre(THICKEST_MUST)) {
      throw new Refusal(HoneyReason.TOO_THICK)
          .with("solids", gramsPerLitre, Quantity.GRAM_PER_LITRE, 4)
          .with("most", Sucrose.gramsPerLitre(THICKEST_MUST), Quantity.GRAM_PER_LITRE, 4)
          .with("thickest", THICKEST_MUST, Quantity.SPECIFIC_GRAVITY);
    }
    return Sucrose.gravityFromGramsPerLitre(gramsPerLitre);
  }

  /**
   * {@return honey for a target gravity, kg}
   *
   * @param volumeL must to make, honey and water together, L
   * @param gravity specific gravity wanted, SG
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary = "Honey needed for a volume of must of a target gravity.",
      gives = Quantity.MASS,
      formula =
          "Sugar of a sucrose solution of that SG, g/L at 20 °C, times the volume, divided by (1 −"
              + " moisture/100). The exact inverse of HONEY.GRAVITY.",
      source = MUST_MODEL,
      example = "HONEY.NEEDED(100;1.1;17.2)",
      note = MUST_NOTE)
  public static double needed(
      @Arg(
              name = "volume",
              help = "Must to make, honey and water together",
              is = Quantity.VOLUME,
              above = 0,
              to = 1e6)
          double volumeL,
      @Arg(
              name = "gravity",
              help = "Specific gravity wanted",
              is = Quantity.SPECIFIC_GRAVITY,
              above = 1,
              to = THICKEST_MUST)
          double gravity,
      @Moisture double moisturePercent) {
    return Sucrose.gramsPerLitre(gravity) * volumeL / 1000 / (1 - moisturePercent / 100);
  }

  /**
   * {@return water for a given honey, L}
   *
   * @param massKg honey, kg
   * @param gravity specific gravity wanted, SG
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary = "Water to add to honey for a must of a target gravity.",
      gives = Quantity.VOLUME,
      formula =
          "The must weighs mass · (1 − moisture/100) / w, with w the sucrose content of that SG;"
              + " what it weighs beyond the honey is water, 0.9982 kg/L at 20 °C.",
      source = MUST_MODEL + " Water: Tanaka et al. 2001.",
      example = "HONEY.WATER(32;1.1;17.2)",
      note = MUST_NOTE)
  public static double water(
      @Mass double massKg,
      @Arg(
              name = "gravity",
              help = "Specific gravity wanted",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 1.002,
              to = THICKEST_MUST)
          double gravity,
      @Moisture double moisturePercent) {
    double mustKg = solids(massKg, moisturePercent) / Sucrose.massFractionFromGravity(gravity);
    return (mustKg - massKg) / (Water.density(20) / 1000);
  }

  /**
   * {@return gravity points that honey brings, points·L/kg}
   *
   * @param moisturePercent water in the honey, %
   */
  @CellarFunction(
      summary = "Gravity points that honey brings: points × volume for each kg or lb.",
      gives = Quantity.GRAVITY_YIELD,
      formula = "1000 · (SG − 1) · volume / mass, for a must of SG 1.100.",
      source = MUST_MODEL,
      example = "HONEY.YIELD(17.2)",
      note =
          "Points are not quite proportional to honey: the yield is 0.5 % higher at 1.050 and 0.5 %"
              + " lower at 1.150. HONEY.NEEDED is exact.")
  @SuppressWarnings("NamedLikeContextualKeyword") // the trade's word
  public static double yield(@Moisture double moisturePercent) {
    return 100 / needed(1, 1.1, moisturePercent);
  }

  /**
   * {@return whether the law lets it be sold as honey, 1 or 0}
   *
   * @param moisturePercent water in the honey, %
   * @param fructoseGlucosePercent fructose and glucose together, %
   * @param sucrosePercent sucrose, %
   * @param kind kind of honey
   */
  @CellarFunction(
      summary = "1 if a honey's analysis is within the European limits for its kind, otherwise 0.",
      formula =
          "Moisture at most 20 % (heather and baker's 23, baker's heather 25); fructose and glucose"
              + " together at least 60 % (honeydew 45); sucrose at most 5 % (acacia 10, lavender"
              + " 15).",
      source =
          "Council Directive 2001/110/EC, Annex II. From memory: Codex Stan 12-1981 has the same"
              + " core.",
      example = "HONEY.ACCEPTABLE(17.2;69.5;1.3)",
      note =
          "Acacia stands for all plants with the limit of 10 %, such as citrus and alfalfa, lavender"
              + " for borage too. Blends of honeydew and blossom honey take \"honeydew\".\n"
              + "The annex also limits insolubles, conductivity, free acid, diastase and HMF.",
      caution = "Laws change: the text in force where you sell decides.")
  public static boolean acceptable(
      @Arg(name = "moisture", help = MOISTURE, is = Quantity.PERCENT, from = 10, to = 40)
          double moisturePercent,
      @Arg(
              name = "fructoseGlucose",
              help = "Fructose and glucose together",
              is = Quantity.PERCENT,
              from = 10,
              to = 90)
          double fructoseGlucosePercent,
      @Arg(name = "sucrose", help = "Sucrose", is = Quantity.PERCENT, from = 0, to = 60)
          double sucrosePercent,
      @Arg(name = "kind", help = "Kind of honey", byDefaultWord = "blossom") Kind kind) {
    if (moisturePercent + fructoseGlucosePercent + sucrosePercent > 100) {
      throw new Refusal(HoneyReason.MORE_THAN_100)
          .with("sum", moisturePercent + fructoseGlucosePercent + sucrosePercent, Quantity.PERCENT);
    }
    return moisturePercent <= kind.mostMoisture
        && fructoseGlucosePercent >= kind.leastFructoseGlucose
        && sucrosePercent <= kind.mostSucrose;
  }

  private static double solids(double massKg, double moisturePercent) {
    return massKg * (1 - moisturePercent / 100);
  }
}
