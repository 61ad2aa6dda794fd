package meadcell.gravity;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.Arrays;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;
import meadcell.density.RefractiveIndex;
import meadcell.density.Sucrose;

/**
 * Checks of hydrometer, refractometer and thermometer, and what they say about the next reading.
 */
@Family(name = "GRAVITY")
public final class Instruments {
  private static final String LINE =
      "Least squares with the uncertainty of a point of the line: JCGM 100:2008 (GUM), H.3.";

  /** Student's t with one, two and three degrees of freedom. */
  private static final String FEW_CHECKS =
      " Where u is left out, the scatter of few checks tells little: for 95 of 100 take not twice the"
          + " standard uncertainty but 13 times with three checks, 4.3 with four, 3.2 with five.";

  /** How far beyond the checks the line is taken, as a part of what they span. */
  private static final double BEYOND = 0.2;

  /** K: what a conversion from °F leaves. */
  private static final double ROUNDING = 1e-9;

  private static final double DAYS_IN_YEAR = 365.25;

  /** What is dissolved in a check solution. */
  public enum Solute {
    /** Sucrose, table sugar. */
    SUGAR,
    /** Sodium chloride, table salt without additions. */
    SALT
  }

  @Arg(
      name = "u",
      help = "Standard uncertainty of one check, in the same unit; left out: from their scatter",
      above = 0)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface OfOneCheck {}

  private Instruments() {}

  /**
   * {@return what a faultless hydrometer shows in a check solution, SG}
   *
   * @param percent sugar or salt in the solution, % mass
   * @param temperatureC temperature of the solution, °C
   * @param solute what is dissolved
   * @param calibrationC temperature the hydrometer is made for, °C
   */
  @CellarFunction(
      summary = "What a faultless hydrometer shows in water or in a solution of known strength.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "ρ(t) / (ρw(cal) · (1 − 25·10⁻⁶ (t − cal))): density of the solution by that of water at the"
              + " calibration temperature, the expansion of glass counted.",
      source =
          "Sugar and water: ICUMSA SPS-4 with Bettin and Spieweck 1990. Salt: Poradnik fizykochemiczny,"
              + " Warsaw 1974, 15 to 25 °C, linear between its entries; within 0.0001 of Rogers and"
              + " Pitzer 1982, J. Phys. Chem. Ref. Data 11:15. Glass: ISO 1768:1975.",
      example = "GRAVITY.SOLUTION(10;20)",
      note =
          "percent is g in 100 g of the solution: 10 is 10 g with 90 g of water; 0 is distilled water,"
              + " 1.000 at the calibration temperature. Weigh to 0.1 g in 500 g and stir until it is"
              + " clear: an error of 0.1 % is 0.0004 with sugar, 0.0007 with salt.\n"
              + "Let liquid, jar and instrument come to one temperature; wipe the stem with alcohol.")
  public static double solution(
      @Arg(
              name = "percent",
              help = "Sugar or salt in the solution; 0 is water",
              is = Quantity.PERCENT_MASS,
              from = 0,
              to = 60)
          double percent,
      @Arg(
              name = "temperature",
              help = "Temperature of the solution",
              is = Quantity.TEMPERATURE,
              from = 5,
              to = 40,
              zeroIsBlank = true)
          double temperatureC,
      @Arg(name = "solute", help = "What is dissolved", byDefaultWord = "sugar") Solute solute,
      @Arg(
              name = "calibration",
              help = "Temperature the hydrometer is made for",
              is = Quantity.TEMPERATURE,
              from = 4,
              to = 30,
              byDefault = 20,
              byDefaultUs = 60)
          double calibrationC) {
    boolean isSalt = solute == Solute.SALT && percent > 0;
    if (isSalt) {
      refuseBeyondTable(percent, temperatureC);
    }
    double density =
        isSalt ? Salt.density(percent, temperatureC) : Sucrose.density(percent / 100, temperatureC);
    return Hydrometer.shown(density, temperatureC, calibrationC);
  }

  private static void refuseBeyondTable(double percent, double temperatureC) {
    if (percent > Salt.MOST
        || temperatureC < Salt.COLDEST - ROUNDING
        || temperatureC > Salt.WARMEST + ROUNDING) {
      throw new Refusal(GravityReason.SALT_BEYOND_TABLE)
          .with("most", Salt.MOST, Quantity.PERCENT_MASS)
          .with("coldest", Salt.COLDEST, Quantity.TEMPERATURE)
          .with("warmest", Salt.WARMEST, Quantity.TEMPERATURE)
          .with("percent", percent, Quantity.PERCENT_MASS)
          .with("temperature", temperatureC, Quantity.TEMPERATURE);
    }
  }

  /**
   * {@return what a faultless refractometer shows in a solution of salt, °Bx}
   *
   * @param percent salt in the solution, % mass
   */
  @CellarFunction(
      summary = "Degrees Brix that a faultless refractometer shows in a solution of salt at 20 °C.",
      gives = Quantity.BRIX,
      formula = "GRAVITY.BRIXFROMINDEX of the refractive index of the solution.",
      source =
          "Index of sodium chloride: CRC Handbook of Chemistry and Physics, concentrative properties of"
              + " aqueous solutions (from memory), four decimals: the result is within 0.06 °Bx.",
      example = "GRAVITY.SALTBRIX(5)",
      note =
          "percent is g in 100 g of the solution. A sugar solution needs no table: 10 g in 100 g is"
              + " 10 °Bx. Water is 0.")
  public static double saltBrix(
      @Arg(
              name = "percent",
              help = "Salt in the solution; 0 is water",
              is = Quantity.PERCENT_MASS,
              from = 0,
              to = Salt.MOST)
          double percent) {
    return percent == 0 ? 0 : 100 * RefractiveIndex.sucroseMassFraction(Salt.index(percent));
  }

  /** What an instrument lacks at a reading. */
  public record Offset(
      @Gives(value = "offset, to be added to the reading") double offset,
      @Gives(value = "its standard uncertainty") double u) {}

  /**
   * {@return what an instrument lacks at a reading and its standard uncertainty, a row, in the unit
   * of the readings}
   *
   * @param read what the instrument showed at its checks
   * @param due what it should have shown
   * @param at reading for which the offset is wanted
   * @param u standard uncertainty of one check
   */
  @CellarFunction(
      summary = "What to add to an instrument's reading, from checks where the truth was known.",
      formula =
          "due − read; from two readings on the straight line of it over read. u_at² = u² (1/n + (at −"
              + " mean)² / Σ (read − mean)²), u the larger of what is given and, from three checks on,"
              + " of the scatter about the line.",
      source = LINE,
      example = "GRAVITY.OFFSET({1.002;1.051};{1;1.0505};1.03;0.0005)",
      note =
          "For any instrument: a hydrometer in water and in a sugar solution (GRAVITY.SOLUTION says what"
              + " is due), a refractometer, a thermometer in melting ice, where 0 °C is due. All numbers"
              + " are in the unit of the readings.\n"
              + "The first cell goes into offset of GRAVITY.CORRECT or GRAVITY.BRIXCORRECT, or into"
              + " thermometer there; the second into CELLAR.UNCERTAINTY.\n"
              + "One check, or several at one reading, hold for all readings: so it is where a paper"
              + " scale has slipped. From two on, at may lie beyond them by a fifth of what they span.\n"
              + "u of a reading: a third of what can just be told apart (common practice, no source)."
              + FEW_CHECKS)
  public static Offset offset(
      @Arg(name = "read", help = "What the instrument showed at its checks") double[] read,
      @Arg(name = "due", help = "What it should have shown") double[] due,
      @Arg(name = "at", help = "Reading for which the offset is wanted", from = -1e6, to = 1e6)
          double at,
      @OfOneCheck OptionalDouble u) {
    double[] lacking = new double[read.length];
    for (int i = 0; i < read.length; i++) {
      lacking[i] = due[i] - read[i];
    }
    double least = Arrays.stream(read).min().orElseThrow();
    double most = Arrays.stream(read).max().orElseThrow();
    double beyond = BEYOND * (most - least);
    if (most > least && !Range.between(least - beyond, most + beyond).contains(at)) {
      throw new Refusal(GravityReason.BEYOND_CHECKS)
          .with("name", "at")
          .with("value", at, Quantity.NUMBER)
          .with("least", least, Quantity.NUMBER)
          .with("most", most, Quantity.NUMBER);
    }
    CheckedLine line = new CheckedLine(read, lacking, u);
    return new Offset(line.at(at), line.uAt(at));
  }

  /** What an instrument lacks on a day, and what it gains in a year. */
  public record Drift(
      @Gives(value = "offset on that day") double offset,
      @Gives(value = "its standard uncertainty") double u,
      @Gives(value = "drift in a year") double perYear,
      @Gives(value = "standard uncertainty of the drift") double uPerYear) {}

  /**
   * {@return offset of an instrument on a day, its standard uncertainty, its drift in a year and
   * the standard uncertainty of that, a row}
   *
   * @param dates days of the checks, day numbers
   * @param offsets what was to be added to the reading on each
   * @param date day for which the offset is wanted, day number
   * @param u standard uncertainty of one check
   */
  @CellarFunction(
      summary = "How an instrument drifts from check to check, and what it lacks on a day.",
      formula =
          "The straight line of the offsets over the days, as GRAVITY.OFFSET has it; a year is 365.25"
              + " days.",
      source = LINE,
      example = "GRAVITY.DRIFT({45000;45200;45400;45600};{0;0.001;0.001;0.002};45700)",
      note =
          "A drift of less than twice its standard uncertainty may be none. Look first for a crack, a"
              + " slipped scale or dirt: those come at once, and no line describes them.\n"
              + "date is at most as long after the last check as the checks span."
              + FEW_CHECKS)
  public static Drift drift(
      @Arg(
              name = "dates",
              help = "Days of the checks",
              is = Quantity.DATE,
              from = 1,
              to = 1_000_000)
          double[] dates,
      @Arg(name = "offsets", help = "What was to be added to the reading on each") double[] offsets,
      @Arg(
              name = "date",
              help = "Day for which the offset is wanted",
              is = Quantity.DATE,
              from = 1,
              to = 1_000_000)
          double date,
      @OfOneCheck OptionalDouble u) {
    double first = Arrays.stream(dates).min().orElseThrow();
    double last = Arrays.stream(dates).max().orElseThrow();
    if (first == last) {
      throw new Refusal(GravityReason.ONE_DAY);
    }
    if (date < first || date > 2 * last - first) {
      throw new Refusal(GravityReason.BEFORE_CHECKS);
    }
    CheckedLine line = new CheckedLine(dates, offsets, u);
    return new Drift(
        line.at(date), line.uAt(date), DAYS_IN_YEAR * line.slope(), DAYS_IN_YEAR * line.uOfSlope());
  }

  /**
   * {@return reading at the level surface, SG}
   *
   * @param reading specific gravity as read at the top of the meniscus, SG
   * @param stemMm diameter of the stem, mm
   * @param spacingMm length on the stem from one hundredth to the next, mm
   * @param abv alcohol, % vol
   */
  @CellarFunction(
      summary =
          "Hydrometer reading at the level surface, from one at the top of the meniscus, where a dark or"
              + " cloudy mead hides the surface.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "reading + 0.01 h / spacing; h = σ/(ρ g D) · (√(1 + 2 ρ g D²/σ) − 1), the height of the"
              + " meniscus, by Langberg's formula.",
      source =
          "Langberg, as in ISO 649-1, annex (from memory): within 0.05 mm of the equation of Young and"
              + " Laplace for stems of 4 to 10 mm in water. Surface tension of water with ethanol at"
              + " 20 °C: Vázquez, Alvarez, Navaza 1995, J. Chem. Eng. Data 40:611 (from memory).",
      example = "GRAVITY.MENISCUS(1.04;5;14;6)",
      note =
          "Only for a hydrometer made to be read at the level surface, as most are; one that says \"top\" or"
              + " \"opaque\" needs nothing. A stem of 5 mm lifts water by 2.6 mm, a mead of 12 % vol by 2.2"
              + " mm.\n"
              + "A clean stem is assumed: grease lets the meniscus fall short. Foam hides it altogether:"
              + " degas.")
  public static double meniscus(
      @Arg(
              name = "reading",
              help = "Specific gravity as read at the top of the meniscus",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.3)
          double reading,
      @Arg(
              name = "stem",
              help = "Diameter of the stem",
              is = Quantity.MILLIMETRE,
              from = 2,
              to = 12)
          double stemMm,
      @Arg(
              name = "spacing",
              help = "Length on the stem from one hundredth to the next, as from 1.040 to 1.050",
              is = Quantity.MILLIMETRE,
              from = 2,
              to = 300)
          double spacingMm,
      @Arg(
              name = "abv",
              help = "Alcohol; 0 for a must",
              is = Quantity.PERCENT_VOL,
              from = 0,
              to = 25,
              byDefault = 0)
          double abv) {
    double density = reading * Sucrose.WATER_20;
    return reading + 0.01 * Meniscus.heightMm(stemMm, Meniscus.tension(abv), density) / spacingMm;
  }
}
