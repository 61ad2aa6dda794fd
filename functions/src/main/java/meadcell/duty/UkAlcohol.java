package meadcell.duty;

import java.util.OptionalInt;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Statement;

/** Alcohol Duty by the Finance (No. 2) Act 2023, for other fermented products. */
final class UkAlcohol {
  /** Up to here a drink is not alcoholic, % vol. */
  private static final double FREE = 1.2;

  private static final double RELIEF_BELOW = 8.5;

  private enum Band {
    BELOW_3_5,
    BELOW_8_5,
    TO_22,
    ABOVE_22;

    static Band of(double abv) {
      if (abv < 3.5) {
        return BELOW_3_5;
      }
      if (abv < RELIEF_BELOW) {
        return BELOW_8_5;
      }
      return abv <= 22 ? TO_22 : ABOVE_22;
    }
  }

  private record Rate(
      int day, String since, OptionalInt last, String until, Band of, double gbp, double draught)
      implements DatedTable.Dated {}

  private static final DatedTable<Rate> RATES =
      DatedTable.read(
          "uk-alcohol.tsv",
          cells ->
              new Rate(
                  Integer.parseInt(cells[0]),
                  cells[1],
                  OptionalInt.of(Integer.parseInt(cells[2])),
                  cells[3],
                  Band.valueOf(cells[4]),
                  Double.parseDouble(cells[5]),
                  cells[6].isEmpty() ? Double.NaN : Double.parseDouble(cells[6])));

  private UkAlcohol() {}

  static Duty.UkDuty duty(
      double litres, double measured, double day, boolean draught, double relief) {
    double abv = tenths(measured);
    Band of = Band.of(abv);
    Rate row = RATES.on(day, rate -> rate.of == of);
    if ((draught || relief > 0) && abv >= RELIEF_BELOW) {
      throw new Refusal(DutyReason.NO_RELIEF)
          .with("abv", abv, Quantity.PERCENT_VOL)
          .with("below", RELIEF_BELOW, Quantity.PERCENT_VOL);
    }
    double rate = draught ? row.draught : row.gbp;
    if (relief > rate) {
      throw new Refusal(DutyReason.RELIEF_ABOVE_RATE)
          .with("relief", relief, Quantity.POUND_STERLING)
          .with("rate", rate, Quantity.POUND_STERLING);
    }
    double due = abv <= FREE ? 0 : rate - relief;
    double alcohol = litres * abv / 100;
    return new Duty.UkDuty(
        alcohol,
        due,
        alcohol * due,
        Statement.of(RestsOn.UK_RATE)
            .with("rate", due, Quantity.POUND_STERLING)
            .with("since", row.since)
            .with("alcohol", alcohol, Quantity.NUMBER)
            .with("abv", abv, Quantity.PERCENT_VOL));
  }

  /** Down to one decimal place: GOV.UK, Alcoholic products technical guide, section 11. */
  private static double tenths(double abv) {
    return Math.floor(10 * abv + 1e-9) / 10;
  }
}
