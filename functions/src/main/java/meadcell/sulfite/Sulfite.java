package meadcell.sulfite;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** Sulfur dioxide and sorbate. */
@Family(name = "SULFITE", about = "Sulfur dioxide and sorbate.", says = SulfiteReason.class)
public final class Sulfite {
  /** Sorbic acid in potassium sorbate: 112.128 of 150.218 g/mol (standard atomic weights). */
  private static final double SORBIC_ACID = 112.128 / 150.218;

  /** SO₂ in potassium metabisulfite as sold, rounded from 2 · 64.058 of 222.312 g/mol. */
  private static final double POTASSIUM_METABISULFITE = 57.6;

  private static final String CONSTANTS =
      "pk181 and pk177 are dilute-water constants in everyday use: 1.81 is checked against the table"
          + " of a teaching handout, Sulfur Dioxide Additions Using Potassium Metabisulfite; 1.77 is"
          + " that of a laboratory note, molecular = free · 10^(1.77 − pH). oiv: OIV-MA-AS323-04C and"
          + " Regulation (EEC) 2676/90; its Table II (pKM at ionic strength 0.038) is from memory, within"
          + " 0.002 of Table I (read) less the Debye–Hückel term. Enthalpy −17.8 kJ/mol: from memory,"
          + " Goldberg and Parker 1985, J. Res. NBS 90:341; heats of formation of Shock and others 1988"
          + " and 1989 give −17.4.";
  private static final String CONSTANTS_NOTE =
      "The usual targets, 0.5 and 0.8 mg/L, were set with pk181 (common practice, no source). At 10"
          + " to 15 % vol and 20 °C oiv finds 25 to 60 % more molecular SO₂ than pk181, at 25 °C about"
          + " twice as much: never hold a target of one against a result of the other.\n"
          + "oiv needs abv and temperature; the other two methods use neither. Its table runs over 0 to 15"
          + " % vol and 20 to 40 °C, between its rows it interpolates. From 15 to 20 % vol its last step"
          + " goes on. Below 20 °C it is extrapolated: pK falls by 0.010 for 1 °C, as the enthalpy of"
          + " dissociation in water has it. The table's own step from 20 to 25 °C is four times that;"
          + " carried on it would leave 38 % less molecular SO₂ at 13 °C. Nobody has published which"
          + " of the two holds for cold mead: keep that much in reserve.";
  private static final String SO2_CAUTION =
      "Sulfites can make asthmatics and allergic people gravely ill. Declare them from 10 mg/L total"
          + " SO₂ on (USA 27 CFR 4.32(e); EU Regulation 1169/2011 Annex II, from memory). Total SO₂"
          + " is limited, from memory: USA 350 mg/L (27 CFR 4.22, 24.246), EU mead 200 mg/L"
          + " (Regulation 1333/2008 Annex II, 14.2.5); check the current law. Salt and solution give"
          + " off SO₂ gas, more so with acid: air the room, keep your face away.";

  @Arg(name = "ph", help = "pH of the mead", is = Quantity.PH, from = 2.5, to = 5)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Ph {}

  @Arg(name = "method", help = "Dissociation constant", byDefaultWord = "pk181")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface DissociationConstant {}

  @Arg(name = "abv", help = "Alcohol, for method oiv", is = Quantity.PERCENT_VOL, from = 0, to = 25)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Abv {}

  @Arg(
      name = "temperature",
      help = "Temperature of the mead, for method oiv",
      is = Quantity.TEMPERATURE,
      from = -5,
      to = 45,
      zeroIsBlank = true)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Temperature {}

  @Arg(name = "volume", help = "Mead to treat", is = Quantity.VOLUME, above = 0, to = 1e6)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Volume {}

  @Arg(
      name = "rise",
      help = "Rise of free SO₂ wanted",
      is = Quantity.MILLIGRAM_PER_LITRE,
      above = 0,
      to = 350)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Rise {}

  @Arg(
      name = "bound",
      help = "Share of the SO₂ added that soon binds; 0 is refused, for some always does",
      is = Quantity.PERCENT,
      from = 0,
      to = 90,
      byDefault = 33)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Bound {}

  private Sulfite() {}

  /** Which dissociation constant is used. */
  public enum Method {
    /** pK 1.81, dilute water. */
    PK181,
    /** pK 1.77, dilute water. */
    PK177,
    /** The mixed constant by alcohol and temperature, OIV-MA-AS323-04C. */
    OIV
  }

  /** Whose law limits an addition. */
  public enum Rule {
    /** 27 CFR 24.246. */
    USA(300, "27 CFR 24.246"),
    /** Regulation (EC) 1333/2008. */
    EU(200, "Regulation 1333/2008 Annex II, 14.2.5");

    private final double mostSorbicAcid;
    private final String law;

    Rule(double mostSorbicAcid, String law) {
      this.mostSorbicAcid = mostSorbicAcid;
      this.law = law;
    }
  }

  /**
   * {@return the part of free SO₂ that works, mg/L}
   *
   * @param free free SO₂, mg/L
   * @param ph pH of the mead, pH
   * @param method dissociation constant
   * @param abv alcohol, for method oiv, % vol
   * @param temperatureC temperature of the mead, for method oiv, °C
   */
  @CellarFunction(
      summary = "Molecular SO₂, the part of free SO₂ that holds microbes down.",
      gives = Quantity.MILLIGRAM_PER_LITRE,
      formula = "free ÷ (1 + 10^(pH − pK)).",
      source = CONSTANTS,
      example = "SULFITE.MOLECULAR(32;3.4)",
      note = CONSTANTS_NOTE,
      caution = SO2_CAUTION)
  public static double molecular(
      @Arg(name = "free", help = "Free SO₂", is = Quantity.MILLIGRAM_PER_LITRE, from = 0, to = 1000)
          double free,
      @Ph double ph,
      @DissociationConstant Method method,
      @Abv OptionalDouble abv,
      @Temperature OptionalDouble temperatureC) {
    return free / freePerMolecular(ph, method, abv, temperatureC);
  }

  /**
   * {@return free SO₂ for a molecular target, mg/L}
   *
   * @param molecular molecular SO₂ wanted, mg/L
   * @param ph pH of the mead, pH
   * @param method dissociation constant
   * @param abv alcohol, for method oiv, % vol
   * @param temperatureC temperature of the mead, for method oiv, °C
   */
  @CellarFunction(
      summary = "Free SO₂ needed for so much molecular SO₂.",
      gives = Quantity.MILLIGRAM_PER_LITRE,
      formula = "molecular · (1 + 10^(pH − pK)).",
      source = CONSTANTS,
      example = "SULFITE.FREENEEDED(0.8;3.4)",
      note = CONSTANTS_NOTE,
      caution = SO2_CAUTION)
  public static double freeNeeded(
      @Arg(
              name = "molecular",
              help = "Molecular SO₂ wanted",
              is = Quantity.MILLIGRAM_PER_LITRE,
              above = 0,
              to = 5)
          double molecular,
      @Ph double ph,
      @DissociationConstant Method method,
      @Abv OptionalDouble abv,
      @Temperature OptionalDouble temperatureC) {
    return molecular * freePerMolecular(ph, method, abv, temperatureC);
  }

  private static double freePerMolecular(
      double ph, Method method, OptionalDouble abv, OptionalDouble temperatureC) {
    double pk =
        switch (method) {
          case PK181 -> 1.81;
          case PK177 -> 1.77;
          case OIV ->
              MixedConstant.at(
                  abv.orElseThrow(() -> missing("abv")),
                  temperatureC.orElseThrow(() -> missing("temperature")));
        };
    return 1 + Math.pow(10, ph - pk);
  }

  private static Refusal missing(String argument) {
    return new Refusal(SulfiteReason.NEEDED_BY_OIV).about(argument);
  }

  /**
   * {@return salt for a rise of free SO₂, g}
   *
   * @param volumeL mead to treat, L
   * @param rise rise of free SO₂ wanted, mg/L
   * @param so2Percent SO₂ in the salt; sodium metabisulfite 67.4, %
   * @param boundPercent share of the SO₂ added that soon binds, %
   */
  @CellarFunction(
      summary = "Metabisulfite for a rise of free SO₂.",
      gives = Quantity.GRAM,
      formula = "volume · rise ÷ 1000 ÷ (so2Percent ÷ 100) ÷ (1 − bound ÷ 100).",
      source =
          "SO₂ in potassium metabisulfite 57.63 %, in sodium metabisulfite 67.40 %: from standard"
              + " atomic weights. A third binds: a wine guild's article of what most wineries reckon with;"
              + " from 25 % in clean dry wine to 65 % in turbid or sweet wine: Practical Winery & Vineyard,"
              + " January 2014.",
      example = "SULFITE.DOSE(225;20)",
      note =
          "Measure free SO₂ again after a few days; what bound in yours is 100 (1 − rise found ÷ rise"
              + " asked for), and with the first additions to a mead nearly all may.\n"
              + "Old or damp salt holds less: renew it every year (common practice, no source).",
      caution = SO2_CAUTION)
  public static double dose(
      @Volume double volumeL,
      @Rise double rise,
      @Arg(
              name = "so2Percent",
              help = "SO₂ in the salt; sodium metabisulfite 67.4",
              is = Quantity.PERCENT,
              from = 20,
              to = 100,
              byDefault = POTASSIUM_METABISULFITE)
          double so2Percent,
      @Bound double boundPercent) {
    if (boundPercent == 0) {
      throw new Refusal(SulfiteReason.NONE_BINDS);
    }
    return volumeL * rise / 1000 / (so2Percent / 100) / (1 - boundPercent / 100);
  }

  /**
   * {@return stock solution for a rise of free SO₂, mL}
   *
   * @param volumeL mead to treat, L
   * @param rise rise of free SO₂ wanted, mg/L
   * @param strength salt in 100 mL of solution, g
   * @param boundPercent share of the SO₂ added that soon binds, %
   */
  @CellarFunction(
      summary = "Stock solution of potassium metabisulfite for a rise of free SO₂.",
      gives = Quantity.MILLILITRE,
      formula =
          "Grams as SULFITE.DOSE gives them for "
              + POTASSIUM_METABISULFITE
              + " % SO₂, times 100 ÷ strength.",
      source = "SO₂ in potassium metabisulfite: from standard atomic weights, 57.63 %.",
      example = "SULFITE.SOLUTION(225;20;10)",
      note = "Solution loses SO₂: keep it closed and cool, make it afresh.",
      caution = SO2_CAUTION)
  public static double solution(
      @Volume double volumeL,
      @Rise double rise,
      @Arg(
              name = "strength",
              help = "Salt in 100 mL of solution, g",
              from = 1,
              to = 30,
              byDefault = 10)
          double strength,
      @Bound double boundPercent) {
    return dose(volumeL, rise, POTASSIUM_METABISULFITE, boundPercent) * 100 / strength;
  }

  /**
   * {@return when free SO₂ runs out, day number}
   *
   * @param days day of each reading, day number
   * @param free free SO₂ on that day, mg/L
   * @param limit free SO₂ to act at, mg/L
   */
  @CellarFunction(
      summary = "Day on which free SO₂ will have fallen to a limit, from one's own readings.",
      gives = Quantity.DATE,
      formula = "Straight line through ln(free) by day, least squares; the day it meets ln(limit).",
      source = "First-order decline, common practice, no source; ordinary least squares.",
      example = "SULFITE.DECAY({0;30;60};{32;28;24.5};20)",
      note =
          "Readings since the last addition only. Three or more readings are better than two: the"
              + " method itself scatters by some mg/L. Every racking or opened bung speeds the loss."
              + " SULFITE.LASTS says between which days it lies.",
      caution = SO2_CAUTION)
  public static double decay(
      @Decline.Days double[] days, @Decline.Free double[] free, @Decline.Limit double limit) {
    return new Decline(days, free).dayWhen(limit);
  }

  /**
   * {@return SO₂ that oxygen uses up, mg; mg/L where oxygen is mg/L}
   *
   * @param oxygen oxygen that came in, mg or mg/L
   * @param ratio SO₂ for 1 mg of oxygen, mg
   */
  @CellarFunction(
      summary = "Free SO₂ that oxygen uses up: mg for mg, or mg/L for mg/L.",
      gives = Quantity.MILLIGRAM,
      formula = "ratio · oxygen. Two molecules of SO₂ for one of O₂ are 2 · 64.06 / 32.00 = 4.00.",
      source =
          "Stoichiometry with standard atomic weights; 4 mg for 1 mg, as a note of a South African wine"
              + " laboratory of 2015 has it. Measured: 2.0 to 3.4 mg for 1 mg, Danilewicz and Waterhouse"
              + " (from memory).",
      example = "SULFITE.USED(2.5)",
      note =
          "4 is the most that can be lost, 2 to 3.4 what was measured in wines: phenols and lees take"
              + " their part. Oxygen: BARREL.OXYGEN for a year in wood, 2 to 5 mg/L for an open racking,"
              + " 0.2 to 0.5 for a topping (from memory, Vidal).",
      caution = SO2_CAUTION)
  public static double used(
      @Arg(
              name = "oxygen",
              help = "Oxygen that came in, mg or mg/L",
              is = Quantity.MILLIGRAM,
              from = 0,
              to = 1e6)
          double oxygen,
      @Arg(name = "ratio", help = "SO₂ for 1 mg of oxygen, mg", from = 1, to = 4.01, byDefault = 4)
          double ratio) {
    return ratio * oxygen;
  }

  /**
   * {@return potassium sorbate, g}
   *
   * @param volumeL mead to treat, L
   * @param sorbicAcid sorbic acid wanted, mg/L
   * @param rule whose law
   */
  @CellarFunction(
      summary = "Potassium sorbate for so much sorbic acid, within the law's limit.",
      gives = Quantity.GRAM,
      formula = "volume · sorbicAcid ÷ 1000 ÷ 0.74643.",
      source =
          "Sorbic acid in potassium sorbate 74.643 %: from standard atomic weights. Limits, from"
              + " memory: USA 300 mg/L (27 CFR 24.246), EU mead 200 mg/L (Regulation 1333/2008 Annex"
              + " II, 14.2.5).",
      example = "SULFITE.SORBATE(225;150)",
      note =
          "Sorbate keeps few yeasts from growing anew; it stops no ferment and no bacteria. Rack"
              + " clear first, have SO₂ in, and leave it out where lactic bacteria have worked: they"
              + " turn it into a smell of geranium leaves (common practice, no source).",
      caution =
          "Stabilised is not sterile: sweet mead in closed bottles can still ferment and burst them."
              + " Check the current law on additions and their declaration.")
  public static double sorbate(
      @Volume double volumeL,
      @Arg(
              name = "sorbicAcid",
              help = "Sorbic acid wanted",
              is = Quantity.MILLIGRAM_PER_LITRE,
              above = 0,
              to = 1000)
          double sorbicAcid,
      @Arg(name = "rule", help = "Whose law", byDefaultWord = "usa") Rule rule) {
    if (sorbicAcid > rule.mostSorbicAcid) {
      throw new Refusal(SulfiteReason.ABOVE_LAW)
          .with("sorbicAcid", sorbicAcid, Quantity.MILLIGRAM_PER_LITRE)
          .with("rule", rule)
          .with("most", rule.mostSorbicAcid, Quantity.MILLIGRAM_PER_LITRE)
          .with("law", rule.law);
    }
    return volumeL * sorbicAcid / 1000 / SORBIC_ACID;
  }
}
