package meadcell.barrel;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** What a barrel holds, from its size, a dipstick or a scale. */
@Family(
    name = "BARREL",
    about = "The barrel: contents, headspace, wood, air and samples.",
    says = BarrelReason.class)
public final class Gauging {
  private static final String GAUGING =
      "Gauging rules of the four varieties of cask, as in nineteenth-century gauging tables"
          + " (The Builder-Mechanic, Rules and Tables for Gauging).";
  private static final String SEGMENTS =
      "Geometry: segments of a circle summed along the cask. " + GAUGING;

  @Arg(
      name = "dip",
      help = "Wet length of the dipstick, from the inside bottom of the bilge",
      is = Quantity.LENGTH,
      above = 0,
      to = Cask.WIDEST)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Dip {}

  private Gauging() {}

  /**
   * {@return contents of the full barrel, L}
   *
   * @param cask sizes of the barrel
   */
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
  public static double volume(Cask cask) {
    return cask.volume() / Cask.LITRE;
  }

  /**
   * {@return contents of the lying barrel by dipstick, L}
   *
   * @param cask sizes of the barrel
   * @param dipCm wet length of the dipstick, from the inside bottom of the bilge, cm
   */
  @CellarFunction(
      summary = "What a lying barrel holds, from the wet length of a dipstick under the bung.",
      gives = Quantity.VOLUME,
      formula =
          "The segments of a circle below the surface, r² acos(−c/r) + c √(r²−c²) with c = dip −"
              + " bilge/2, integrated along the barrel."
              + " The staves are taken as an arc of an ellipse, a parabola, two paraboloids base to base, two"
              + " cones base to base, or a cylinder.",
      source = SEGMENTS,
      example = "BARREL.CONTENTS(50.5;64;81.5;40)",
      note = "The barrel lies level with the bung straight up; the stick stands upright.")
  public static double contents(Cask cask, @Dip double dipCm) {
    return cask.below(dipCm, BarrelReason.DIP_ABOVE_BILGE) / Cask.LITRE;
  }

  /**
   * {@return missing volume of the lying barrel, L}
   *
   * @param cask sizes of the barrel
   * @param dropCm distance from the inside top of the bilge down to the surface, cm
   * @param staveCm thickness of the stave, if drop is measured from its outside, cm
   */
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
      Cask cask,
      @Arg(
              name = "drop",
              help = "Distance from the inside top of the bilge down to the surface",
              is = Quantity.LENGTH,
              above = 0,
              to = Cask.WIDEST)
          double dropCm,
      @Arg(
              name = "stave",
              help = "Thickness of the stave, if drop is measured from its outside",
              is = Quantity.LENGTH,
              from = 0,
              to = 10,
              byDefault = 0)
          double staveCm) {
    if (dropCm <= staveCm) {
      throw new Refusal(BarrelReason.SURFACE_IN_BUNG);
    }
    return cask.below(dropCm - staveCm, BarrelReason.DROP_ABOVE_BILGE) / Cask.LITRE;
  }

  /**
   * {@return wet depth for a content, cm}
   *
   * @param cask sizes of the barrel
   * @param contentsL what the barrel holds, L
   */
  @CellarFunction(
      summary = "How deep a dipstick under the bung of a lying barrel would be wet.",
      gives = Quantity.LENGTH,
      formula = "The dip at which BARREL.CONTENTS gives contents.",
      source = SEGMENTS,
      example = "BARREL.DIP(50.5;64;81.5;200)",
      note = "With contents in a column, this marks a dipstick.")
  public static double dip(
      Cask cask,
      @Arg(
              name = "contents",
              help = "What the barrel holds",
              is = Quantity.VOLUME,
              above = 0,
              to = Shared.LARGEST_L)
          double contentsL) {
    return cask.depth(contentsL * Cask.LITRE);
  }

  /**
   * {@return contents of the barrel standing on a head, L}
   *
   * @param cask sizes of the barrel
   * @param depthCm depth of the mead above the inside of the lower head, cm
   */
  @CellarFunction(
      summary = "What a barrel standing on its head holds, from the depth of the mead.",
      gives = Quantity.VOLUME,
      formula =
          "π r² integrated from the lower head to the surface. The shapes are those of"
              + " BARREL.CONTENTS.",
      source = "Geometry: cross-sections summed along the cask. " + GAUGING,
      example = "BARREL.STANDING(50.5;64;81.5;40)")
  public static double standing(
      Cask cask,
      @Arg(
              name = "depth",
              help = "Depth of the mead above the inside of the lower head",
              is = Quantity.LENGTH,
              above = 0,
              to = Cask.LONGEST)
          double depthCm) {
    return cask.standing(depthCm) / Cask.LITRE;
  }

  /**
   * {@return free surface, cm²}
   *
   * @param cask sizes of the barrel
   * @param dipCm wet length of the dipstick, from the inside bottom of the bilge, cm
   */
  @CellarFunction(
      summary = "Area of the mead's surface that lies open to the headspace of a lying barrel.",
      gives = Quantity.SQUARE_CENTIMETRE,
      formula =
          "The chords 2 √(r² − c²) with c = dip − bilge/2, integrated along the barrel; 0 when"
              + " full.",
      source = SEGMENTS,
      example = "BARREL.SURFACE(50.5;64;81.5;61)",
      note =
          "In cm² in both systems of units. 1 cm of drop opens a twelfth of the widest"
              + " surface.")
  public static double surface(Cask cask, @Dip double dipCm) {
    return cask.surface(dipCm);
  }

  /**
   * {@return contents from outside sizes, L}
   *
   * @param cask sizes of the barrel
   */
  @CellarFunction(
      summary = "What a barrel holds when full, from its outside sizes.",
      gives = Quantity.VOLUME,
      formula =
          "BARREL.VOLUME of the inside: diameters less 2 stave, length less 2 (croze + stave).",
      source = "Stave 2.7 cm and croze 4 cm: common practice, no source. " + GAUGING,
      example = "BARREL.FROMOUTSIDE(55.5;69;94.5)",
      note =
          "A centimetre more of stave is 20 L less in a 225 L barrel: measure it at the bung hole. Casks"
              + " of 30 L have staves of 1.8 to 2.2 cm, of 500 L 2.7 to 3.2 (from memory).")
  public static double fromOutside(OutsideCask cask) {
    return cask.inside().volume() / Cask.LITRE;
  }

  /**
   * {@return contents by weight, L}
   *
   * @param grossKg weight of the barrel with the mead, kg
   * @param wetEmptyKg weight of the empty barrel while still wet, kg
   * @param densityKgPerL density of the mead, kg/L
   */
  @CellarFunction(
      summary = "What a barrel holds, from its weight on a scale.",
      gives = Quantity.VOLUME,
      formula = "(gross − wetEmpty) / density.",
      source = "Mass over volume.",
      example = "BARREL.BYWEIGHT(283.5;54;1.02)",
      note =
          "Weigh the barrel empty just after racking: the soaked wood of a 225 L barrel weighs 5"
              + " kg or more above dry wood (common practice, no source).\n"
              + "Take the density at the mead's temperature, from GRAVITY.DENSITY. The buoyancy of"
              + " air, 0.1 %, is left out.")
  public static double byWeight(
      @Arg(
              name = "gross",
              help = "Weight of the barrel with the mead",
              is = Quantity.MASS,
              above = 0,
              to = 100000)
          double grossKg,
      @Arg(
              name = "wetEmpty",
              help = "Weight of the empty barrel while still wet",
              is = Quantity.MASS,
              above = 0,
              to = 50000)
          double wetEmptyKg,
      @Shared.Density double densityKgPerL) {
    if (grossKg <= wetEmptyKg) {
      throw new Refusal(BarrelReason.GROSS_NOT_ABOVE_EMPTY)
          .with("gross", grossKg, Quantity.MASS)
          .with("wetEmpty", wetEmptyKg, Quantity.MASS);
    }
    return (grossKg - wetEmptyKg) / densityKgPerL;
  }
}
