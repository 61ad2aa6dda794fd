package meadcell.density;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** Polynomials as arrays of coefficients, constant term first. */
final class Polynomial {

  private static final int MOST_NEWTON_STEPS = 12;
  private static final int MOST_EVALUATIONS = 200;

  /** After a Newton step this small the next one would be lost in rounding. */
  private static final double LAST_STEP = 1e-9;

  private Polynomial() {}

  static double value(double[] coefficients, double x) {
    double value = 0;
    for (int k = coefficients.length - 1; k >= 0; k--) {
      value = value * x + coefficients[k];
    }
    return value;
  }

  /**
   * {@return the polynomial whose coefficients are the values of {@code rows}, themselves
   * polynomials}
   */
  static double[] collapse(double[][] rows, double x) {
    double[] coefficients = new double[rows.length];
    for (int k = 0; k < rows.length; k++) {
      coefficients[k] = value(rows[k], x);
    }
    return coefficients;
  }

  static double[] timesX(double[] coefficients) {
    double[] product = new double[coefficients.length + 1];
    System.arraycopy(coefficients, 0, product, 1, coefficients.length);
    return product;
  }

  /**
   * The x between {@code low} and {@code high} where a monotone polynomial has this value. Newton's
   * steps from 0 reach it nearly always; Brent's method settles the rest.
   *
   * @throws org.apache.commons.math3.exception.NoBracketingException if there is no such x
   */
  static double inverse(double[] coefficients, double wanted, double low, double high) {
    double x = 0;
    for (int i = 0; i < MOST_NEWTON_STEPS; i++) {
      double value = 0;
      double slope = 0;
      for (int k = coefficients.length - 1; k >= 0; k--) {
        slope = slope * x + value;
        value = value * x + coefficients[k];
      }
      double step = (wanted - value) / slope;
      x += step;
      if (Math.abs(step) < LAST_STEP) {
        if (x >= low && x <= high) {
          return x;
        }
        break;
      }
    }
    return new BrentSolver(1e-15, 1e-15)
        .solve(MOST_EVALUATIONS, z -> value(coefficients, z) - wanted, low, high);
  }
}
