package meadcell.duty;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.bottle.Gas;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Explained;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Statement;

/** Excise on a lot. */
@Family(
    name = "DUTY",
    about = "Excise on a lot.",
    says = {DutyReason.class, RestsOn.class})
public final class Duty {
  private static final String CHECK_LAW =
      "Not legal or tax advice. Rates change, often every year: check the current text, and ask the"
          + " authority.";

  private static final String DAY_NUMBER =
      "day counts from 30 December 1899, as spreadsheets do unless they are set to count from 1904: add"
          + " 1462 there.";

  @Arg(name = "volume", help = "Mead removed for sale", is = Quantity.VOLUME, above = 0, to = 1e8)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Removed {}

  @Arg(
      name = "abv",
      help = "Strength, as stated for the tax",
      is = Quantity.PERCENT_VOL,
      from = 0.5,
      to = 60)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Abv {}

  @Arg(
      name = "day",
      help = "Day on which the tax falls due",
      is = Quantity.DATE,
      from = 1,
      to = 100_000)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Day {}

  private Duty() {}

  /**
   * US tax on a lot.
   *
   * @param gallons wine gallons
   * @param tax before the credit, USD
   * @param credit of the producer, USD
   * @param due what remains, USD
   * @param because what it rests on
   */
  public record UsTax(
      @Gives("wine gallons, to the tenth") double gallons,
      @Gives(value = "tax before credit", is = Quantity.US_DOLLAR) double tax,
      @Gives(value = "credit", is = Quantity.US_DOLLAR) double credit,
      @Gives(value = "tax due", is = Quantity.US_DOLLAR) double due,
      Statement because)
      implements Explained {}

  /**
   * {@return US tax on a lot, a row}
   *
   * @param volumeL mead removed for sale, L
   * @param abv true strength, % vol
   * @param day day on which it is removed, day number
   * @param beforeL wine that got the credit earlier in the calendar year, L
   * @param gas what decides the class beside the strength
   */
  @CellarFunction(
      summary = "US federal excise on a lot of mead by its class, with the credit of a producer.",
      formula =
          "Wine gallons to the nearest tenth times the rate of the class (BOTTLE.TAXCLASS); credit: USD 1 a"
              + " gallon for the first 30000 of the calendar year, 0.9 for the next 100000, 0.535 for the"
              + " next 620000.",
      source =
          "26 U.S.C. 5041(b), (c), (d) and (h), text of November 2024; in force in this form since 2018"
              + " (from memory: the date).",
      example = "DUTY.USA(1000;13.5;46100;5000)",
      note =
          "Rates stand in a table with their dates; CELLAR.WHY tells which was taken. The credit is for"
              + " wine the producer made and removes in that year, and shared in a group of producers under"
              + " one control: read the first two numbers where it does not apply. before is all wine that"
              + " got it since January. State taxes come on top.\n"
              + DAY_NUMBER,
      caution = CHECK_LAW)
  public static UsTax usa(
      @Removed double volumeL,
      @Abv double abv,
      @Day double day,
      @Arg(
              name = "before",
              help = "Wine that got the credit earlier in the calendar year",
              is = Quantity.VOLUME,
              from = 0,
              to = 1e9,
              byDefault = 0)
          double beforeL,
      Gas gas) {
    return UsWine.tax(volumeL, abv, gas.taxClass(abv), day, beforeL);
  }

  /**
   * UK duty on a lot.
   *
   * @param alcoholL litres of pure alcohol
   * @param rate for each of them, GBP
   * @param duty on the lot, GBP
   * @param because what it rests on
   */
  public record UkDuty(
      @Gives("litres of pure alcohol") double alcoholL,
      @Gives(value = "rate for each", is = Quantity.POUND_STERLING) double rate,
      @Gives(value = "duty", is = Quantity.POUND_STERLING) double duty,
      Statement because)
      implements Explained {}

  /**
   * {@return UK duty on a lot, a row}
   *
   * @param volumeL mead, L
   * @param abv strength, % vol
   * @param day day on which it leaves duty suspension, day number
   * @param draught 1 if in containers for draught relief, else 0
   * @param relief discount of a small producer, GBP for a litre of pure alcohol
   */
  @CellarFunction(
      summary = "UK Alcohol Duty on a lot of mead, by litres of pure alcohol.",
      formula =
          "volume · abv/100 · (rate − relief), abv rounded down to one decimal place; rates for other"
              + " fermented products below 3.5, below 8.5, to 22 and above 22 % vol; none to 1.2.",
      source =
          "Finance (No. 2) Act 2023, Schedules 7 and 8; rates from August 2023, February 2025 and February"
              + " 2026, read in 2026, partly at second hand: the table names where. Strength: GOV.UK, Alcoholic"
              + " products technical guide, section 11, read in 2026: 7.59 becomes 7.5.",
      example = "DUTY.UK(225;14;46100)",
      note =
          "Known to January 2027, for rates change every February; CELLAR.WHY tells which was taken."
              + " Draught relief: containers of at least 20 L for a dispense system, below 8.5 % vol. relief:"
              + " from DUTY.UKRELIEF. The easement for wine of 11.5 to 14.5 % vol, which ended on 31 January 2025,"
              + " is not applied. abv is that of the label in most cases, and of a drink that still ferments that"
              + " which it is sold with. How litres and pence are rounded on the return is not done here.\n"
              + DAY_NUMBER,
      caution = CHECK_LAW)
  public static UkDuty uk(
      @Removed double volumeL,
      @Abv double abv,
      @Day double day,
      @Arg(name = "draught", help = "1 if in containers for draught relief, else 0", byDefault = 0)
          boolean draught,
      @Arg(
              name = "relief",
              help = "Discount of a small producer, for a litre of pure alcohol",
              is = Quantity.POUND_STERLING,
              from = 0,
              to = 100,
              byDefault = 0)
          double relief) {
    return UkAlcohol.duty(volumeL, abv, day, draught, relief);
  }

  /**
   * {@return discount of a small producer in the UK, GBP for a litre of pure alcohol}
   *
   * @param productionHl pure alcohol made in the previous production year, hL
   * @param startHl start of the band that it falls in, hL
   * @param cumulative cumulative discount of that band, GBP
   * @param marginal marginal discount of that band, GBP
   */
  @CellarFunction(
      summary =
          "Discount of a small producer from UK Alcohol Duty, for a litre of pure alcohol, from the row of"
              + " the authority's table.",
      gives = Quantity.POUND_STERLING,
      formula =
          "(cumulative + marginal · (production − start)) / production, up to the next penny.",
      source = "Finance (No. 2) Act 2023, section 59, read in 2026.",
      example = "DUTY.UKRELIEF(20;5;49.8;2.53)",
      note =
          "For drinks below 8.5 % vol of producers of at most 4500 hL of pure alcohol in all, February to"
              + " January; who made none then takes the estimate for this one. The tables are on GOV.UK, one for each strength, with and without draught, new"
              + " every February; the example is of February 2026, below 3.5 % vol.",
      caution = CHECK_LAW)
  public static double ukRelief(
      @Arg(
              name = "production",
              help = "Pure alcohol made in the previous production year, hL",
              above = 0,
              to = 4500)
          double productionHl,
      @Arg(name = "start", help = "Start of its band, hL", from = 0, below = 4500) double startHl,
      @Arg(
              name = "cumulative",
              help = "Cumulative discount of the band",
              is = Quantity.POUND_STERLING,
              from = 0,
              to = 10_000)
          double cumulative,
      @Arg(
              name = "marginal",
              help = "Marginal discount of the band",
              is = Quantity.POUND_STERLING,
              from = -10,
              to = 100)
          double marginal) {
    if (startHl >= productionHl) {
      throw new Refusal(DutyReason.NOT_IN_BAND)
          .with("start", startHl, Quantity.NUMBER)
          .with("production", productionHl, Quantity.NUMBER);
    }
    double exact = (cumulative + marginal * (productionHl - startHl)) / productionHl;
    return Math.max(0, Math.ceil(100 * exact - 1e-9) / 100);
  }

  /** What a rate is for. */
  public enum Basis {
    /** Of the drink. */
    LITRE(1, false),
    /** Of the drink. */
    HECTOLITRE(0.01, false),
    /** The US gallon of 231 cubic inches. */
    GALLON(1 / 3.785411784, false),
    /** Pure. */
    LITRE_OF_ALCOHOL(0.01, true),
    /** Pure. */
    HECTOLITRE_OF_ALCOHOL(0.0001, true),
    /** A hectolitre for each % vol, as much as a litre of pure alcohol. */
    HECTOLITRE_PERCENT(0.01, true);

    private final double perLitre;
    private final boolean byStrength;

    Basis(double perLitre, boolean byStrength) {
      this.perLitre = perLitre;
      this.byStrength = byStrength;
    }
  }

  /**
   * {@return duty on a lot by a rate of one's own, in its currency}
   *
   * @param volumeL mead, L
   * @param abv strength, % vol
   * @param rate rate of the country and class
   * @param basis what the rate is for
   */
  @CellarFunction(
      summary = "Duty on a lot in any country, by the rate that you give.",
      formula =
          "volume · rate / basis; with basis litreofalcohol, hectolitreofalcohol and hectolitrepercent times"
              + " abv/100, hectolitrepercent being as much as litreofalcohol.",
      source = "Arithmetic; the rate is yours.",
      example = "DUTY.OWNRATE(225;13.5;45;\"hectolitre\")",
      note =
          "In the currency of the rate. In the EU each state has its own rates and classes: mead may be an"
              + " other fermented beverage, wine or an intermediate product, by its strength, gas and"
              + " making.",
      caution = CHECK_LAW)
  public static double ownRate(
      @Removed double volumeL,
      @Abv double abv,
      @Arg(name = "rate", help = "Rate of the country and class", from = 0, to = 1e9) double rate,
      @Arg(name = "basis", help = "What the rate is for") Basis basis) {
    return volumeL * rate * basis.perLitre * (basis.byStrength ? abv : 1);
  }
}
