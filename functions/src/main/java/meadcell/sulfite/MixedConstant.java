package meadcell.sulfite;

import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;

/**
 * First dissociation constant of sulfurous acid in wine: OIV-MA-AS323-04C, Table II, pKM at ionic
 * strength 0.038. The table is from memory; it follows Table I, the thermodynamic constants, as a
 * Debye–Hückel term should.
 */
final class MixedConstant {
  private static final double STEP = 5;
  private static final double LEAST_TEMPERATURE_C = 20;
  private static final double MOST_TEMPERATURE_C = 40;
  private static final double MOST_ABV = 15;

  /** Rows 0, 5, 10, 15 % vol; columns 20, 25, 30, 35, 40 °C. */
  static final double[][] PK = {
    {1.723, 1.925, 2.143, 2.257, 2.416},
    {1.819, 2.020, 2.220, 2.317, 2.446},
    {1.916, 2.116, 2.311, 2.405, 2.522},
    {2.014, 2.216, 2.417, 2.520, 2.640},
  };

  private MixedConstant() {}

  static double at(double abv, double temperatureC) {
    if (abv > MOST_ABV) {
      throw new Refusal(SulfiteReason.OUTSIDE_OIV_TABLE)
          .about("abv")
          .with("value", abv, Quantity.PERCENT_VOL)
          .with("range", Range.between(0, MOST_ABV), Quantity.PERCENT_VOL);
    }
    if (temperatureC < LEAST_TEMPERATURE_C || temperatureC > MOST_TEMPERATURE_C) {
      throw new Refusal(SulfiteReason.OUTSIDE_OIV_TABLE)
          .about("temperature")
          .with("value", temperatureC, Quantity.TEMPERATURE)
          .with(
              "range",
              Range.between(LEAST_TEMPERATURE_C, MOST_TEMPERATURE_C),
              Quantity.TEMPERATURE);
    }
    double row = abv / STEP;
    double column = (temperatureC - LEAST_TEMPERATURE_C) / STEP;
    int i = Math.min((int) row, PK.length - 2);
    int j = Math.min((int) column, PK[0].length - 2);
    return between(
        between(PK[i][j], PK[i][j + 1], column - j),
        between(PK[i + 1][j], PK[i + 1][j + 1], column - j),
        row - i);
  }

  private static double between(double from, double to, double share) {
    return from + share * (to - from);
  }
}
