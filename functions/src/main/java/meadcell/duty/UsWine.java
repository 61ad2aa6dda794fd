package meadcell.duty;

import java.util.List;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Statement;
import meadcell.catalogue.Unit;
import meadcell.law.UsTaxClass;

/** Tax on wine by 26 U.S.C. 5041. */
final class UsWine {
  private record Rate(int day, String since, UsTaxClass of, double usd)
      implements DatedTable.Dated {}

  private record Credit(int day, String since, double to, double usd) implements DatedTable.Dated {}

  private static final DatedTable<Rate> RATES =
      DatedTable.read(
          "us-wine.tsv",
          cells ->
              new Rate(
                  Integer.parseInt(cells[0]),
                  cells[1],
                  UsTaxClass.valueOf(cells[2]),
                  Double.parseDouble(cells[3])));

  private static final DatedTable<Credit> CREDITS =
      DatedTable.read(
          "us-credit.tsv",
          cells ->
              new Credit(
                  Integer.parseInt(cells[0]),
                  cells[1],
                  Double.parseDouble(cells[2]),
                  Double.parseDouble(cells[3])));

  private UsWine() {}

  static Duty.UsTax tax(double litres, double abv, UsTaxClass of, double day, double litresBefore) {
    if (of == UsTaxClass.SPIRITS) {
      throw new Refusal(DutyReason.NOT_WINE)
          .with("abv", abv, Quantity.PERCENT_VOL)
          .with("most", 24.0, Quantity.PERCENT_VOL);
    }
    double gallons = tenths(litres);
    double before = litresBefore / Unit.GALLON.factor();
    Rate rate = RATES.on(day, row -> row.of == of);
    double tax = gallons * rate.usd;
    double credit = credit(CREDITS.on(day), before, gallons);
    return new Duty.UsTax(
        gallons,
        tax,
        credit,
        tax - credit,
        Statement.of(RestsOn.US_RATE)
            .with("class", of.words())
            .with("rate", rate.usd, Quantity.US_DOLLAR)
            .with("since", rate.since)
            .with("gallons", gallons, Quantity.NUMBER, 7)
            .with("before", before, Quantity.NUMBER, 7));
  }

  /** 5041(d): the nearest tenth of a gallon, half a tenth up. */
  private static double tenths(double litres) {
    return Math.floor(10 * litres / Unit.GALLON.factor() + 0.5 + 1e-9) / 10;
  }

  private static double credit(List<Credit> steps, double before, double gallons) {
    double credit = 0;
    double from = 0;
    for (Credit step : steps) {
      double within =
          Math.min(step.to, before + gallons) - Math.max(from, Math.min(before, step.to));
      credit += Math.max(0, within) * step.usd;
      from = step.to;
    }
    return credit;
  }
}
