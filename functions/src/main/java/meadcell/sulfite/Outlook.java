package meadcell.sulfite;

import java.util.Optional;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;

/** How long the free SO₂ lasts. */
@Family(name = "SULFITE")
public final class Outlook {
  private Outlook() {}

  /**
   * When free SO₂ will have fallen to a limit.
   *
   * @param day the likeliest day
   * @param earliest no earlier, 95 of 100
   * @param latest no later, 95 of 100
   * @param by readings or oxygen
   */
  public record Until(
      @Gives(value = "day", is = Quantity.DATE) double day,
      @Gives(value = "earliest", is = Quantity.DATE) double earliest,
      @Gives(value = "latest", is = Quantity.DATE) double latest,
      @Gives(value = "readings or oxygen, whichever it rests on", is = Quantity.TEXT) String by) {}

  /**
   * {@return when free SO₂ runs out, a row}
   *
   * @param days day of each reading, day number
   * @param free free SO₂ on that day, mg/L
   * @param limit free SO₂ to act at, mg/L
   * @param oxygen oxygen that comes in, mg/L per year
   * @param factor by which the oxygen may be off
   * @param ratio SO₂ for 1 mg of oxygen, mg
   * @param uncertainty standard uncertainty of a reading, mg/L
   */
  @CellarFunction(
      summary =
          "Day on which free SO₂ will have fallen to a limit, and the days between which that lies:"
              + " from readings that surely fall, else from the oxygen that comes in.",
      formula =
          "Readings: weighted straight lines through ln(free) and through free by day, each reading ±"
              + " uncertainty, more if they scatter more. The day is where the first meets limit; the"
              + " limits are where 95 % bands of both do, whichever is farther. They count if both slopes"
              + " are below 0 with 97.5 %. Oxygen: the mean reading falls by ratio · oxygen ÷ 365.25 a"
              + " day; limits from factor, from 2 to 4 mg/mg, from the reading and, for the latest, 1.4 for what comes"
              + " back from bound SO₂, in squares.",
      source =
          "Weighted least squares; JCGM 100:2008, 5.1.2. Ratio: 4 by stoichiometry, 2 to 3.4 measured"
              + " (Danilewicz, Waterhouse, from memory); 2.83 is the middle of 2 and 4. Factor 2: that"
              + " of BARREL.OXYGEN. A reading ± 2 mg/L, and 1.4: common practice, no source. Held against simulated"
              + " meads that bind and lose SO₂ by another model, 93 to 99 of 100 kept the limits.",
      example = "SULFITE.LASTS({0;30;60;90};{34;30;26;23};15)",
      note =
          "Readings since the last addition only, once it has bound, which takes some days; one is"
              + " enough where oxygen is told: BARREL.OXYGEN for a year, or the sum of BLEND.OXYGEN over"
              + " one. Free SO₂ that binds, or comes back from what is bound, is seen in readings alone:"
              + " from oxygen the day is the worse guess.",
      caution =
          "Act at the earliest day. Sulfites can make asthmatics and allergic people gravely ill: never"
              + " add without a reading.")
  public static Until lasts(
      @Decline.Days double[] days,
      @Decline.Free double[] free,
      @Decline.Limit double limit,
      @Arg(
              name = "oxygen",
              help = "Oxygen that comes in; left out: readings must do",
              is = Quantity.MILLIGRAM_PER_LITRE_YEAR,
              above = 0,
              to = 200)
          OptionalDouble oxygen,
      @Arg(
              name = "factor",
              help = "By which factor the oxygen may be off, 95 of 100",
              from = 1,
              to = 10,
              byDefault = 2)
          double factor,
      @Arg(
              name = "ratio",
              help = "SO₂ for 1 mg of oxygen, mg",
              from = 1,
              to = 4.01,
              byDefault = 2.83)
          double ratio,
      @Arg(
              name = "uncertainty",
              help = "Standard uncertainty of a reading",
              is = Quantity.MILLIGRAM_PER_LITRE,
              from = 0.1,
              to = 50,
              byDefault = 2)
          double uncertainty) {
    Optional<Lasting.Budget> budget =
        oxygen.isPresent()
            ? Optional.of(new Lasting.Budget(oxygen.getAsDouble(), factor, ratio))
            : Optional.empty();
    Lasting lasting = Lasting.of(days, free, limit, uncertainty, budget);
    return new Until(
        lasting.day(),
        lasting.earliest(),
        lasting.latest(),
        lasting.byReadings() ? "readings" : "oxygen");
  }
}
