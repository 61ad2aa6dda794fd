package meadcell.barrel;

import static meadcell.catalogue.Numbers.text;

import meadcell.barrel.Barrel.Shape;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * The inside of a cask, in centimetres; volumes in cm³.
 *
 * <p>Along the axis, u runs from 0 at the bilge to 1 at a head. Either the radius or its square
 * falls by {@link #taper} times u or u², which gives four stave curves.
 */
final class Cask {
  /** Cubic centimetres in a litre. */
  static final double LITRE = 1000;

  /** Rounding that a change of units may leave on a size that is exactly full or empty. */
  private static final double ROUNDING = 1e-12;

  /** Enough for a relative error of 1e-12 at the slimmest head allowed. */
  private static final int POINTS = 12;

  private static final double[] POINT = new double[POINTS];
  private static final double[] WEIGHT = new double[POINTS];

  static {
    GaussIntegrator rule = new GaussIntegratorFactory().legendre(POINTS, 0, 1);
    for (int i = 0; i < POINTS; i++) {
      POINT[i] = rule.getPoint(i);
      WEIGHT[i] = rule.getWeight(i);
    }
  }

  private final double headRadius;
  private final double bilgeRadius;
  private final double length;

  /** Whether the radius squared, not the radius, falls from bilge to head. */
  private final boolean squared;

  /** Whether it falls with the square of the distance from the bilge, not with the distance. */
  private final boolean curved;

  private final double taper;

  /** Inside diameters and length; sizes that no cask has are refused. */
  Cask(double head, double bilge, double length, Shape shape) {
    if (head > bilge) {
      throw Refusal.inconsistent(
          "head is " + text(head) + " cm, wider than bilge, " + text(bilge) + " cm.");
    }
    if (head < bilge / 2) {
      throw Refusal.inconsistent(
          "head is "
              + text(head)
              + " cm; it must be at least half of bilge, "
              + text(bilge / 2)
              + " cm.");
    }
    if (shape == Shape.CYLINDER && head < bilge) {
      throw Refusal.inconsistent(
          "head is "
              + text(head)
              + " cm and bilge is "
              + text(bilge)
              + " cm; in a cylinder they are equal.");
    }
    this.headRadius = head / 2;
    this.bilgeRadius = bilge / 2;
    this.length = length;
    this.squared = shape == Shape.ELLIPSE || shape == Shape.TWO_PARABOLOIDS;
    this.curved = shape == Shape.ELLIPSE || shape == Shape.PARABOLA;
    double narrowing = bilgeRadius - headRadius;
    this.taper = squared ? narrowing * (bilgeRadius + headRadius) : narrowing;
  }

  double volume() {
    return 2 * between(0, 1);
  }

  /** Volume between two cross-sections; three Gauss points are exact, r² is at most quartic. */
  private double between(double from, double to) {
    double middle = (from + to) / 2;
    double offset = (to - from) / 2 * Math.sqrt(0.6);
    return Math.PI
        * (length / 2)
        * (to - from)
        * (5 * radiusSquared(middle - offset)
            + 8 * radiusSquared(middle)
            + 5 * radiusSquared(middle + offset))
        / 18;
  }

  /** Volume below a level surface in the cask standing on a head. */
  double standing(double depth) {
    if (depth > length * (1 + ROUNDING)) {
      throw Refusal.inconsistent(
          "depth is " + text(depth) + " cm, more than length, " + text(length) + " cm.");
    }
    double fromEnd = Math.min(depth, length - depth);
    double end = fromEnd <= 0 ? 0 : between(1 - 2 * fromEnd / length, 1);
    return depth <= length / 2 ? end : volume() - end;
  }

  /** Inside area of staves and heads, cm². */
  double area() {
    double slope = taper / (length / 2);
    double sum = 0;
    for (int i = 0; i < POINTS; i++) {
      double rr = radiusSquared(POINT[i]);
      double fall = curved ? 2 * slope * POINT[i] : slope;
      sum += WEIGHT[i] * Math.sqrt(squared ? rr + fall * fall / 4 : rr * (1 + fall * fall));
    }
    return 2 * Math.PI * (length * sum + headRadius * headRadius);
  }

  private double radiusSquared(double u) {
    double fall = taper * (curved ? u * u : u);
    if (squared) {
      return bilgeRadius * bilgeRadius - fall;
    }
    double radius = bilgeRadius - fall;
    return radius * radius;
  }

  /**
   * Volume below a level surface in the lying cask; by symmetry also the volume above a surface
   * that lies as far from the top.
   */
  double below(double depth, String argument) {
    double bilge = refuseAboveBilge(depth, argument);
    if (depth <= bilgeRadius) {
      return segment(depth).volume;
    }
    return depth < bilge ? volume() - segment(bilge - depth).volume : volume();
  }

  /** Free surface of the lying cask, cm²; nothing when it is full. */
  double surface(double dip) {
    double bilge = refuseAboveBilge(dip, "dip");
    return dip < bilge ? segment(Math.min(dip, bilge - dip)).surface : 0;
  }

  private double refuseAboveBilge(double depth, String argument) {
    double bilge = 2 * bilgeRadius;
    if (depth > bilge * (1 + ROUNDING)) {
      throw Refusal.inconsistent(
          argument + " is " + text(depth) + " cm, more than bilge, " + text(bilge) + " cm.");
    }
    return bilge;
  }

  /** Depth at the bilge below which the lying cask holds the volume. */
  double depth(double contents) {
    double full = volume();
    double missing = full - contents;
    if (missing < -ROUNDING * full) {
      throw Refusal.inconsistent(
          "contents is "
              + text(contents / LITRE)
              + " L; this barrel holds "
              + text(full / LITRE)
              + " L.");
    }
    if (missing <= 0) {
      return 2 * bilgeRadius;
    }
    return contents <= full / 2
        ? segmentDepth(contents, full)
        : 2 * bilgeRadius - segmentDepth(missing, full);
  }

  /**
   * Halley's method on the logarithms, where volume against depth is nearly straight: its slope
   * only goes from 2.5 or less for a drop to 1.3 at half full.
   */
  private double segmentDepth(double wanted, double full) {
    double depth = bilgeRadius * Math.pow(2 * wanted / full, 0.6);
    for (int i = 0; i < 20; i++) {
      Segment s = segment(depth);
      double error = Math.log(s.volume / wanted);
      double slope = depth * s.surface / s.volume;
      double bend = slope + depth * depth * s.widening / s.volume - slope * slope;
      double step = 2 * error * slope / (2 * slope * slope - error * bend);
      depth = Math.min(depth * Math.exp(-step), bilgeRadius);
      if (Math.abs(step) < 1e-4) {
        return depth;
      }
    }
    throw Refusal.notConverged("No depth was found for this content.");
  }

  /**
   * The smaller part that a level surface cuts off: volume, free surface, its growth with depth.
   */
  private record Segment(double volume, double surface, double widening) {}

  /**
   * Gauss–Legendre integration along the axis, for a depth of at most the bilge's radius.
   *
   * <p>A cross-section of radius r holds r² atan(q/k) − kq, with k the distance from axis to
   * surface and 2q the chord. It ends like q³ where the surface leaves the staves, so the variable
   * is one in which q is smooth: p, the share of r − k (or r² − k²) that is left, square-rooted.
   */
  private Segment segment(double depth) {
    double k = bilgeRadius - depth;
    double top = squared ? depth * (bilgeRadius + k) : depth;
    double ratio = taper / top;
    double root = Math.sqrt(ratio);
    double last = curved ? Math.asin(Math.min(1, root)) : Math.sqrt(Math.max(0, 1 - ratio));
    double scale =
        curved ? (root == 0 ? 1 : last / root) : 2 * (ratio < 1 ? 1 / (1 + last) : 1 / ratio);
    double volume = 0;
    double halfChord = 0;
    double growth = 0;
    for (int i = 0; i < POINTS; i++) {
      double p = curved ? Math.cos(last * POINT[i]) : last + (1 - last) * POINT[i];
      double weight = WEIGHT[i] * scale * p;
      double left = top * p * p;
      double q = Math.sqrt(squared ? left : left * (2 * k + left));
      volume += weight * circleSegment(q, k);
      halfChord += weight * q;
      growth += weight * k / q;
    }
    return new Segment(length * volume, 2 * length * halfChord, 2 * length * growth);
  }

  /** Area cut off a circle at distance k from its centre by a chord of length 2q. */
  private static double circleSegment(double q, double k) {
    if (q > 0.1 * k) {
      return (k * k + q * q) * Math.atan2(q, k) - k * q;
    }
    double t = q / k; // the two terms above nearly cancel: sum their series
    double x = t * t;
    double sum =
        1 / 3.0 - x * (1 / 15.0 - x * (1 / 35.0 - x * (1 / 63.0 - x * (1 / 99.0 - x / 143))));
    return 2 * k * k * t * x * sum;
  }
}
