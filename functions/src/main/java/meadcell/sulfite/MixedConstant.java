package meadcell.sulfite;

import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;

/**
 * First dissociation constant of sulfurous acid in wine: OIV-MA-AS323-04C, Table II, pKM at ionic
 * strength 0.038, 0 to 15 % vol and 20 to 40 °C. The table is from memory; each of its entries is
 * within 0.002 of Table I, the thermodynamic constants, less the Debye–Hückel term.
 *
 * <p>Beyond the table is extrapolated. From 15 to 20 % vol its last step goes on, 0.1 for 5 % vol.
 * Below 20 °C pK falls with the enthalpy of dissociation in water, −17.8 kJ/mol (Goldberg and
 * Parker 1985, J. Res. NBS 90:341, from memory; heats of formation give −17.4): 0.010 for 1 °C. The
 * table's own step from 20 to 25 °C, 0.040 for 1 °C, is four times that and no thermodynamics of
 * water explains it; which of the two holds for cold mead nobody has published, so the true pK may
 * be lower by up to 0.03 for each °C below 20.
 */
final class MixedConstant {
  private static final double STEP = 5;
  private static final double TABLE_FROM_C = 20;
  private static final double LEAST_TEMPERATURE_C = 0;
  private static final double MOST_TEMPERATURE_C = 40;
  private static final double MOST_ABV = 20;

  private static final double ENTHALPY = -17_800; // J/mol
  private static final double GAS_CONSTANT = 8.314463;
  private static final double ZERO_CELSIUS = 273.15;

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
    double column = (Math.max(temperatureC, TABLE_FROM_C) - TABLE_FROM_C) / STEP;
    int i = Math.min((int) row, PK.length - 2);
    int j = Math.min((int) column, PK[0].length - 2);
    double inTable =
        between(
            between(PK[i][j], PK[i][j + 1], column - j),
            between(PK[i + 1][j], PK[i + 1][j + 1], column - j),
            row - i);
    return inTable - below(temperatureC);
  }

  /** What pK loses below the table's first column: van 't Hoff. */
  private static double below(double temperatureC) {
    if (temperatureC >= TABLE_FROM_C) {
      return 0;
    }
    double colder = 1 / (ZERO_CELSIUS + temperatureC) - 1 / (ZERO_CELSIUS + TABLE_FROM_C);
    return -ENTHALPY / (GAS_CONSTANT * Math.log(10)) * colder;
  }

  private static double between(double from, double to, double share) {
    return from + share * (to - from);
  }
}
