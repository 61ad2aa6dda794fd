package meadcell.ferment;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Place;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Verdict;

/** How a ferment goes on: where it ends, whether it still falls, what may still come. */
@Family(name = "FERMENT")
public final class Prospect {

  @Arg(
      name = "days",
      help = "Days or dates of the readings, one after the other",
      is = Quantity.DAYS,
      from = 0,
      to = 1e6)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Days {}

  @Arg(
      name = "gravities",
      help = "Gravities read on those days, corrected",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 0.98,
      to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Gravities {}

  @Arg(
      name = "u",
      help = "Standard uncertainty of a reading, rounding included",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 0.00005,
      to = 0.01)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface U {
    double byDefault();
  }

  private Prospect() {}

  /**
   * What a forecast says.
   *
   * @param terminal terminal gravity, SG
   * @param standardError its standard error, SG
   * @param day the day on which it comes within tolerance
   * @param fastestFall fastest fall, SG per day
   * @param lower lower 95 % limit of the end, SG
   * @param upper upper 95 % limit of the end, SG
   */
  public record Forecast(
      @Gives(value = "terminal gravity", is = Quantity.SPECIFIC_GRAVITY) double terminal,
      @Gives(value = "its standard error", is = Quantity.SPECIFIC_GRAVITY) double standardError,
      @Gives(value = "day it comes within tolerance", is = Quantity.DAYS) double day,
      @Gives(value = "fastest fall", is = Quantity.GRAVITY_PER_DAY) double fastestFall,
      @Gives(value = "lower 95 % limit of the end", is = Quantity.SPECIFIC_GRAVITY) double lower,
      @Gives(value = "upper 95 % limit of the end", is = Quantity.SPECIFIC_GRAVITY) double upper) {}

  /**
   * What may still happen.
   *
   * @param expected further fall at the present pace, SG
   * @param upper its upper 95 % limit, SG
   * @param sugar that limit as sugar, g/L
   */
  public record Remaining(
      @Gives(value = "further fall at the present pace", is = Quantity.SPECIFIC_GRAVITY)
          double expected,
      @Gives(value = "its upper 95 % limit", is = Quantity.SPECIFIC_GRAVITY) double upper,
      @Gives(value = "that limit as sugar", is = Quantity.GRAM_PER_LITRE) double sugar) {}

  /**
   * {@return where and when the ferment ends, a row}
   *
   * @param days days or dates of the readings, one after the other
   * @param gravities gravities read on those days, corrected, SG
   * @param tolerance how near the terminal gravity counts as arrived, SG
   */
  @CellarFunction(
      summary = "Where a ferment will end, and when, from the readings so far.",
      formula =
          "Least squares fit (Levenberg–Marquardt) of SG = end + drop (1 + ν (t/τ)^p)^(−1/ν), t"
              + " from the first reading on, with ν of 0.1 (ends abruptly), 0.5, 1, 2 and 5 (long"
              + " tail); the curve is the one of least AICc. No end lies below that of the must"
              + " gone dry, by ALCOHOL.SUGARLEFT with the first reading as original.\n"
              + "The limits hold all ends with which one of the curves still fits (profile of the"
              + " sum of squares, Student's t, readings uncertain by 0.0005 at least and by 0.004"
              + " at most, else no curve fits), and a tenth of what is left to fall on both sides;"
              + " the standard error is their distance / 3.92.\n"
              + "The day is when the curve is tolerance above the end, the fastest fall its"
              + " steepest slope.",
      source =
          "Burr, Annals of Mathematical Statistics 13:215 (1942), type XII (from memory); AICc:"
              + " Hurvich and Tsai, Biometrika 76:297 (1989) (from memory). That gravity falls so:"
              + " our own choice, tried on simulated ferments of Monod growth with alcohol"
              + " inhibition: from 60 % of the way three in four are answered, and of those 95 in"
              + " 100 end within the limits.",
      example = "FERMENT.FORECAST({0;2;4;6;8;10;12};{1.1;1.094;1.079;1.053;1.028;1.013;1.007})",
      note =
          "Gives six cells in a row. At least five readings, from the start on and without honey"
              + " fed between them. Refused while the end lies open by more than 0.03, where the"
              + " curve ends above the last reading, and where no curve fits: a cold spell, a"
              + " feeding, a straight fall. In 1,000 simulated ferments whose readings scatter up"
              + " to 0.004, 97 of 100 of the answers held the end; of 56 measured ferments of wine,"
              + " five readings gave 26 a forecast, and none of them was contradicted by the"
              + " next.\n"
              + "The limits do not know that ferments can stick, or be woken.")
  public static Forecast forecast(
      @Days double[] days,
      @Gravities double[] gravities,
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

  /**
   * {@return whether it still ferments, a word and what it rests on}
   *
   * @param days days or dates of the readings, one after the other
   * @param gravities gravities read on those days, corrected, SG
   * @param expected gravity at which it may end, SG
   * @param u standard uncertainty of a reading, rounding included, SG
   * @param minFall a slower fall counts as none, SG per day
   */
  @CellarFunction(
      summary =
          "Whether a ferment is \"finished\", \"falling\" or \"stalled\", or whether the readings"
              + " \"cannot tell\" yet.",
      gives = Quantity.TEXT,
      formula =
          "The fall per day is the slope through the latest readings, as few (but three) as make"
              + " its half-width, 1.645 u / √Σ(t − mean t)², at most 0.6 minFall; limits are"
              + " one-sided, 95 %. falling: its lower limit is above 0. Still: its upper limit is"
              + " below minFall; then finished if the line on the last day is at most 0.002 above"
              + " expected, else stalled. cannot tell: neither, or no such readings, or a rise"
              + " beyond three standard uncertainties and what evaporation explains (0.00003 a"
              + " day).",
      source =
          "Normal theory with known uncertainty. u 0.0005, minFall 0.0001, and that nobody's"
              + " expectation is better than 0.002: common practice, no source.",
      example = "FERMENT.STATE({0;7;14;21};{1.031;1.03;1.031;1.03};1)",
      note =
          "With the defaults four weekly readings can tell, three over twenty days, or fourteen"
              + " daily ones; CELLAR.WHY with the same arguments says how many more are due.\n"
              + "minFall of 0.0001 a day is 3 points a month, some 6.5 g/L of sugar: in a closed"
              + " bottle some 350 kPa. A fall slower than that can be called finished or stalled:"
              + " see FERMENT.REMAINING.\n"
              + "In simulated ferments read weekly or monthly less than 1 in 100 that fell by"
              + " 0.00015 a day was called finished or stalled.",
      caution =
          "Finished is not stable, and never alone a reason to bottle: sugar can be left that"
              + " ferments on in the bottle and bursts it. See FERMENT.REMAINING and"
              + " BOTTLE.WORSTPRESSURE.")
  public static Verdict state(
      @Days double[] days,
      @Gravities double[] gravities,
      @Arg(
              name = "expected",
              help = "Gravity at which it may end",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.2)
          double expected,
      @U(byDefault = 0.0005) double u,
      @Arg(
              name = "minFall",
              help = "A slower fall counts as none",
              is = Quantity.GRAVITY_PER_DAY,
              from = 0.00002,
              to = 0.01,
              byDefault = 0.0001)
          double minFall) {
    requireOrder(days);
    return Trend.of(days, gravities, u, minFall).verdict(days, gravities, expected);
  }

  /**
   * {@return what it may still ferment, a row}
   *
   * @param days days or dates of the readings, one after the other
   * @param gravities gravities read on those days, corrected, SG
   * @param horizonDays days to come
   * @param u standard uncertainty of a reading, rounding included, SG
   */
  @CellarFunction(
      summary =
          "What a mead may still ferment in a time to come if it goes on as it does: fall of"
              + " gravity, its upper limit, and that limit as sugar.",
      formula =
          "The fall per day is the slope through as many of the latest readings as lie on a"
              + " straight line (χ² test at 95 %, u known), three at least; its upper limit,"
              + " one-sided, 95 %, is 1.645 u / √Σ(t − mean t)² more; a rise counts as no fall."
              + " Both times horizon, and not further than to 0.980, where no mead ends. Sugar:"
              + " 2310 g/L for a fall of 1.",
      source =
          "Normal theory with known uncertainty. Sugar: Balling's balance gives 2130 g/L in a weak"
              + " must to 2310 in one of 1.200. u: 0.0005 for reading a hydrometer (common"
              + " practice, no source) and 0.0003 for rounding to 0.001.",
      example = "FERMENT.REMAINING({0;14;28;42;56};{1.001;1;1.001;1;1};90)",
      note =
          "Gives three cells in a row. The first is what the present pace gives: one that slows"
              + " down falls less. More readings over more weeks bring the limit down. Refused"
              + " where the latest readings rise beyond three standard uncertainties and what"
              + " evaporation explains (0.00003 a day): honey came in, or one is wrong.\n"
              + "In simulated ferments the limit held in 98 of 100, but over 30 days in 81 to 87 of"
              + " 100 within or after a cold spell; in 60 measured ferments of wine, a day ahead"
              + " and once they slowed down, in 82 of 84. Of one that still gathers pace it knows"
              + " nothing.",
      caution =
          "It knows the pace of these readings only. Warmth, air, a racking, honey or fresh yeast"
              + " wake a ferment, and a mead that rests in a cold cellar may go on in a warm"
              + " bottle. Read where it is as warm as the bottle will be. See BOTTLE.WORSTPRESSURE"
              + " for what is at stake.")
  public static Remaining remaining(
      @Days double[] days,
      @Gravities double[] gravities,
      @Arg(name = "horizon", help = "Days to come", is = Quantity.DAYS, from = 1, to = 3650)
          double horizonDays,
      @U(byDefault = 0.0006) double u) {
    requireOrder(days);
    return Outlook.of(days, gravities, horizonDays, u);
  }

  private static void requireOrder(double[] days) {
    for (int i = 1; i < days.length; i++) {
      if (days[i] <= days[i - 1]) {
        throw new Refusal(FermentReason.NOT_LATER)
            .about("days", Place.row(i + 1))
            .with("day", days[i], Quantity.NUMBER)
            .with("before", days[i - 1], Quantity.NUMBER);
      }
    }
  }
}
