package meadcell.barrel;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.density.Evaporation;

/** What a barrel loses through wood and bung, and when to top it up. */
@Family(name = "BARREL")
public final class Losses {
  private static final String LINEAR_LOSS = "A steady loss; a year has 365.25 days.";

  @Arg(
      name = "capacity",
      help = "What the barrel holds when full",
      is = Quantity.VOLUME,
      above = 0,
      to = Shared.LARGEST_L)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Capacity {}

  @Arg(
      name = "lossRate",
      help = "Loss of a year, in per cent of the capacity",
      is = Quantity.PERCENT_PER_YEAR,
      from = 0.1,
      to = 50)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface YearlyLoss {}

  @Arg(
      name = "start",
      help = "Headspace to begin with",
      is = Quantity.VOLUME,
      from = 0,
      to = Shared.LARGEST_L,
      byDefault = 0)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Start {}

  private Losses() {}

  /** What a topping log tells. */
  public record LossRate(
      @Gives(value = "loss", is = Quantity.PERCENT_PER_YEAR) double loss,
      @Gives(value = "standard error", is = Quantity.PERCENT_PER_YEAR) double standardError) {}

  /**
   * {@return loss from a topping log, a row}
   *
   * @param days day of each topping, in order, day number
   * @param topupsL what each topping took, L
   * @param capacityL what the barrel holds when full, L
   */
  @CellarFunction(
      summary = "Loss of a barrel in a year and its standard error, from the log of toppings.",
      formula =
          "Litres of all toppings but the first over the days since the first: least squares"
              + " through the origin, weighted by the time between. The standard error is from the"
              + " scatter of the toppings.",
      source =
          "Weighted linear regression. For comparison, published losses: 1.7 % a year in a cave,"
              + " 6.7 % in a warehouse (Northern California; encyclopaedia entry Wine cave), 1 to"
              + " 9 % over all cellars (common practice, no source).",
      example = "BARREL.LOSSRATE({0;30;61;92};{4;0.9;1;0.8};225)",
      note =
          "The first topping only starts the count: it fills what the wood soaked up. Each topping"
              + " must fill to the same mark.")
  public static LossRate lossRate(
      @Arg(
              name = "days",
              help = "Day of each topping, in order",
              is = Quantity.DATE,
              from = 0,
              to = 200000)
          double[] days,
      @Arg(
              name = "topups",
              help = "What each topping took",
              is = Quantity.VOLUME,
              from = 0,
              to = Shared.LARGEST_L)
          double[] topupsL,
      @Capacity double capacityL) {
    return Topping.rate(days, topupsL, capacityL);
  }

  /**
   * {@return headspace after some days, L}
   *
   * @param capacityL what the barrel holds when full, L
   * @param lossRate loss of a year, in per cent of the capacity, % per year
   * @param days days since, days
   * @param startL headspace to begin with, L
   */
  @CellarFunction(
      summary = "Headspace that will have opened after some days.",
      gives = Quantity.VOLUME,
      formula = "start + capacity × lossRate/100 × days/365.25.",
      source = LINEAR_LOSS,
      example = "BARREL.HEADSPACEAFTER(225;4;60)")
  public static double headspaceAfter(
      @Capacity double capacityL,
      @YearlyLoss double lossRate,
      @Arg(name = "days", help = "Days since", is = Quantity.DAYS, above = 0, to = 20000)
          double days,
      @Start double startL) {
    double headspaceL = startL + capacityL * Topping.share(lossRate, days);
    if (headspaceL > capacityL) {
      throw new Refusal(BarrelReason.HEADSPACE_ABOVE_CAPACITY)
          .with("headspace", headspaceL, Quantity.VOLUME)
          .with("capacity", capacityL, Quantity.VOLUME);
    }
    return headspaceL;
  }

  /**
   * {@return days until the headspace is too large, days}
   *
   * @param capacityL what the barrel holds when full, L
   * @param lossRate loss of a year, in per cent of the capacity, % per year
   * @param limitL headspace at which to top up, L
   * @param startL headspace to begin with, L
   */
  @CellarFunction(
      summary = "Days until the headspace reaches a limit and the barrel wants topping.",
      gives = Quantity.DAYS,
      formula = "(limit − start) / (capacity × lossRate/100 / 365.25).",
      source = LINEAR_LOSS,
      example = "BARREL.DAYSTOTOP(225;4;1.5)",
      note = "Less than 0: that many days overdue.")
  public static double daysToTop(
      @Capacity double capacityL,
      @YearlyLoss double lossRate,
      @Arg(
              name = "limit",
              help = "Headspace at which to top up",
              is = Quantity.VOLUME,
              above = 0,
              to = Shared.LARGEST_L)
          double limitL,
      @Start double startL) {
    double larger = Math.max(limitL, startL);
    if (larger > capacityL) {
      throw new Refusal(BarrelReason.MORE_THAN_CAPACITY)
          .about(larger == limitL ? "limit" : "start")
          .with("value", larger, Quantity.VOLUME)
          .with("capacity", capacityL, Quantity.VOLUME);
    }
    return (limitL - startL) / (capacityL * Topping.share(lossRate, 1));
  }

  /**
   * {@return strength after evaporation, % vol}
   *
   * @param abv strength before, % vol
   * @param loss volume lost, %
   * @param humidity relative humidity of the cellar, %
   * @param neutral humidity at which the strength stands still, %
   */
  @CellarFunction(
      summary = "Estimate of the strength after a share of the volume has gone through the wood.",
      gives = Quantity.PERCENT_VOL,
      formula =
          "Driving forces: ethanol leaves in proportion to what is there, water to what is there"
              + " and to (100 − humidity)/(100 − neutral). Both run until the volume is down by"
              + " loss; contraction is left out.",
      source =
          "Direction (dry air raises, humid air lowers the strength): The Oxford Companion to"
              + " Wine, 2006, evaporation. From memory: the driving forces, and 65 to 70 % as"
              + " neutral humidity. The default 67: common practice, no source.",
      example = "BARREL.STRENGTH(13;5;80)",
      note =
          "An estimate: warmth, draught, wood and bung are not in it. Above 85 % humidity it is carried"
              + " on beyond what cellars have been compared at: hardly any water leaves then, and"
              + " nearly all of the loss is alcohol. Of 13 % vol 5 % lost at 95 % leave 11.1 with"
              + " neutral 65 and 11.3 with 70. Measure before you print a label.")
  public static double strength(
      @Arg(name = "abv", help = "Strength before", is = Quantity.PERCENT_VOL, from = 1, to = 75)
          double abv,
      @Arg(name = "loss", help = "Volume lost", is = Quantity.PERCENT, from = 0.1, to = 60)
          double loss,
      @Arg(
              name = "humidity",
              help = "Relative humidity of the cellar",
              is = Quantity.PERCENT,
              from = 40,
              to = 99)
          double humidity,
      @Arg(
              name = "neutral",
              help = "Humidity at which the strength stands still",
              is = Quantity.PERCENT,
              from = 50,
              to = 80,
              byDefault = Evaporation.NEUTRAL_HUMIDITY)
          double neutral) {
    return Evaporation.strength(abv, loss, humidity, neutral);
  }
}
