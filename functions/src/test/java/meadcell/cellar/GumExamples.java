package meadcell.cellar;

import meadcell.catalogue.Arg;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;

/** Measurement models of JCGM 100:2008, annex H, and JCGM 101:2008, clause 9, as functions. */
@Family(name = "EXAMPLE", about = "Models of published examples.")
public final class GumExamples {
  static final Catalogue CATALOGUE = Catalogue.of(GumExamples.class);

  /** H.3: temperatures in °C at which the thermometer's corrections were observed. */
  private static final double[] T = {
    21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
  };

  private GumExamples() {}

  /** H.1: length in nm of an end gauge by comparison with a standard. */
  @CellarFunction(
      summary = ".",
      formula = ".",
      source = ".",
      example = "EXAMPLE.GAUGE(1;1;1;1;1;1)")
  public static double gauge(
      @Arg(name = "ls", help = ".") double ls,
      @Arg(name = "d", help = ".") double d,
      @Arg(name = "alpha", help = ".") double alpha,
      @Arg(name = "theta", help = ".") double theta,
      @Arg(name = "dAlpha", help = ".") double dAlpha,
      @Arg(name = "dTheta", help = ".") double dTheta) {
    return ls + d - ls * (dAlpha * theta + alpha * dTheta);
  }

  // H.2: means of five simultaneous readings and the correlations that they have
  private static final double[][] READ = {
    {5.007, 4.994, 5.005, 4.990, 4.999},
    {19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3},
    {1.0456, 1.0438, 1.0468, 1.0428, 1.0433}
  };
  private static final double[] MEANS = new double[3];
  private static final double[][] ROOT = covarianceRoot();

  /** A root of the covariance of the means: correlated quantities of independent ones. */
  private static double[][] covarianceRoot() {
    double[][] covariance = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (double value : READ[i]) {
        MEANS[i] += value / 5;
      }
    }
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        for (int k = 0; k < 5; k++) {
          covariance[i][j] += (READ[i][k] - MEANS[i]) * (READ[j][k] - MEANS[j]) / 20;
        }
      }
    }
    double[][] root = new double[3][3];
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j <= i; j++) {
        double rest = covariance[i][j];
        for (int k = 0; k < j; k++) {
          rest -= root[i][k] * root[j][k];
        }
        root[i][j] = i == j ? Math.sqrt(rest) : rest / root[j][j];
      }
    }
    return root;
  }

  private static double[] correlated(double... z) {
    double[] x = MEANS.clone();
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        x[i] += ROOT[i][j] * z[j];
      }
    }
    return x;
  }

  /** H.2: resistance in Ω, of three independent standard normal quantities. */
  @CellarFunction(summary = ".", formula = ".", source = ".", example = "EXAMPLE.RESISTANCE(0;0;0)")
  public static double resistance(
      @Arg(name = "a", help = ".") double a,
      @Arg(name = "b", help = ".") double b,
      @Arg(name = "c", help = ".") double c) {
    double[] x = correlated(a, b, c);
    return x[0] * Math.cos(x[2]) / x[1];
  }

  /** H.2: reactance in Ω. */
  @CellarFunction(summary = ".", formula = ".", source = ".", example = "EXAMPLE.REACTANCE(0;0;0)")
  public static double reactance(
      @Arg(name = "a", help = ".") double a,
      @Arg(name = "b", help = ".") double b,
      @Arg(name = "c", help = ".") double c) {
    double[] x = correlated(a, b, c);
    return x[0] * Math.sin(x[2]) / x[1];
  }

  /** H.2: impedance in Ω. */
  @CellarFunction(summary = ".", formula = ".", source = ".", example = "EXAMPLE.IMPEDANCE(0;0;0)")
  public static double impedance(
      @Arg(name = "a", help = ".") double a,
      @Arg(name = "b", help = ".") double b,
      @Arg(name = "c", help = ".") double c) {
    double[] x = correlated(a, b, c);
    return x[0] / x[1];
  }

  /** H.3: correction in °C that the fitted line has at a temperature, of the eleven observed. */
  @CellarFunction(
      summary = ".",
      formula = ".",
      source = ".",
      example = "EXAMPLE.LINE(1;1;1;1;1;1;1;1;1;1;1;1)")
  public static double line(
      @Arg(name = "at", help = ".") double at,
      @Arg(name = "ba", help = ".") double b1,
      @Arg(name = "bb", help = ".") double b2,
      @Arg(name = "bc", help = ".") double b3,
      @Arg(name = "bd", help = ".") double b4,
      @Arg(name = "be", help = ".") double b5,
      @Arg(name = "bf", help = ".") double b6,
      @Arg(name = "bg", help = ".") double b7,
      @Arg(name = "bh", help = ".") double b8,
      @Arg(name = "bi", help = ".") double b9,
      @Arg(name = "bj", help = ".") double b10,
      @Arg(name = "bk", help = ".") double b11) {
    double[] b = {b1, b2, b3, b4, b5, b6, b7, b8, b9, b10, b11};
    double meanT = 0;
    double meanB = 0;
    for (int i = 0; i < T.length; i++) {
      meanT += T[i] / T.length;
      meanB += b[i] / T.length;
    }
    double above = 0;
    double below = 0;
    for (int i = 0; i < T.length; i++) {
      above += (T[i] - meanT) * (b[i] - meanB);
      below += (T[i] - meanT) * (T[i] - meanT);
    }
    return meanB + above / below * (at - meanT);
  }

  /** JCGM 101, 9.3: difference in mg of a mass from its nominal value of 100 g. */
  @CellarFunction(summary = ".", formula = ".", source = ".", example = "EXAMPLE.MASS(1;1;1;1;1)")
  public static double mass(
      @Arg(name = "reference", help = ".") double reference,
      @Arg(name = "added", help = ".") double added,
      @Arg(name = "air", help = ".") double air,
      @Arg(name = "weight", help = ".") double weight,
      @Arg(name = "standard", help = ".") double standard) {
    return (reference + added) * (1 + (air - 1.2) * (1 / weight - 1 / standard)) - 1e5;
  }

  /** JCGM 101, 9.4: loss of power in a microwave meter, times a million. */
  @CellarFunction(summary = ".", formula = ".", source = ".", example = "EXAMPLE.LOSS(0;0)")
  public static double loss(
      @Arg(name = "a", help = ".") double a, @Arg(name = "b", help = ".") double b) {
    return 1e6 * (a * a + b * b);
  }

  /** A root, which takes nothing below 0. */
  @CellarFunction(summary = ".", formula = ".", source = ".", example = "EXAMPLE.ROOT(1)")
  public static double root(@Arg(name = "x", help = ".", from = 0) double x) {
    return Math.sqrt(x);
  }

  /** Answers at 1 alone. */
  @CellarFunction(summary = ".", formula = ".", source = ".", example = "EXAMPLE.POINT(1)")
  public static double point(@Arg(name = "x", help = ".", from = 1, to = 1) double x) {
    return x;
  }
}
