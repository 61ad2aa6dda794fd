package meadcell.gravity;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;
import meadcell.density.EthanolWater;
import meadcell.density.Mixture;
import meadcell.density.RefractiveIndex;
import meadcell.density.Sucrose;

/** What an instrument says, made true. */
@Family(
    name = "GRAVITY",
    about = "What an instrument says, made true.",
    says = {GravityReason.class, Unclear.class})
public final class Gravity {
  private static final String SPS4 =
      "Sucrose density: ICUMSA Methods Book SPS-4; SG is true 20/20 °C.";
  private static final String BAUME = "AOAC 942.33: modulus 145, with gravity 20/20 °C.";
  private static final String OECHSLE =
      "German definition: density of the must less that of water, both at 20 °C. Water: Bettin and"
          + " Spieweck 1990.";
  private static final String INDEX =
      "ICUMSA 1974 table in OIV-MA-AS2-02, Table II, and CRC Handbook of Chemistry and Physics, 102nd"
          + " ed.; a polynomial fitted to both, within 0.000007 of the first.";
  private static final String INDEX_OF_SUCROSE =
      "n = 1.33298807 + 0.14294802 w + 0.05202587 w² + 0.02395537 w³ − 0.00582385 w⁴, w = °Bx / 100.";
  private static final String MUST = "Specific gravity of the unfermented must";

  private static final String BELOW_WATER =
      "Below 0, where there is no sucrose, it is the scale of a hydrometer that goes on in a dry mead: the"
          + " same formula continued (common practice, no source), within 0.0005 of a straight line at"
          + " -5 °Bx.";

  private static final double BAUME_MODULUS = 145;

  @Arg(name = "sg", help = MUST, is = Quantity.SPECIFIC_GRAVITY, from = 1, to = 1.45)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Sg {}

  @Arg(
      name = "thermometer",
      help = "What the thermometer lacks, added to the temperature: GRAVITY.OFFSET",
      is = Quantity.TEMPERATURE_DIFFERENCE,
      from = -5,
      to = 5,
      byDefault = 0)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface ThermometerOffset {}

  /** What a hydrometer shows, dry meads too, which are lighter than water. */
  @Arg(
      name = "sg",
      help = "Specific gravity, 20/20 °C",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 0.98,
      to = 1.45)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface ScaleSg {}

  private Gravity() {}

  /**
   * {@return what the hydrometer would read at its calibration temperature, SG}
   *
   * @param reading specific gravity as read, SG
   * @param temperatureC temperature of the sample, °C
   * @param calibrationC temperature the hydrometer is made for, °C
   * @param original original gravity, only once the batch ferments, SG
   * @param offset what is added to the reading, SG
   * @param thermometerK what is added to the temperature as read, K
   */
  @CellarFunction(
      summary =
          "Specific gravity that the same hydrometer would read at its calibration temperature.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "A floating glass body measures the density ρ(t) = (reading + offset) · ρw(cal) · (1 − 25·10⁻⁶ (t −"
              + " cal)). The sugar content whose density at t is ρ(t) is found, with the alcohol that"
              + " original implies, and its density at the calibration temperature divided by"
              + " ρw(cal).",
      source =
          "Glass expansion 25·10⁻⁶ per °C: ISO 1768:1975. Sucrose and water: ICUMSA SPS-4 with"
              + " Bettin and Spieweck 1990. Ethanol–water: OIML R 22 (1975). Mixture: Tabarié,"
              + " OIV-MA-AS2-03B. Alcohol from original: Balling's balance.",
      example = "GRAVITY.CORRECT(1.104;29)",
      note =
          "The result is on the hydrometer's own scale, on which water at the calibration temperature is"
              + " 1. The other functions take 20/20 °C; a 60/60 °F hydrometer shows 0.0002 more in a must"
              + " of 1.050, 0.0005 more at 1.100, 0.0008 more at 1.200.\n"
              + "The usual rule of thumb, a cubic in °F that multiplies every reading by the same factor"
              + " (from memory), less this, calibrated at 20 °C: at 10 °C -0.0002 for 1.000, +0.0007 for"
              + " 1.080, +0.0014 for 1.150; at 30 °C +0.0001, -0.0005, -0.0009; at 40 °C +0.0003,"
              + " -0.0007, -0.0014.\n"
              + "What the hydrometer and the thermometer lack, as a check in water or in a known solution"
              + " shows (GRAVITY.SOLUTION, GRAVITY.OFFSET), is added before anything else.\n"
              + "Degas a fermenting sample: bubbles lift the hydrometer. Above 40 °C the ethanol formula"
              + " is stretched beyond its range. Water is densest at 4 °C:"
              + " below 8 °C a sample near 1.000 hardly changes with temperature.")
  public static double correct(
      @Arg(
              name = "reading",
              help = "Specific gravity as read",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.3)
          double reading,
      @Arg(
              name = "temperature",
              help = "Temperature of the sample",
              is = Quantity.TEMPERATURE,
              from = 0,
              to = 45,
              zeroIsBlank = true)
          double temperatureC,
      @Arg(
              name = "calibration",
              help = "Temperature the hydrometer is made for",
              is = Quantity.TEMPERATURE,
              from = 4,
              to = 30,
              byDefault = 20,
              byDefaultUs = 60)
          double calibrationC,
      @Arg(
              name = "original",
              help = "Original gravity, only once the batch ferments",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 1,
              to = 1.3)
          OptionalDouble original,
      @Arg(
              name = "offset",
              help = "What this hydrometer lacks, added to its reading: GRAVITY.OFFSET",
              from = -0.02,
              to = 0.02,
              byDefault = 0)
          double offset,
      @ThermometerOffset double thermometerK) {
    return Hydrometer.corrected(
        within(reading + offset, "reading", Quantity.SPECIFIC_GRAVITY, 0.98, 1.3),
        within(temperatureC + thermometerK, "temperature", Quantity.TEMPERATURE, 0, 45),
        calibrationC,
        original);
  }

  /** A reading with its offset, which must be what the function takes without one. */
  private static double within(
      double value, String reading, Quantity quantity, double from, double to) {
    Range range = Range.between(from, to);
    if (!range.contains(value)) {
      throw new Refusal(GravityReason.OUTSIDE_WITH_OFFSET)
          .with("name", reading)
          .with("value", value, quantity)
          .with("range", range, quantity);
    }
    return value;
  }

  /**
   * {@return sucrose solution of the same specific gravity, °Bx}
   *
   * @param sg specific gravity 20/20 °C, SG
   */
  @CellarFunction(
      summary = "Degrees Brix (g sucrose in 100 g) at this specific gravity.",
      gives = Quantity.BRIX,
      formula = "The sucrose content w whose density at 20 °C divided by water's is SG; 100 w.",
      source = SPS4,
      example = "GRAVITY.TOBRIX(1.1)",
      note =
          "Printed tables of gravity often hold apparent gravities, weighed in air: at 20 °Bx they"
              + " are 0.0001 higher than true ones.\n"
              + BELOW_WATER)
  public static double toBrix(@ScaleSg double sg) {
    return 100 * Sucrose.massFractionFromGravity(sg);
  }

  /**
   * {@return specific gravity of a sucrose solution, SG}
   *
   * @param brix degrees Brix at 20 °C, °Bx
   */
  @CellarFunction(
      summary = "Specific gravity 20/20 °C at these degrees Brix.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula = "Density of the sucrose solution at 20 °C divided by water's.",
      source = SPS4,
      example = "GRAVITY.FROMBRIX(24)",
      note = BELOW_WATER)
  public static double fromBrix(
      @Arg(name = "brix", help = "Degrees Brix at 20 °C", is = Quantity.BRIX, from = -5, to = 83)
          double brix) {
    return Sucrose.specificGravity(brix / 100);
  }

  /**
   * {@return specific gravity from degrees Baumé, SG}
   *
   * @param be degrees Baumé, modulus 145, at 20 °C, °Bé
   */
  @CellarFunction(
      summary = "Specific gravity 20/20 °C at these degrees Baumé (the scale for must and wine).",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula = "145 / (145 − °Bé)",
      source = BAUME,
      example = "GRAVITY.FROMBAUME(13)",
      note =
          "Below 0 in a dry mead, which is lighter than water: the same formula, as a hydrometer for wine"
              + " goes on (common practice, no source). It is not the other Baumé scale, for liquids"
              + " lighter than water, on which water is 10.")
  public static double fromBaume(
      @Arg(
              name = "be",
              help = "Degrees Baumé, modulus 145, at 20 °C",
              is = Quantity.BAUME,
              from = -2.9,
              to = 45)
          double be) {
    return BAUME_MODULUS / (BAUME_MODULUS - be);
  }

  /**
   * {@return degrees Baumé from specific gravity, °Bé}
   *
   * @param sg specific gravity 20/20 °C, SG
   */
  @CellarFunction(
      summary = "Degrees Baumé (the scale for must and wine) at this specific gravity.",
      gives = Quantity.BAUME,
      formula = "145 − 145 / SG",
      source = BAUME,
      example = "GRAVITY.TOBAUME(1.1)",
      note =
          "Other moduli are in use, such as 144.3 (from memory): 0.06 °Bé less at 1.100. Look what your"
              + " instrument says.")
  public static double toBaume(@ScaleSg double sg) {
    return BAUME_MODULUS - BAUME_MODULUS / sg;
  }

  /**
   * {@return specific gravity from degrees Oechsle, SG}
   *
   * @param oe degrees Oechsle, °Oe
   */
  @CellarFunction(
      summary = "Specific gravity 20/20 °C at these degrees Oechsle.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula = "1 + °Oe / 998.2, the density of water at 20 °C in kg/m³",
      source = OECHSLE,
      example = "GRAVITY.FROMOECHSLE(100)",
      note = "Below 0 in a dry mead, which is lighter than water; the definition covers it.")
  public static double fromOechsle(
      @Arg(name = "oe", help = "Degrees Oechsle", is = Quantity.OECHSLE, from = -19.96, to = 449)
          double oe) {
    return 1 + oe / Sucrose.WATER_20;
  }

  /**
   * {@return degrees Oechsle from specific gravity, °Oe}
   *
   * @param sg specific gravity 20/20 °C, SG
   */
  @CellarFunction(
      summary = "Degrees Oechsle at this specific gravity.",
      gives = Quantity.OECHSLE,
      formula = "Density less density of water at 20 °C, in kg/m³.",
      source = OECHSLE,
      example = "GRAVITY.TOOECHSLE(1.1)",
      note = "Often simplified to 1000 (SG − 1), which is 0.2 % more.")
  public static double toOechsle(
      @Arg(
              name = "sg",
              help = "Specific gravity, 20/20 °C",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.449)
          double sg) {
    return (sg - 1) * Sucrose.WATER_20;
  }

  /**
   * {@return refractometer reading corrected to 20 °C, °Bx}
   *
   * @param brix degrees Brix as read, °Bx
   * @param temperatureC temperature of prism and sample, °C
   * @param offset what is added to the reading, °Bx
   * @param thermometerK what is added to the temperature as read, K
   */
  @CellarFunction(
      summary =
          "Degrees Brix that a refractometer without temperature compensation would show at 20 °C.",
      gives = Quantity.BRIX,
      formula =
          "Reading with its offset, plus a correction, linear between the entries of a table.",
      source =
          "International table for sucrose, 10 to 30 °C, as in Table A.1 of a GOST on refractometric"
              + " soluble solids; from memory: its rows from 23 °C on, which are within 0.04 of what Lorentz"
              + " and Lorenz make of densities and the row of 10 °C.",
      example = "GRAVITY.BRIXCORRECT(22;27)",
      note =
          "The later table of OIV-MA-AS2-02 (ICUMSA 1974) differs by up to 0.02 °Bx below 40 °Bx."
              + " An instrument with automatic compensation needs no correction.")
  public static double brixCorrect(
      @Arg(name = "brix", help = "Degrees Brix as read", is = Quantity.BRIX, from = 0, to = 70)
          double brix,
      @Arg(
              name = "temperature",
              help = "Temperature of prism and sample",
              is = Quantity.TEMPERATURE,
              from = 10,
              to = 30)
          double temperatureC,
      @Arg(
              name = "offset",
              help = "What this refractometer lacks, added to its reading: GRAVITY.OFFSET",
              is = Quantity.BRIX,
              from = -5,
              to = 5,
              byDefault = 0)
          double offset,
      @ThermometerOffset double thermometerK) {
    double read = within(brix + offset, "brix", Quantity.BRIX, 0, 70);
    double warmth =
        within(temperatureC + thermometerK, "temperature", Quantity.TEMPERATURE, 10, 30);
    return read + Refractometer.correction(read, warmth);
  }

  /**
   * {@return degrees Brix from refractive index, °Bx}
   *
   * @param n refractive index at 20 °C and 589 nm, n
   */
  @CellarFunction(
      summary = "Degrees Brix of a must of this refractive index.",
      gives = Quantity.BRIX,
      formula = "The sucrose content w that has this index: " + INDEX_OF_SUCROSE,
      source = INDEX,
      example = "GRAVITY.BRIXFROMINDEX(1.36384)",
      note = "0.0001 in the index is 0.06 °Bx. Below 1.33299, the index of water, it is negative.")
  public static double brixFromIndex(
      @Arg(
              name = "n",
              help = "Refractive index at 20 °C and 589 nm",
              is = Quantity.REFRACTIVE_INDEX,
              from = 1.3329,
              to = 1.501)
          double n) {
    return 100 * RefractiveIndex.sucroseMassFraction(n);
  }

  /**
   * {@return refractive index from degrees Brix, n}
   *
   * @param brix degrees Brix at 20 °C, °Bx
   */
  @CellarFunction(
      summary = "Refractive index at 20 °C and 589 nm of a must of these degrees Brix.",
      gives = Quantity.REFRACTIVE_INDEX,
      formula = INDEX_OF_SUCROSE,
      source = INDEX,
      example = "GRAVITY.INDEXFROMBRIX(20)")
  public static double indexFromBrix(
      @Arg(name = "brix", help = "Degrees Brix at 20 °C", is = Quantity.BRIX, from = 0, to = 83.9)
          double brix) {
    return RefractiveIndex.sucrose(brix / 100);
  }

  /**
   * {@return density at a temperature, kg/L}
   *
   * @param sg specific gravity 20/20 °C, SG
   * @param temperatureC temperature, °C
   * @param abv alcohol; 0 for a must, % vol
   */
  @CellarFunction(
      summary = "Density of a must or mead at a temperature.",
      gives = Quantity.DENSITY,
      formula =
          "ρ(t) = sucrose density at t + ρw(t) (ρ(ethanol, t) / ρ(no ethanol, t) − 1), with the extract"
              + " that gravity and alcohol leave at 20 °C.",
      source =
          "Sucrose: ICUMSA SPS-4. Ethanol: OIML R 22 (1975). Mixture: Tabarié, OIV-MA-AS2-03B.",
      example = "GRAVITY.DENSITY(0.995;12;14)",
      note = "In vacuo; weights in air are 0.1 % less.")
  public static double density(
      @Arg(
              name = "sg",
              help = "Specific gravity 20/20 °C",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.44)
          double sg,
      @Arg(
              name = "temperature",
              help = "Temperature",
              is = Quantity.TEMPERATURE,
              from = 0,
              to = 40,
              zeroIsBlank = true)
          double temperatureC,
      @Arg(
              name = "abv",
              help = "Alcohol; 0 for a must",
              is = Quantity.PERCENT_VOL,
              from = 0,
              to = 30,
              byDefault = 0)
          double abv) {
    if (sg < EthanolWater.gravity20(abv / 100)) {
      throw new Refusal(GravityReason.LIGHTER_THAN_ALCOHOL)
          .with("sg", sg, Quantity.SPECIFIC_GRAVITY)
          .with("abv", abv, Quantity.PERCENT_VOL);
    }
    return Mixture.density(sg, abv / 100, temperatureC) / 1000;
  }

  /**
   * {@return sugar of an unfermented must, g/L}
   *
   * @param sg specific gravity of the unfermented must, SG
   */
  @CellarFunction(
      summary = "Sugar of an unfermented must, all its extract counted as sucrose.",
      gives = Quantity.GRAM_PER_LITRE,
      formula = "1000 w ρ(w) at 20 °C, with w the sucrose content that has this gravity.",
      source = SPS4,
      example = "GRAVITY.SUGAR(1.1)",
      note =
          "Of honey's solids about 94 % is fermentable sugar: HONEY.SUGAR. For fermenting mead take"
              + " ALCOHOL.SUGARLEFT.")
  public static double sugar(@Sg double sg) {
    return Sucrose.gramsPerLitre(sg);
  }

  /**
   * {@return a gravity as a logbook has it, SG}
   *
   * @param text the note
   */
  @CellarFunction(
      summary =
          "Specific gravity from a note such as \"1.085\", \"1085\", \"20.5 Bx\" or \"11.2 Bé\".",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "One number, with at most one scale before or after it, and the temperature after that.",
      source = "Rules of our own, in the note.",
      example = "GRAVITY.READ(\"20,5 °Bx\")",
      note =
          "Decimal point or decimal comma; capitals, accents, spaces and the degree sign do not matter."
              + " OG or FG may come first.\n"
              + "Without a scale: 0.98 to 1.3 with two decimals or more is a gravity, 980 to 1300 its"
              + " thousandfold. Everything else is refused: \"85\" may be points or Oechsle, \"20\" Brix"
              + " or degrees, \"1.1\" a gravity or Brix.\n"
              + "Scales: SG; Bx, Brix, Plato or °P, all g sucrose in 100 g; Be, Bé or Baumé; Oe or"
              + " Oechsle. Each is taken over what 0.98 to 1.3 is on it, below zero too.\n"
              + "Refused besides: two numbers, a number with two separators, ranges, question marks,"
              + " \"about\", and any other word. A temperature that ends the note, as in \"1.0425 (13 C)\","
              + " is not corrected for: GRAVITY.READTEMPERATURE reads it, GRAVITY.CORRECT takes both.")
  public static double read(@Arg(name = "text", help = "The note") String text) {
    return LogbookNote.of(text).gravity();
  }

  /**
   * {@return temperature of the sample in a note, °C; a note without one is refused}
   *
   * @param text the note
   */
  @CellarFunction(
      summary =
          "Temperature of the sample from a note such as \"1.0425 (13 C)\" or \"1.085 at 68 F\".",
      gives = Quantity.TEMPERATURE,
      formula = "The number with C or F that ends a note which GRAVITY.READ takes.",
      source = "Rules of our own, in the note.",
      example = "GRAVITY.READTEMPERATURE(\"1.0425 (13 C)\")",
      note =
          "In brackets or after a comma, a slash, @ or the word at; with or without a degree sign. Without"
              + " C or F it is refused.")
  public static double readTemperature(@Arg(name = "text", help = "The note") String text) {
    return LogbookNote.of(text)
        .temperatureC()
        .orElseThrow(() -> new Refusal(GravityReason.NO_TEMPERATURE).with("text", text));
  }
}
