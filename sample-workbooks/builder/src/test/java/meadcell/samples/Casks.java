package meadcell.samples;

/** A cask whose staves are an ellipse, by slices. */
final class Casks {
  private static final int SLICES = 4000;

  /** Inside, cm. */
  record Size(double head, double bilge, double length) {
    double full() {
      return contents(bilge);
    }

    /** Litres below a level. */
    double contents(double depthCm) {
      double sum = 0;
      for (int i = 0; i < SLICES; i++) {
        double r = radius((i + 0.5) / SLICES * 2 - 1);
        double h = Math.max(-r, Math.min(r, depthCm - bilge / 2));
        sum += r * r * (Math.asin(h / r) + Math.PI / 2) + h * Math.sqrt(r * r - h * h);
      }
      return sum * length / SLICES / 1000;
    }

    /** Wood of staves and both heads, cm² for each litre of the full cask. */
    double woodPerLitre() {
      double area = Math.PI * head * head / 2;
      double slice = length / SLICES;
      for (int i = 0; i < SLICES; i++) {
        double left = radius(i * 2.0 / SLICES - 1);
        double right = radius((i + 1) * 2.0 / SLICES - 1);
        area += Math.PI * (left + right) * Math.hypot(slice, right - left);
      }
      return area / full();
    }

    private double radius(double x) {
      return Math.sqrt(bilge * bilge - (bilge * bilge - head * head) * x * x) / 2;
    }
  }

  private Casks() {}
}
