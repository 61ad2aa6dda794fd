package meadcell.barrel;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * A cask by its inside sizes, in centimetres; volumes in cm³.
 *
 * <p>Along the axis, u runs from 0 at the bilge to 1 at a head. Either the radius or its square
 * falls by {@link #taper} times u or u², which gives four stave curves.
 *
 * @param headCm diameter of a head, 5 to 400 cm, at least half the bilge and not wider than it
 * @param bilgeCm diameter at the bilge, 5 to 400 cm
 * @param lengthCm length between the heads, 5 to 600 cm
 * @param shape curve of the staves
 */
public record Cask(
    @Cask.Diameter(name = "head", help = "Inside diameter of a head") double headCm,
    @Cask.Diameter(name = "bilge", help = "Inside diameter at the bilge") double bilgeCm,
    @Cask.Length(help = "Inside length between the heads") double lengthCm,
    @Cask.Curve Shape shape) {

  /** The curve of the staves, after the four varieties of the gauging books, and a cylinder. */
  public enum Shape {
    /** The middle frustum of a spheroid. */
    ELLIPSE,
    /** The middle frustum of a parabolic spindle. */
    PARABOLA,
    /** Two frustums of a paraboloid, base to base. */
    TWO_PARABOLOIDS,
    /** Two frustums of a cone, base to base. */
    CONE,
    /** As wide at the heads as at the bilge. */
    CYLINDER
  }

  @Arg(name = "shape", help = "Curve of the staves", byDefaultWord = "ellipse")
  @Retention(RetentionPolicy.RUNTIME)
  @interface Curve {}

  @Arg(
      name = "diameter",
      help = "Diameter",
      is = Quantity.LENGTH,
      from = Cask.NARROWEST,
      to = Cask.WIDEST)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Diameter {
    String name();

    String help();
  }

  @Arg(
      name = "length",
      help = "Length",
      is = Quantity.LENGTH,
      from = Cask.NARROWEST,
      to = Cask.LONGEST)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Length {
    String help();
  }

  static final double NARROWEST = 5;
  static final double WIDEST = 400;
  static final double LONGEST = 600;

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

  /**
   * Refuses sizes that no cask has.
   *
   * @param headCm diameter of a head, cm
   * @param bilgeCm diameter at the bilge, cm
   * @param lengthCm length between the heads, cm
   * @param shape curve of the staves
   */
  public Cask {
    if (headCm > bilgeCm) {
      throw sizes(BarrelReason.HEAD_WIDER, headCm).with("bilge", bilgeCm, Quantity.LENGTH);
    }
    if (headCm < bilgeCm / 2) {
      throw sizes(BarrelReason.HEAD_TOO_SMALL, headCm).with("half", bilgeCm / 2, Quantity.LENGTH);
    }
    if (shape == Shape.CYLINDER && headCm < bilgeCm) {
      throw sizes(BarrelReason.NOT_A_CYLINDER, headCm).with("bilge", bilgeCm, Quantity.LENGTH);
    }
  }

  private static Refusal sizes(BarrelReason reason, double headCm) {
    return new Refusal(reason).with("head", headCm, Quantity.LENGTH);
  }

  private double headRadius() {
    return headCm / 2;
  }

  private double bilgeRadius() {
    return bilgeCm / 2;
  }

  /** Whether the radius squared, not the radius, falls from bilge to head. */
  private boolean isSquared() {
    return shape == Shape.ELLIPSE || shape == Shape.TWO_PARABOLOIDS;
  }

  /** Whether it falls with the square of the distance from the bilge, not with the distance. */
  private boolean isCurved() {
    return shape == Shape.ELLIPSE || shape == Shape.PARABOLA;
  }

  private double taper() {
    double narrowing = bilgeRadius() - headRadius();
    return isSquared() ? narrowing * (bilgeRadius() + headRadius()) : narrowing;
  }

  double volume() {
    return 2 * between(0, 1);
  }

  /** Volume between two cross-sections; three Gauss points are exact, r² is at most quartic. */
  private double between(double from, double to) {
    double middle = (from + to) / 2;
    double offset = (to - from) / 2 * Math.sqrt(0.6);
    return Math.PI
        * (lengthCm / 2)
        * (to - from)
        * (5 * radiusSquared(middle - offset)
            + 8 * radiusSquared(middle)
            + 5 * radiusSquared(middle + offset))
        / 18;
  }

  /** Volume below a level surface in the cask standing on a head. */
  double standing(double depth) {
    if (depth > lengthCm * (1 + ROUNDING)) {
      throw new Refusal(BarrelReason.DEPTH_ABOVE_LENGTH)
          .with("depth", depth, Quantity.LENGTH)
          .with("length", lengthCm, Quantity.LENGTH);
    }
    double fromEnd = Math.min(depth, lengthCm - depth);
    double end = fromEnd <= 0 ? 0 : between(1 - 2 * fromEnd / lengthCm, 1);
    return depth <= lengthCm / 2 ? end : volume() - end;
  }

  /** Inside area of staves and heads, cm². */
  double area() {
    double slope = taper() / (lengthCm / 2);
    double sum = 0;
    for (int i = 0; i < POINTS; i++) {
      double rr = radiusSquared(POINT[i]);
      double fall = isCurved() ? 2 * slope * POINT[i] : slope;
      sum += WEIGHT[i] * Math.sqrt(isSquared() ? rr + fall * fall / 4 : rr * (1 + fall * fall));
    }
    return 2 * Math.PI * (lengthCm * sum + headRadius() * headRadius());
  }

  private double radiusSquared(double u) {
    double fall = taper() * (isCurved() ? u * u : u);
    if (isSquared()) {
      return bilgeRadius() * bilgeRadius() - fall;
    }
    double radius = bilgeRadius() - fall;
    return radius * radius;
  }

  /**
   * Volume below a level surface in the lying cask; by symmetry also the volume above a surface
   * that lies as far from the top.
   */
  double below(double depth, BarrelReason tooDeep) {
    double bilge = refuseAboveBilge(depth, tooDeep);
    if (depth <= bilgeRadius()) {
      return segment(depth).volume;
    }
    return depth < bilge ? volume() - segment(bilge - depth).volume : volume();
  }

  /** Free surface of the lying cask, cm²; nothing when it is full. */
  double surface(double dip) {
    double bilge = refuseAboveBilge(dip, BarrelReason.DIP_ABOVE_BILGE);
    return dip < bilge ? segment(Math.min(dip, bilge - dip)).surface : 0;
  }

  private double refuseAboveBilge(double depth, BarrelReason tooDeep) {
    double bilge = 2 * bilgeRadius();
    if (depth > bilge * (1 + ROUNDING)) {
      throw new Refusal(tooDeep)
          .with("depth", depth, Quantity.LENGTH)
          .with("bilge", bilge, Quantity.LENGTH);
    }
    return bilge;
  }

  /** Depth at the bilge below which the lying cask holds the volume. */
  double depth(double contents) {
    double full = volume();
    double missing = full - contents;
    if (missing < -ROUNDING * full) {
      throw new Refusal(BarrelReason.CONTENTS_ABOVE_FULL)
          .with("contents", contents / LITRE, Quantity.VOLUME)
          .with("full", full / LITRE, Quantity.VOLUME);
    }
    if (missing <= 0) {
      return 2 * bilgeRadius();
    }
    return contents <= full / 2
        ? segmentDepth(contents, full)
        : 2 * bilgeRadius() - segmentDepth(missing, full);
  }

  /**
   * Halley's method on the logarithms, where volume against depth is nearly straight: its slope
   * only goes from 2.5 or less for a drop to 1.3 at half full.
   */
  private double segmentDepth(double wanted, double full) {
    double depth = bilgeRadius() * Math.pow(2 * wanted / full, 0.6);
    for (int i = 0; i < 20; i++) {
      Segment s = segment(depth);
      double error = Math.log(s.volume / wanted);
      double slope = depth * s.surface / s.volume;
      double bend = slope + depth * depth * s.widening / s.volume - slope * slope;
      double step = 2 * error * slope / (2 * slope * slope - error * bend);
      depth = Math.min(depth * Math.exp(-step), bilgeRadius());
      if (Math.abs(step) < 1e-4) {
        return depth;
      }
    }
    throw new Refusal(BarrelReason.NO_DEPTH);
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
    double k = bilgeRadius() - depth;
    double top = isSquared() ? depth * (bilgeRadius() + k) : depth;
    double ratio = taper() / top;
    double root = Math.sqrt(ratio);
    double last = isCurved() ? Math.asin(Math.min(1, root)) : Math.sqrt(Math.max(0, 1 - ratio));
    double scale =
        isCurved() ? (root == 0 ? 1 : last / root) : 2 * (ratio < 1 ? 1 / (1 + last) : 1 / ratio);
    double volume = 0;
    double halfChord = 0;
    double growth = 0;
    for (int i = 0; i < POINTS; i++) {
      double p = isCurved() ? Math.cos(last * POINT[i]) : last + (1 - last) * POINT[i];
      double weight = WEIGHT[i] * scale * p;
      double left = top * p * p;
      double q = Math.sqrt(isSquared() ? left : left * (2 * k + left));
      volume += weight * circleSegment(q, k);
      halfChord += weight * q;
      growth += weight * k / q;
    }
    return new Segment(lengthCm * volume, 2 * lengthCm * halfChord, 2 * lengthCm * growth);
  }

  /** Area cut off a circle at distance k from its centre by a chord of lengthCm 2q. */
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
