package meadcell.alcohol;

import java.util.OptionalDouble;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;
import meadcell.density.Balling;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/**
 * Alcohol from extract: g of ethanol from 1 g of extract gone.
 *
 * <p>Balling's 1/2.0665 = 0.4839 is 0.470 g from 1 g of sugar, once the 0.06 g of glycerol and
 * acids that come with 1 g of ethanol are counted as sugar gone, not as extract left ({@link
 * SugarFree}): 16.8 g/L for 1 % vol, which is the EU's agreed 16.83.
 */
final class Yield {

  /**
   * Standard uncertainty of a strength by balance, relative: 16.5 to 18 g/L of sugar for 1 % vol,
   * taken as rectangular, is 2.5 % about a middle that lies 2.5 % below Balling's. That band holds
   * what yeast strains differ in, 16.5 to 17.2 (Winetech Technical Yearbook 2020), a wine
   * laboratory's table, 180 g/L to 10.0 to 10.9 % vol (Predicting alcohol levels, table 1), and the
   * 18 that Regulation (EC) 729/2008 counts with for mead. Twice it, 7 %, holds dry wines by the
   * OIV's table, which the balance puts 5 to 7 % too high, and the yields of wines as measured over
   * nine years, 0.588 to 0.665 % vol for 1 °Brix by region (Ough, Amerine and Jones 1963 to 1985,
   * as quoted), within which it lies.
   */
  static final double RELATIVE_UNCERTAINTY = 0.035;

  static final double LEAST = 0.4;
  static final double MOST = 0.52;

  private static final int FEWEST_PAIRS = 3;
  private static final int MOST_EVALUATIONS = 200;
  private static final double STEP = 1e-5;

  private Yield() {}

  static double extractPerEthanol(OptionalDouble yield) {
    return yield.isPresent() ? 1 / yield.getAsDouble() : Balling.EXTRACT_PER_ETHANOL;
  }

  /** Least squares of measured less computed strength, in % vol. */
  static Uncertainty.Calibration fit(double[] originals, double[] presents, double[] measured) {
    int pairs = originals.length;
    if (pairs < FEWEST_PAIRS) {
      throw new Refusal(AlcoholReason.TOO_FEW_PAIRS)
          .with("count", pairs)
          .with("least", FEWEST_PAIRS);
    }
    for (int i = 0; i < pairs; i++) {
      Fermentation.of(originals[i], presents[i]);
    }
    double yield =
        new BrentOptimizer(1e-10, 1e-12)
            .optimize(
                new MaxEval(MOST_EVALUATIONS),
                GoalType.MINIMIZE,
                new SearchInterval(LEAST, MOST, 1 / Balling.EXTRACT_PER_ETHANOL),
                new UnivariateObjectiveFunction(y -> squares(originals, presents, measured, y)))
            .getPoint();
    if (yield < LEAST + STEP || yield > MOST - STEP) {
      throw new Refusal(AlcoholReason.NO_YIELD_FITS)
          .with("range", Range.between(LEAST, MOST), Quantity.NUMBER);
    }
    double slopes = 0;
    for (int i = 0; i < pairs; i++) {
      double slope =
          (abv(originals[i], presents[i], yield + STEP)
                  - abv(originals[i], presents[i], yield - STEP))
              / (2 * STEP);
      slopes += slope * slope;
    }
    double residual = Math.sqrt(squares(originals, presents, measured, yield) / (pairs - 1));
    return new Uncertainty.Calibration(yield, residual / Math.sqrt(slopes), residual);
  }

  private static double squares(
      double[] originals, double[] presents, double[] measured, double yield) {
    double sum = 0;
    for (int i = 0; i < originals.length; i++) {
      double residual = measured[i] - abv(originals[i], presents[i], yield);
      sum += residual * residual;
    }
    return sum;
  }

  private static double abv(double original, double present, double yield) {
    return 100 * Balling.fermented(original, present, 1 / yield).abvFraction();
  }
}
