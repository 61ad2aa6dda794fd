package meadcell.ferment;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Numbers;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.Balling;
import meadcell.density.Sucrose;
import meadcell.honey.Honey;

/** How far a ferment has gone, how it goes on, what it gives off. */
@Family(name = "FERMENT", about = "How far a ferment has gone, how it goes on, what it gives off.")
public final class Ferment {
  private static final String ORIGINAL = "Gravity of the must before fermentation";
  private static final String PRESENT = "Gravity now, as GRAVITY.CORRECT gives it";
  private static final String FINAL = "Gravity at which it is expected to end";
  private static final String VOLUME = "Mead in the tank";
  private static final String DAYS = "Days or dates of the readings, one after the other";
  private static final String GRAVITIES = "Gravities read on those days, corrected";

  private static final String BALANCE =
      "Balling's mass balance (Nielsen et al., Balling's Formula – scrutiny of a brewing dogma) with"
          + " Tabarié's rule (OIV-MA-AS2-03B), as in ALCOHOL.ABV.";
  private static final String HEAT =
      " Heat of reaction: 101 kJ per mole of hexose, for sugar and ethanol dissolved and carbon"
          + " dioxide as gas, computed from heats of formation that are from memory (kJ/mol: glucose"
          + " −1262, ethanol −288.3, carbon dioxide −393.5); molar mass of ethanol 46.069.";
  private static final String ROOM_CAUTION =
      "Carbon dioxide is heavier than air, does not smell of danger and kills in closed rooms, pits,"
          + " tanks and cellars. Ventilate low down, measure with a gas meter before and while you are"
          + " in, never go in alone. Local rules and a ventilation engineer decide.";

  /** kJ per g of ethanol made. */
  private static final double HEAT_PER_ETHANOL = 101 / (2 * 46.069);

  /** Gravity step over which heat and fall are in proportion. */
  private static final double SMALL_FALL = 1e-4;

  private static final double SECONDS_PER_DAY = 86400;

  /** Litres of a mole of gas at 20 °C and 101.325 kPa, by the ideal gas law. */
  private static final double MOLAR_VOLUME = 8.314462618 * 293.15 / 101.325;

  private static final double CO2_MOLAR_MASS = 44.0095;

  /** Immediately dangerous to life or health: NIOSH 1994. */
  private static final double DANGEROUS_PPM = 40_000;

  private Ferment() {}

  /** What a forecast says. */
  public record Forecast(
      @Gives(value = "terminal gravity", is = Quantity.SPECIFIC_GRAVITY) double terminal,
      @Gives(value = "its standard error", is = Quantity.SPECIFIC_GRAVITY) double standardError,
      @Gives(value = "day it comes within tolerance", is = Quantity.DAYS) double day,
      @Gives(value = "fastest fall", is = Quantity.GRAVITY_PER_DAY) double fastestFall) {}

  /** Share of the sugar gone. */
  @CellarFunction(
      summary = "Share of the fermentable sugar that is gone.",
      gives = Quantity.PERCENT,
      formula =
          "Sugar turned, per kg of the must it began as, from original to present over that from"
              + " original to final, by Balling's balance.",
      source = BALANCE,
      example = "FERMENT.PROGRESS(1.1;1.05)",
      note =
          "Readings below 1.000 are normal. More than 100 says that it went below the final gravity"
              + " you expected.")
  public static double progress(
      @Arg(
              name = "original",
              help = ORIGINAL,
              is = Quantity.SPECIFIC_GRAVITY,
              from = 1.01,
              to = 1.2)
          double original,
      @Arg(name = "present", help = PRESENT, is = Quantity.SPECIFIC_GRAVITY, from = 0.98, to = 1.2)
          double present,
      @Arg(
              name = "final",
              help = FINAL,
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.15,
              byDefault = 0.995)
          double finalGravity) {
    requireBelow(original, finalGravity);
    return 100
        * Course.ethanolPerMust(original, present)
        / Course.ethanolPerMust(original, finalGravity);
  }

  /** Gravity at a share of the way; named with a capital since {@code break} is a Java keyword. */
  @CellarFunction(
      summary = "Gravity at which a given share of the fermentable sugar is gone.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula = "The gravity at which FERMENT.PROGRESS is share.",
      source = BALANCE,
      example = "FERMENT.BREAK(1.1)",
      note =
          "The third break, one third of the sugar gone, is commonly the last moment to feed"
              + " nitrogen (common practice, no source).")
  public static double Break(
      @Arg(
              name = "original",
              help = ORIGINAL,
              is = Quantity.SPECIFIC_GRAVITY,
              from = 1.01,
              to = 1.2)
          double original,
      @Arg(
              name = "share",
              help = "Share of the sugar gone",
              is = Quantity.PERCENT,
              above = 0,
              to = 100,
              byDefault = 33.3)
          double sharePercent,
      @Arg(
              name = "final",
              help = FINAL,
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.15,
              byDefault = 0.995)
          double finalGravity) {
    requireBelow(original, finalGravity);
    return Course.gravity(original, finalGravity, sharePercent / 100);
  }

  private static void requireBelow(double original, double finalGravity) {
    if (finalGravity >= original) {
      throw Refusal.inconsistent(
          "final is "
              + Numbers.text(finalGravity)
              + "; it must be below original, "
              + Numbers.text(original)
              + ".");
    }
  }

  /** Original gravity as if all honey had been in the must from the start. */
  @CellarFunction(
      summary =
          "Effective original gravity after honey was fed into a running ferment: the one to take"
              + " for alcohol from then on.",
      gives = Quantity.SPECIFIC_GRAVITY,
      formula =
          "The mead is turned back into the must it was, by Balling's balance; the honey is added;"
              + " the sugar content of the sum gives the gravity.",
      source = BALANCE + " Honey solids count as sucrose, as in HONEY.GRAVITY.",
      example = "FERMENT.ORIGINALAFTER(100;1.09;1.02;5)",
      note =
          "volume and present are those just before feeding. For a second feeding give the result as"
              + " original.\n"
              + "With the first original gravity kept, 5 kg of honey in 100 L hide some 1.7 % vol.")
  public static double originalAfter(
      @Arg(
              name = "volume",
              help = "Mead in the tank before feeding",
              is = Quantity.VOLUME,
              above = 0,
              to = 1e6)
          double volumeL,
      @Arg(name = "original", help = ORIGINAL, is = Quantity.SPECIFIC_GRAVITY, from = 1, to = 1.2)
          double original,
      @Arg(
              name = "present",
              help = "Gravity just before feeding",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.2)
          double present,
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
      throw Refusal.inconsistent(
          "honey is too much for volume: together they had the gravity "
              + Numbers.text(gravity, 4)
              + "; at most "
              + Honey.THICKEST_MUST
              + " is a must. Are they swapped?");
    }
    return gravity;
  }

  /** Where and when the ferment ends. */
  @CellarFunction(
      summary = "Where a ferment will end, and when, from the readings so far.",
      formula =
          "Least squares fit (Levenberg–Marquardt) of SG = terminal + drop / (1 + exp(r (t −"
              + " midpoint))); the day is when that is tolerance above terminal, the fastest fall"
              + " the curve's steepest slope since the first reading.",
      source =
          "Logistic growth after Verhulst, as Pearl used it (Quarterly Review of Biology 2:532–548,"
              + " 1927). That gravity falls so is common practice, no source.",
      example = "FERMENT.FORECAST({0;2;4;6;8;10;12};{1.1;1.094;1.079;1.053;1.028;1.013;1.007})",
      note =
          "Gives four cells in a row. At least five readings, from the start on. Refused until three"
              + " of them lie behind the fastest fall and the fall is down to half of it: before that"
              + " no curve says where it ends.\n"
              + "The standard error knows the scatter about the curve, not that ferments can stick."
              + " One with a long slow tail ends lower and later than forecast.")
  public static Forecast forecast(
      @Arg(name = "days", help = DAYS, is = Quantity.DAYS, from = 0, to = 1e6) double[] days,
      @Arg(
              name = "gravities",
              help = GRAVITIES,
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.2)
          double[] gravities,
      @Arg(
              name = "tolerance",
              help = "How near the terminal gravity counts as arrived",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.0001,
              to = 0.01,
              byDefault = 0.001)
          double tolerance) {
    requireOrder(days);
    return Forecasting.of(days, gravities, tolerance);
  }

  /** Whether it still ferments. */
  @CellarFunction(
      summary =
          "Whether a ferment is \"finished\", \"falling\" or \"stalled\", or whether the readings"
              + " \"cannot tell\" yet.",
      gives = Quantity.TEXT,
      formula =
          "The fall per day is the slope through the latest readings, as few (but three) as make its"
              + " 95 % half-width, 1.645 u / √Σ(t − mean t)², at most minFall / 2. With those: upper"
              + " limit below minFall: stalled if the mean gravity is above expected by more than"
              + " 1.645 u / √n, else finished; otherwise falling. Without: falling if the lower limit"
              + " is above 0, else cannot tell.",
      source =
          "Normal theory with known uncertainty. u 0.0005 and minFall 0.0005: common practice, no"
              + " source.",
      example = "FERMENT.STATE({0;2;4;6};{1.031;1.03;1.031;1.03};1)",
      note =
          "With the defaults six daily readings or three over five days can tell; a fall of 0.001 a"
              + " day is not taken for a stall. Not falling fast is not yet stalled.",
      caution =
          "Finished is not stable: sugar can be left that ferments on in the bottle and bursts it."
              + " See BOTTLE.REFERMENT.")
  public static String state(
      @Arg(name = "days", help = DAYS, is = Quantity.DAYS, from = 0, to = 1e6) double[] days,
      @Arg(
              name = "gravities",
              help = GRAVITIES,
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.2)
          double[] gravities,
      @Arg(
              name = "expected",
              help = "Gravity at which it may end",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.15)
          double expected,
      @Arg(
              name = "u",
              help = "Standard uncertainty of a reading, rounding included",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.00005,
              to = 0.01,
              byDefault = 0.0005)
          double u,
      @Arg(
              name = "minFall",
              help = "A slower fall counts as none",
              is = Quantity.GRAVITY_PER_DAY,
              from = 0.00005,
              to = 0.01,
              byDefault = 0.0005)
          double minFall) {
    requireOrder(days);
    return new Trend(days, gravities, u, minFall).state(expected, minFall);
  }

  private static void requireOrder(double[] days) {
    for (int i = 1; i < days.length; i++) {
      if (days[i] <= days[i - 1]) {
        throw Refusal.inconsistent(
            "days has "
                + Numbers.text(days[i])
                + " after "
                + Numbers.text(days[i - 1])
                + "; each reading must be later than the one before.");
      }
    }
  }

  /** Carbon dioxide made so far. */
  @CellarFunction(
      summary = "Carbon dioxide that a ferment has given off so far.",
      gives = Quantity.MASS,
      formula = "0.9565 g for each g of ethanol; ethanol by Balling's balance.",
      source = BALANCE,
      example = "FERMENT.GAS(100;1.1;0.995)",
      note =
          "1 kg of carbon dioxide is 547 L of gas at 20 °C. Some 1.5 g/L of it stays dissolved"
              + " at 20 °C (Regulation (EEC) 2676/90).",
      caution = ROOM_CAUTION)
  public static double gas(
      @Arg(name = "volume", help = VOLUME, is = Quantity.VOLUME, above = 0, to = 1e6)
          double volumeL,
      @Arg(name = "original", help = ORIGINAL, is = Quantity.SPECIFIC_GRAVITY, from = 1, to = 1.2)
          double original,
      @Arg(name = "present", help = PRESENT, is = Quantity.SPECIFIC_GRAVITY, from = 0.98, to = 1.2)
          double present) {
    return volumeL * Balling.CO2_PER_ETHANOL * Course.ethanol(original, present) / 1000;
  }

  /** Heat made so far. */
  @CellarFunction(
      summary = "Heat that a ferment has made so far.",
      gives = Quantity.KILOJOULE,
      formula = "1.096 kJ for each g of ethanol (101 kJ per mole of hexose); Balling's balance.",
      source = BALANCE + HEAT,
      example = "FERMENT.HEAT(100;1.1;0.995)",
      note =
          "Without cooling, and were nothing lost, it warms a litre by 1 °C for each 4 kJ. 118 kJ per"
              + " mole, often printed, is not supported by heats of formation.")
  public static double heat(
      @Arg(name = "volume", help = VOLUME, is = Quantity.VOLUME, above = 0, to = 1e6)
          double volumeL,
      @Arg(name = "original", help = ORIGINAL, is = Quantity.SPECIFIC_GRAVITY, from = 1, to = 1.2)
          double original,
      @Arg(name = "present", help = PRESENT, is = Quantity.SPECIFIC_GRAVITY, from = 0.98, to = 1.2)
          double present) {
    return volumeL * HEAT_PER_ETHANOL * Course.ethanol(original, present);
  }

  /** Cooling power for a rate of fall. */
  @CellarFunction(
      summary = "Cooling power that holds the temperature while the gravity falls at a given rate.",
      gives = Quantity.WATT,
      formula =
          "Heat per fall of gravity at present, as in FERMENT.HEAT, times fallPerDay / 86400.",
      source = BALANCE + HEAT,
      example = "FERMENT.COOLING(1000;1.1;1.06;0.01)",
      note = "Heat through the walls comes on top. FERMENT.FORECAST gives the fastest fall.")
  public static double cooling(
      @Arg(name = "volume", help = VOLUME, is = Quantity.VOLUME, above = 0, to = 1e6)
          double volumeL,
      @Arg(
              name = "original",
              help = ORIGINAL,
              is = Quantity.SPECIFIC_GRAVITY,
              from = 1.001,
              to = 1.2)
          double original,
      @Arg(name = "present", help = PRESENT, is = Quantity.SPECIFIC_GRAVITY, from = 0.98, to = 1.2)
          double present,
      @Arg(
              name = "fallPerDay",
              help = "Fall of gravity in a day",
              is = Quantity.GRAVITY_PER_DAY,
              above = 0,
              to = 0.1)
          double fallPerDay) {
    double later = heat(volumeL, original, present - SMALL_FALL);
    double perFall = (later - heat(volumeL, original, present)) / SMALL_FALL;
    return 1000 * perFall * fallPerDay / SECONDS_PER_DAY;
  }

  /** Carbon dioxide in the air of a room. */
  @CellarFunction(
      summary = "Carbon dioxide in a ventilated room where mead ferments, once it is steady.",
      gives = Quantity.PARTS_PER_MILLION,
      formula =
          "(air · outside + gas · 10⁶) / (air + gas), with air = room · airChanges and gas in m³/h at"
              + " 20 °C, 0.547 m³/kg.",
      source =
          "Mass balance of well-mixed air. Outside air 420 ppm: from memory. Limits: 29 CFR"
              + " 1910.1000 Table Z-1, 5000 ppm over 8 hours; NIOSH criteria document of 1976,"
              + " 30 000 ppm for at most 10 minutes; NIOSH 1994, 40 000 ppm immediately dangerous to"
              + " life or health, read second-hand.",
      example = "FERMENT.ROOMCO2(0.2;150;1)",
      note =
          "From 40 000 ppm on it is refused: nobody works there.\n"
              + "The gas of a day's fall: FERMENT.GAS of tomorrow's gravity less today's, by 24.",
      caution =
          "This is the mean of well-mixed air. The air at the floor, in pits and between tanks is"
              + " worse. No result means that a room may be entered. "
              + ROOM_CAUTION)
  public static double roomCo2(
      @Arg(
              name = "gasPerHour",
              help = "Carbon dioxide given off in an hour",
              is = Quantity.MASS_PER_HOUR,
              above = 0,
              to = 1000)
          double gasKgPerHour,
      @Arg(name = "room", help = "Air space of the room", is = Quantity.ROOM, above = 0, to = 1e5)
          double roomM3,
      @Arg(
              name = "airChanges",
              help = "How often the room's air is renewed in an hour",
              above = 0,
              to = 100)
          double airChanges,
      @Arg(
              name = "outside",
              help = "Carbon dioxide in the outside air",
              is = Quantity.PARTS_PER_MILLION,
              from = 300,
              to = 2000,
              byDefault = 420)
          double outsidePpm) {
    double air = roomM3 * airChanges;
    double gas = gasKgPerHour / CO2_MOLAR_MASS * MOLAR_VOLUME;
    double ppm = (air * outsidePpm + gas * 1e6) / (air + gas);
    if (ppm >= DANGEROUS_PPM) {
      throw Refusal.outOfRange(
          "gasPerHour, room and airChanges make "
              + Numbers.text(ppm, 2)
              + " ppm of carbon dioxide even if well mixed. From 40000 ppm it is immediately"
              + " dangerous to life (NIOSH): keep out, ventilate low down, measure.");
    }
    return ppm;
  }
}
