package meadcell.gravity;

/**
 * What a refractometer scale set at 20 °C needs at other temperatures.
 *
 * <p>The older international table for sucrose, 10 to 30 °C, as printed in Table A.1 of a GOST on
 * refractometric soluble solids; the rows from 23 °C on, and the last entries of 22 °C, are from
 * memory; from 5 to 60 °Bx they are within 0.04 of Lorentz and Lorenz, scaled to the row of 10 °C.
 */
final class Refractometer {
  private static final double COLDEST = 10;

  private static final double[] BRIX = {0, 5, 10, 15, 20, 25, 30, 40, 50, 60, 70};

  /** °Bx to add, a row for each °C. */
  private static final double[][] CORRECTION = {
    {-.50, -.54, -.58, -.61, -.64, -.66, -.68, -.72, -.74, -.76, -.79},
    {-.46, -.49, -.53, -.55, -.58, -.60, -.62, -.65, -.67, -.69, -.71},
    {-.42, -.45, -.48, -.50, -.52, -.54, -.56, -.57, -.60, -.61, -.63},
    {-.37, -.40, -.42, -.44, -.46, -.48, -.49, -.51, -.53, -.54, -.55},
    {-.33, -.35, -.37, -.39, -.40, -.41, -.42, -.44, -.45, -.46, -.47},
    {-.27, -.29, -.31, -.33, -.34, -.34, -.35, -.37, -.38, -.39, -.40},
    {-.22, -.24, -.25, -.26, -.27, -.28, -.28, -.30, -.30, -.31, -.32},
    {-.17, -.18, -.19, -.20, -.21, -.21, -.21, -.22, -.23, -.23, -.24},
    {-.12, -.13, -.13, -.14, -.14, -.14, -.14, -.15, -.15, -.16, -.16},
    {-.06, -.06, -.06, -.07, -.07, -.07, -.07, -.08, -.08, -.08, -.08},
    {0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0},
    {.06, .07, .07, .07, .07, .08, .08, .08, .08, .08, .08},
    {.13, .13, .14, .14, .15, .15, .15, .15, .16, .16, .16},
    {.19, .20, .21, .22, .22, .23, .23, .23, .24, .24, .24},
    {.26, .27, .28, .29, .30, .30, .31, .31, .31, .32, .32},
    {.33, .35, .36, .37, .38, .38, .39, .40, .40, .40, .40},
    {.40, .42, .43, .44, .45, .46, .47, .48, .48, .48, .48},
    {.48, .50, .52, .53, .54, .55, .55, .56, .56, .56, .56},
    {.56, .57, .60, .61, .62, .63, .63, .64, .64, .64, .64},
    {.64, .66, .68, .69, .71, .72, .72, .73, .73, .73, .73},
    {.72, .74, .77, .78, .79, .80, .80, .81, .81, .81, .81},
  };

  private Refractometer() {}

  /** {@return °Bx to add, between the entries of the table bilinearly} */
  static double correction(double brix, double temperatureC) {
    int row = (int) Math.min(temperatureC - COLDEST, CORRECTION.length - 2);
    int column = 0;
    while (brix > BRIX[column + 1]) {
      column++;
    }
    double down = temperatureC - COLDEST - row;
    double across = (brix - BRIX[column]) / (BRIX[column + 1] - BRIX[column]);
    return (1 - down) * between(CORRECTION[row], column, across)
        + down * between(CORRECTION[row + 1], column, across);
  }

  private static double between(double[] row, int column, double share) {
    return (1 - share) * row[column] + share * row[column + 1];
  }
}
