package meadcell.bottle;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.stream.IntStream;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Place;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** Heat that kills: pasteurising mead in its bottles or before. */
@Family(name = "BOTTLE")
public final class Heating {
  private static final String HAZARD =
      "A closed bottle that is heated can burst. Mead grows by about 2 % to 60 °C, its gas comes out"
          + " of solution, and what ferments or sparkles has pressure already. Leave headspace, heat and"
          + " cool slowly (glass cracks by quick changes), only bottles and closures whose maker"
          + " rates them, behind a shield, with goggles. Hot liquid scalds; vapour of alcohol burns. Have the"
          + " method checked by someone who is trained in it before a mead is sold on its strength.";
  private static final String ACROSS =
      "Between two rows the temperature is taken as a straight line, and its rate is integrated exactly:"
          + " Δt (r₂ − r₁) / ln(r₂/r₁). Where it falls ever more slowly over three rows, as Newton's law of"
          + " cooling has it, as the exponential through them, if that gives less.";

  @Arg(name = "minutes", help = "Time of each reading", is = Quantity.MINUTES)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Minutes {}

  @Arg(
      name = "temperatures",
      help = "Temperature of the mead at its coldest place",
      is = Quantity.TEMPERATURE,
      from = -5,
      to = 100)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Temperatures {}

  @Arg(
      name = "z",
      help = "How much warmer kills ten times as fast",
      is = Quantity.TEMPERATURE_DIFFERENCE,
      from = 2,
      to = 30,
      byDefault = 7)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface TenfoldBy {}

  @Arg(
      name = "reference",
      help = "Temperature at which a minute is one unit",
      is = Quantity.TEMPERATURE,
      from = 40,
      to = 100,
      byDefault = 60)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Reference {}

  private Heating() {}

  /**
   * {@return pasteurisation units of a log}
   *
   * @param minutes time of each reading, min
   * @param temperaturesC temperature of the mead, °C
   * @param zK how much warmer kills ten times as fast, K
   * @param referenceC temperature at which a minute is one unit, °C
   */
  @CellarFunction(
      summary = "Pasteurisation units (PU) that a log of times and temperatures adds up to.",
      formula = "∫ 10^((T − reference)/z) dt in minutes. " + ACROSS,
      source =
          "1 PU is one minute at 60 °C: Del Vecchio, Dayharsh, Baselt 1951, Proc. American Society of"
              + " Brewing Chemists (from memory: the place). z of 7 K; the other usual rate, 1.393 for"
              + " each K, is z 6.947.",
      example = "BOTTLE.PASTEURUNITS({0;10;15;20;30;35;45};{20;45;55;60;62;58;40})",
      note =
          "US breweries of 1955 gave beer 2.4 to 45.6 PU, 14.8 on the average. For mead no figure was"
              + " found: sugar makes yeast hardier, alcohol and acid weaker. Try a batch, and keep"
              + " bottles warm for months before trusting it.\n"
              + "minutes count from any start; of clock times in cells, (time − first time) · 1440. Read at"
              + " least each minute while it is hot: a degree is a factor of 1.39;"
              + " and read on while it cools: one reading alone cannot tell how soon it fell.\n"
              + "Wild yeast in beer: z 5.0 K; grape-juice Zygosaccharomyces 5.7 K; ascospores of wine yeast"
              + " 12 to 14 K: with another z ask BOTTLE.LOGKILL.",
      caution = HAZARD)
  public static double pasteurUnits(
      @Minutes double[] minutes,
      @Temperatures double[] temperaturesC,
      @TenfoldBy double zK,
      @Reference double referenceC) {
    return equivalentMinutes(minutes, temperaturesC, zK, referenceC);
  }

  /**
   * {@return time at one temperature for so many units, min}
   *
   * @param wanted pasteurisation units that are wanted
   * @param temperatureC temperature of the mead while it is held, °C
   * @param zK how much warmer kills ten times as fast, K
   * @param referenceC temperature at which a minute is one unit, °C
   */
  @CellarFunction(
      summary = "How long to hold mead at one temperature for so many pasteurisation units.",
      gives = Quantity.MINUTES,
      formula = "wanted · 10^((reference − T)/z).",
      source = "As BOTTLE.PASTEURUNITS.",
      example = "BOTTLE.PASTEURMINUTES(30;62)",
      note = "Without what warming and cooling add. The core of a bottle lags behind its bath.",
      caution = HAZARD)
  public static double pasteurMinutes(
      @Arg(name = "wanted", help = "Pasteurisation units that are wanted", above = 0, to = 10_000)
          double wanted,
      @Arg(
              name = "temperature",
              help = "Temperature of the mead while it is held",
              is = Quantity.TEMPERATURE,
              from = 40,
              to = 100)
          double temperatureC,
      @TenfoldBy double zK,
      @Reference double referenceC) {
    return wanted * Math.pow(10, (referenceC - temperatureC) / zK);
  }

  /**
   * {@return decimal reductions of an organism}
   *
   * @param minutes time of each reading, min
   * @param temperaturesC temperature of the mead, °C
   * @param dMinutes time in which nine tenths die at dTemperatureC, min
   * @param dTemperatureC temperature for which dMinutes was measured, °C
   * @param zK how much warmer kills ten times as fast, K
   */
  @CellarFunction(
      summary =
          "By how many powers of ten a log of temperatures reduces an organism of known D and z.",
      formula = "∫ 10^((T − dTemperature)/z) dt / d. " + ACROSS,
      source =
          "Definitions of D and z of the theory of thermal death (from memory: Bigelow 1921, J. Infectious"
              + " Diseases 29:528).",
      example = "BOTTLE.LOGKILL({0;20};{62;62};11.2;60;12)",
      note =
          "6 means one in a million is left. D, z as measured, take them at the strength and sugar nearest to"
              + " yours: wild yeast in beer of 4.7 % vol D at 50 °C 2.2 min, z 5.0 K; Zygosaccharomyces"
              + " rouxii in grape juice D at 50 °C 1.42 min, z 5.7 K, in a concentrate of 52 °Bx 33.4 min,"
              + " z 4.4 K; ascospores of Saccharomyces in beer D at 60 °C 4.6 to 11.2 min, z 12 to 14 K."
              + " None was found for mead of 10 to 15 % vol.\n"
              + "Far from dTemperature the straight line of log D is an extrapolation.",
      caution = HAZARD)
  public static double logKill(
      @Minutes double[] minutes,
      @Temperatures double[] temperaturesC,
      @Arg(
              name = "d",
              help = "Time in which nine tenths die",
              is = Quantity.MINUTES,
              above = 0,
              to = 10_000)
          double dMinutes,
      @Arg(
              name = "dTemperature",
              help = "Temperature for which it was measured",
              is = Quantity.TEMPERATURE,
              from = 30,
              to = 121)
          double dTemperatureC,
      @Arg(
              name = "z",
              help = "How much warmer kills ten times as fast",
              is = Quantity.TEMPERATURE_DIFFERENCE,
              from = 2,
              to = 30)
          double zK) {
    return equivalentMinutes(minutes, temperaturesC, zK, dTemperatureC) / dMinutes;
  }

  /** {@return minutes at the reference temperature that kill as much} */
  private static double equivalentMinutes(
      double[] minutes, double[] temperaturesC, double zK, double referenceC) {
    if (minutes.length < 2) {
      throw new Refusal(BottleReason.TOO_FEW_TIMES);
    }
    for (int i = 1; i < minutes.length; i++) {
      if (minutes[i] <= minutes[i - 1]) {
        throw new Refusal(BottleReason.TIMES_MUST_RISE).about("minutes", Place.row(i + 1));
      }
    }
    Cooling log = new Cooling(minutes, temperaturesC, zK, referenceC);
    return IntStream.range(0, minutes.length - 1).mapToDouble(log::after).sum();
  }
}
