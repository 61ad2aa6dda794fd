package meadcell.barrel;

import meadcell.catalogue.Place;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** Loss through wood and bung, as the topping log tells it. */
final class Topping {
  private static final double DAYS_PER_YEAR = 365.25;

  private Topping() {}

  static double years(double days) {
    return days / DAYS_PER_YEAR;
  }

  static double share(double percentPerYear, double days) {
    return percentPerYear / 100 * years(days);
  }

  /**
   * Weighted least squares through the origin. What a topping adds is the loss since the one
   * before, with a variance that grows with the time between; so the estimate is all litres over
   * all days.
   */
  static Losses.LossRate rate(double[] days, double[] topupsL, double capacityL) {
    int intervals = days.length - 1;
    if (intervals < 2) {
      throw new Refusal(BarrelReason.TOO_FEW_TOPPINGS).with("count", days.length);
    }
    double litres = 0;
    double span = 0;
    for (int i = 1; i < days.length; i++) {
      if (days[i] <= days[i - 1]) {
        throw new Refusal(BarrelReason.DAY_NOT_LATER)
            .about("days", Place.row(i + 1))
            .with("day", days[i], Quantity.NUMBER);
      }
      litres += topupsL[i];
      span += days[i] - days[i - 1];
    }
    double perDay = litres / span;
    double squares = 0;
    for (int i = 1; i < days.length; i++) {
      double interval = days[i] - days[i - 1];
      double residual = topupsL[i] - perDay * interval;
      squares += residual * residual / interval;
    }
    double error = Math.sqrt(squares / (intervals - 1) / span);
    double toPercentPerYear = 100 * DAYS_PER_YEAR / capacityL;
    return new Losses.LossRate(perDay * toPercentPerYear, error * toPercentPerYear);
  }
}
