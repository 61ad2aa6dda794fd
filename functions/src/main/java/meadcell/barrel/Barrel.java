package meadcell.barrel;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** The barrel: contents, headspace, wood, air and samples. */
@Family(name = "BARREL", about = "The barrel: contents, headspace, wood, air and samples.")
public final class Barrel {
  private static final String HEAD = "Inside diameter of a head";
  private static final String BILGE = "Inside diameter at the bilge";
  private static final String LENGTH = "Inside length between the heads";
  private static final String SHAPE = "Curve of the staves";
  private static final String SHAPES =
      " The staves are taken as an arc of an ellipse, a parabola, two paraboloids base to base, two"
          + " cones base to base, or a cylinder.";
  private static final double NARROWEST = 5;
  private static final double WIDEST = 400;
  private static final double LONGEST = 600;

  private static final String GAUGING =
      "Gauging rules of the four varieties of cask, as in nineteenth-century gauging tables"
          + " (chestofbooks.com, Builder-Mechanic, Rules and Tables for Gauging).";
  private static final String SEGMENTS =
      "Geometry: segments of a circle summed along the cask. " + GAUGING;

  private Barrel() {}

  /** Contents of the full barrel. */
  @CellarFunction(
      summary = "What a barrel holds when full, from its inside sizes.",
      gives = Quantity.VOLUME,
      formula =
          "Ellipse πL/12·(2D²+d²); parabola πL/60·(8D²+4Dd+3d²); two paraboloids πL/8·(D²+d²); cone"
              + " πL/12·(D²+Dd+d²); cylinder πL/4·D². D bilge, d head, L length.",
      source = GAUGING,
      example = "BARREL.VOLUME(50.5;64;81.5)",
      note =
          "Ellipse and parabola differ by less than 1 % for usual casks; weigh a full and an empty"
              + " barrel to see which fits yours.")
  public static double volume(
      @Arg(name = "head", help = HEAD, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double headCm,
      @Arg(name = "bilge", help = BILGE, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double bilgeCm,
      @Arg(name = "length", help = LENGTH, is = Quantity.LENGTH, from = NARROWEST, to = LONGEST)
          double lengthCm,
      @Arg(name = "shape", help = SHAPE, byDefault = "ellipse") Shape shape) {
    return new Cask(headCm, bilgeCm, lengthCm, shape).volume() / Cask.LITRE;
  }

  /** Contents of the lying barrel by dipstick. */
  @CellarFunction(
      summary = "What a lying barrel holds, from the wet length of a dipstick under the bung.",
      gives = Quantity.VOLUME,
      formula =
          "The segments of a circle below the surface, r² acos(−c/r) + c √(r²−c²) with c = dip −"
              + " bilge/2, integrated along the barrel."
              + SHAPES,
      source = SEGMENTS,
      example = "BARREL.CONTENTS(50.5;64;81.5;40)",
      note = "The barrel lies level with the bung straight up; the stick stands upright.")
  public static double contents(
      @Arg(name = "head", help = HEAD, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double headCm,
      @Arg(name = "bilge", help = BILGE, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double bilgeCm,
      @Arg(name = "length", help = LENGTH, is = Quantity.LENGTH, from = NARROWEST, to = LONGEST)
          double lengthCm,
      @Arg(
              name = "dip",
              help = "Wet length of the dipstick, from the inside bottom of the bilge",
              is = Quantity.LENGTH,
              above = 0,
              to = WIDEST)
          double dipCm,
      @Arg(name = "shape", help = SHAPE, byDefault = "ellipse") Shape shape) {
    return new Cask(headCm, bilgeCm, lengthCm, shape).below(dipCm, "dip") / Cask.LITRE;
  }

  /** Missing volume of the lying barrel. */
  @CellarFunction(
      summary = "What is missing in a lying barrel, from how far the surface lies below the bung.",
      gives = Quantity.VOLUME,
      formula =
          "As BARREL.CONTENTS, for the part above the surface. The drop inside the barrel is drop −"
              + " stave.",
      source = SEGMENTS,
      example = "BARREL.HEADSPACE(50.5;64;81.5;3)",
      note =
          "Measured from the outside of the bung hole? Then give stave, the thickness of the wood"
              + " there.\n"
              + "A drop of 0 is refused, because a blank cell is 0; enter a barrel filled to the"
              + " brim as 0.01 (more than stave by 0.01).")
  public static double headspace(
      @Arg(name = "head", help = HEAD, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double headCm,
      @Arg(name = "bilge", help = BILGE, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double bilgeCm,
      @Arg(name = "length", help = LENGTH, is = Quantity.LENGTH, from = NARROWEST, to = LONGEST)
          double lengthCm,
      @Arg(
              name = "drop",
              help = "Distance from the inside top of the bilge down to the surface",
              is = Quantity.LENGTH,
              above = 0,
              to = WIDEST)
          double dropCm,
      @Arg(
              name = "stave",
              help = "Thickness of the stave, if drop is measured from its outside",
              is = Quantity.LENGTH,
              from = 0,
              to = 10,
              byDefault = "0")
          double staveCm,
      @Arg(name = "shape", help = SHAPE, byDefault = "ellipse") Shape shape) {
    Cask cask = new Cask(headCm, bilgeCm, lengthCm, shape);
    if (dropCm <= staveCm) {
      throw Refusal.inconsistent(
          "drop is not more than stave: the surface would stand in the bung hole, the barrel be"
              + " full.");
    }
    return cask.below(dropCm - staveCm, "drop less stave") / Cask.LITRE;
  }

  /** Wet depth for a content. */
  @CellarFunction(
      summary = "How deep a dipstick under the bung of a lying barrel would be wet.",
      gives = Quantity.LENGTH,
      formula = "The dip at which BARREL.CONTENTS gives contents.",
      source = SEGMENTS,
      example = "BARREL.DIP(50.5;64;81.5;200)",
      note = "With contents in a column, this marks a dipstick.")
  public static double dip(
      @Arg(name = "head", help = HEAD, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double headCm,
      @Arg(name = "bilge", help = BILGE, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double bilgeCm,
      @Arg(name = "length", help = LENGTH, is = Quantity.LENGTH, from = NARROWEST, to = LONGEST)
          double lengthCm,
      @Arg(
              name = "contents",
              help = "What the barrel holds",
              is = Quantity.VOLUME,
              above = 0,
              to = 80000)
          double contentsL,
      @Arg(name = "shape", help = SHAPE, byDefault = "ellipse") Shape shape) {
    return new Cask(headCm, bilgeCm, lengthCm, shape).depth(contentsL * Cask.LITRE);
  }
}
