package meadcell.barrel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import meadcell.barrel.Cask.Shape;
import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;

/** The shape of casks against plain geometry, integrated another way. */
class CaskTest {
  private static final IterativeLegendreGaussIntegrator ADAPTIVE =
      new IterativeLegendreGaussIntegrator(10, 1e-11, 1e-12);

  /** A cask and how deep the surface lies: the head and the depth are shares of the bilge. */
  record Lying(
      @Between(min = 0.5, max = 1) double slimness,
      @Between(min = 5, max = 400) double bilge,
      @Between(min = 5, max = 600) double length,
      Shape shape,
      @Between(min = -4, max = -0.302) double logShare) {
    double head() {
      return shape == Shape.CYLINDER ? bilge : slimness * bilge;
    }

    double share() {
      return Math.pow(10, logShare);
    }

    double depth() {
      return share() * bilge;
    }

    Cask cask() {
      return new Cask(head(), bilge, length, shape);
    }

    double radius(double u) {
      double narrow = head() / 2;
      double wide = bilge / 2;
      return switch (shape) {
        case ELLIPSE -> Math.sqrt(wide * wide - (wide * wide - narrow * narrow) * u * u);
        case PARABOLA -> wide - (wide - narrow) * u * u;
        case TWO_PARABOLOIDS -> Math.sqrt(wide * wide - (wide * wide - narrow * narrow) * u);
        case CONE -> wide - (wide - narrow) * u;
        case CYLINDER -> wide;
      };
    }
  }

  @Property(tries = 10_000)
  void contentsIsTheIntegralOfTheSegments(Lying c) {
    double small = integral(c);
    assertEquals(small, c.cask().below(c.depth(), BarrelReason.DIP_ABOVE_BILGE), 1e-9 * small);
    double large = c.cask().volume() - small;
    assertEquals(
        large, c.cask().below(c.bilge - c.depth(), BarrelReason.DIP_ABOVE_BILGE), 1e-9 * large);
  }

  @Property
  void depthInvertsContents(Lying c) {
    Cask cask = c.cask();
    assertEquals(
        c.depth(),
        cask.depth(cask.below(c.depth(), BarrelReason.DIP_ABOVE_BILGE)),
        1e-11 * c.depth());
    double deep = c.bilge - c.depth();
    assertEquals(deep, cask.depth(cask.below(deep, BarrelReason.DIP_ABOVE_BILGE)), 1e-11 * deep);
  }

  @Property
  void contentsAndHeadspaceFillTheBarrel(Lying c) {
    double full = Gauging.volume(c.cask());
    double contents = Gauging.contents(c.cask(), c.depth());
    double missing = Gauging.headspace(c.cask(), c.bilge - c.depth() + 2.5, 2.5);
    assertEquals(full, contents + missing, 1e-9 * full);
  }

  @Property
  void contentsRisesWithTheDip(Lying c) {
    Cask cask = c.cask();
    assertTrue(
        cask.below(c.depth(), BarrelReason.DIP_ABOVE_BILGE)
            < cask.below(1.0001 * c.depth(), BarrelReason.DIP_ABOVE_BILGE));
    assertTrue(
        cask.below(c.depth(), BarrelReason.DIP_ABOVE_BILGE)
            < cask.below(c.bilge - c.depth() / 1.0001, BarrelReason.DIP_ABOVE_BILGE));
  }

  @Property
  void halfIsHalf(Lying c) {
    double full = c.cask().volume();
    assertEquals(full / 2, c.cask().below(c.bilge / 2, BarrelReason.DIP_ABOVE_BILGE), 1e-12 * full);
    assertEquals(full, c.cask().below(c.bilge, BarrelReason.DIP_ABOVE_BILGE), 0);
    assertEquals(c.bilge, c.cask().depth(full), 0);
  }

  @Property
  void straightStavesMakeEveryShapeACylinder(Lying c) {
    double r = c.bilge / 2;
    double h = c.depth();
    double expected = c.length * segment(r, r - h);
    for (Shape shape : Shape.values()) {
      Cask straight = new Cask(c.bilge, c.bilge, c.length, shape);
      assertEquals(expected, straight.below(h, BarrelReason.DIP_ABOVE_BILGE), 1e-10 * expected);
      assertEquals(Math.PI * r * r * c.length, straight.volume(), 1e-12 * straight.volume());
    }
  }

  @Property
  void surfaceIsWhatTheContentsGainPerDepth(Lying c) {
    Cask cask = c.cask();
    double depth = c.depth();
    double step = 1e-4 * depth;
    double gain =
        cask.below(depth + step, BarrelReason.DIP_ABOVE_BILGE)
            - cask.below(depth - step, BarrelReason.DIP_ABOVE_BILGE);
    assertEquals(gain / (2 * step), cask.surface(depth), 1e-6 * cask.surface(depth));
    assertEquals(cask.surface(depth), cask.surface(c.bilge - depth), 1e-9 * cask.surface(depth));
    assertEquals(0, cask.surface(c.bilge), 0);
  }

  @Property
  void standingContentsIsTheIntegralOfTheSections(Lying c) {
    double depth = c.share() * c.length;
    double sections =
        c.length
            / 2
            * ADAPTIVE.integrate(
                100_000, u -> Math.PI * c.radius(u) * c.radius(u), 1 - 2 * depth / c.length, 1);
    assertEquals(sections, c.cask().standing(depth), 1e-9 * sections);
    double full = c.cask().volume();
    assertEquals(full, c.cask().standing(depth) + c.cask().standing(c.length - depth), 1e-9 * full);
    assertEquals(full, c.cask().standing(c.length), 0);
  }

  @Property
  void areaIsTheSurfaceOfRevolution(Lying c) {
    double length = Math.max(c.length, c.bilge / 2);
    Lying usual = new Lying(c.slimness, c.bilge, length, c.shape, c.logShare);
    double rings =
        ADAPTIVE.integrate(
            100_000,
            u -> {
              double step = 1e-5;
              double slope = (usual.radius(u + step) - usual.radius(u - step)) / (step * length);
              return 2 * Math.PI * usual.radius(u) * Math.hypot(1, slope);
            },
            0,
            1);
    double expected = length * rings + Math.PI * c.head() * c.head() / 2;
    assertEquals(expected, usual.cask().area(), 1e-8 * expected);
  }

  @Test
  void varietiesHoldLessFromFirstToFourth() {
    double before = Double.POSITIVE_INFINITY;
    for (Shape shape :
        new Shape[] {Shape.ELLIPSE, Shape.PARABOLA, Shape.TWO_PARABOLOIDS, Shape.CONE}) {
      double now = Gauging.volume(new Cask(50, 64, 81, shape));
      assertTrue(now < before);
      before = now;
    }
  }

  @Test
  void sizesThatNoCaskHasAreRefused() {
    assertEquals(
        "head is 66 cm, wider than bilge, 64 cm.", refusal(() -> new Cask(66, 64, 80, Shape.CONE)));
    assertEquals(
        "head is 31.9 cm; it must be at least half of bilge, 32 cm.",
        refusal(() -> new Cask(31.9, 64, 80, Shape.CONE)));
    assertEquals(
        "head is 60 cm and bilge is 64 cm; in a cylinder they are equal.",
        refusal(() -> new Cask(60, 64, 80, Shape.CYLINDER)));
    Cask cask = new Cask(50, 64, 80, Shape.ELLIPSE);
    assertEquals("depth is 81 cm, more than length, 80 cm.", refusal(() -> cask.standing(81)));
    assertTrue(
        refusal(
                () ->
                    new OutsideCask(50, 64, 15, OptionalDouble.of(2.7), 4, Shape.ELLIPSE).inside())
            .startsWith("stave and croze leave"));
    assertEquals(
        "dip is 65 cm, more than bilge, 64 cm.",
        refusal(() -> cask.below(65, BarrelReason.DIP_ABOVE_BILGE)));
    assertTrue(refusal(() -> cask.depth(230_000)).startsWith("contents is 230 L; this barrel"));
    assertTrue(
        refusal(() -> Gauging.headspace(new Cask(50, 64, 80, Shape.ELLIPSE), 2.5, 2.7))
            .startsWith("drop is not more than stave"));
  }

  private static String refusal(org.junit.jupiter.api.function.Executable call) {
    return assertThrows(Refusal.class, call).getMessage();
  }

  /**
   * Volume below a surface under the axis, in pieces that shrink toward where it leaves the wood.
   */
  private static double integral(Lying c) {
    double k = c.bilge / 2 - c.depth();
    double end = c.radius(1) >= k ? 1 : leaves(c, k);
    double largest = segment(c.bilge / 2, k);
    double sum = 0;
    double from = 0;
    for (int piece = 1; piece <= 12; piece++) {
      double to = piece < 12 ? end * (1 - Math.pow(0.25, piece)) : end;
      sum += ADAPTIVE.integrate(100_000, u -> segment(c.radius(u), k) / largest, from, to);
      from = to;
    }
    return c.length * largest * sum;
  }

  /** r² (θ − sin θ cos θ), with the half angle found without a small difference. */
  private static double segment(double r, double k) {
    double angle = 2 * Math.atan(Math.sqrt(Math.max(0, (r - k) / (r + k))));
    return r * r * (angle - Math.sin(angle) * Math.cos(angle));
  }

  private static double leaves(Lying c, double k) {
    double in = 0;
    double out = 1;
    for (int i = 0; i < 60; i++) {
      double middle = (in + out) / 2;
      if (c.radius(middle) > k) {
        in = middle;
      } else {
        out = middle;
      }
    }
    return in;
  }
}
