package meadcell.blend;

import java.util.HashMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import meadcell.blend.Analyses.Analysis;
import meadcell.catalogue.Place;
import meadcell.catalogue.Refusal;
import meadcell.transfers.TransferRow;

/**
 * How one value hangs on what every vessel holds, followed from the end of a log to its beginning,
 * and on the analyses and rows that were passed (JCGM 100:2008, 5.1.2).
 */
final class Slopes {
  private static final double STEP = 1e-6;

  final double[][] perLitre;
  final double[] volumeL;
  final double[] evaporatedL;
  private final Map<Analysis, Double> byAnalysis = new HashMap<>();
  private double rowVariance;

  Slopes(int vessels) {
    perLitre = new double[vessels][];
    volumeL = new double[vessels];
    evaporatedL = new double[vessels];
  }

  void add(int vessel, double[] slope) {
    if (perLitre[vessel] == null) {
      perLitre[vessel] = slope;
    } else {
      for (int k = 0; k < slope.length; k++) {
        perLitre[vessel][k] += slope[k];
      }
    }
  }

  void row(TransferRow row, double slope) {
    rowVariance += slope * slope * row.varianceL2();
  }

  void analysed(Analysis analysis, Amounts amounts, double[] slope) {
    if (slope != null) {
      double ofValue =
          gradient(x -> dot(slope, amounts.of(x[0])), new double[] {within(analysis.value())})[0];
      byAnalysis.merge(analysis, ofValue, Double::sum);
    }
  }

  /** Differences need some room to both sides; what has a limit there is smooth. */
  private static double within(double value) {
    return value < 0.01 ? 0.01 : value > 99.9 && value <= 100 ? 99.9 : value;
  }

  /** {@return by how much the value rises with that of each analysis} */
  Map<Analysis, Double> byAnalysis() {
    return byAnalysis;
  }

  double variance() {
    double variance = rowVariance;
    for (Map.Entry<Analysis, Double> entry : byAnalysis.entrySet()) {
      Analysis analysis = entry.getKey();
      if (entry.getValue() != 0) {
        if (Double.isNaN(analysis.uncertainty())) {
          throw new Refusal(BlendReason.ZERO_WITHOUT_UNCERTAINTY)
              .about("analyses", new Place(analysis.row(), 4, "value"));
        }
        double part = entry.getValue() * analysis.uncertainty();
        variance += part * part;
      }
    }
    return variance;
  }

  static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int k = 0; k < a.length; k++) {
      sum += a[k] * b[k];
    }
    return sum;
  }

  /** By differences to both sides. */
  static double[] gradient(ToDoubleFunction<double[]> function, double[] at) {
    double[] gradient = new double[at.length];
    for (int k = 0; k < at.length; k++) {
      double step = STEP * Math.max(Math.abs(at[k]), STEP);
      double[] up = at.clone();
      double[] down = at.clone();
      up[k] += step;
      down[k] -= step;
      gradient[k] = (function.applyAsDouble(up) - function.applyAsDouble(down)) / (2 * step);
    }
    return gradient;
  }
}
