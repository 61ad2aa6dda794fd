package meadcell.barrel;

import static meadcell.catalogue.Numbers.text;

import meadcell.blend.Blend;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
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

  private static final String VOLUME = "What the barrel holds now";
  private static final String SOAKED = "What the wood holds, as BARREL.SOAKED gives it";
  private static final String EXCHANGE = "Share of it that mixes with the next fill";
  private static final String MIXING =
      "Repeated mixing, a mass balance; how much the wood holds and lets go: common practice, no"
          + " source.";
  private static final String SCALE =
      "For scale: a 225 L barrel has 1.93 m² of inside. A quarter of an inch (0.635 cm) soaked into"
          + " one-inch staves, half of it liquid, is 6.1 L; so the last occupant is 2.6 % of the"
          + " next fill, and 0.07 % of the one after.";

  private static final String LOSS_RATE = "Loss of a year, in per cent of the capacity";
  private static final String CAPACITY = "What the barrel holds when full";
  private static final String START = "Headspace to begin with";
  private static final String LINEAR_LOSS = "A steady loss; a year has 365.25 days.";
  private static final double LARGEST = 80000;
  private static final double CM2_PER_M2 = 10000;
  private static final double LITRES_PER_M2_CM = 10;

  private static final String APPROACH =
      "Exponential approach to a limit, less in later fills: Towey and Waterhouse, Am. J. Enol."
          + " Vitic. 47(2):163–172, 1996, abstract.";

  private static final String BENSON_KRAUSE =
      "Benson and Krause, as in Standard Methods (APHA) 4500-O: ln C = −139.34411 + 1.575701·10⁵/T"
          + " − 6.642308·10⁷/T² + 1.243800·10¹⁰/T³ − 8.621949·10¹¹/T⁴.";
  private static final String VAPOUR =
      " Water vapour and pressure terms, from memory: Standard Methods 4500-O.";

  private static final String HOLE = "Bore of the hole (a 7/64 in drill is 2.778 mm)";
  private static final String DEPTH = "How far the hole lies below the surface";
  private static final String DENSITY = "Density of the mead";
  private static final String VACUUM = "Vacuum in the headspace, below the air outside";
  private static final String COEFFICIENT = "Discharge coefficient of the hole";
  private static final String TORRICELLI =
      "Torricelli and the discharge coefficients 0.62 (sharp edge) and 0.82 (short tube):"
          + " Encyclopaedia Britannica, 11th ed., vol. 14, Hydraulics §§ 17, 49. The default 0.7"
          + " lies between, for a hole ten times as long as wide: common practice, no source."
          + " Standard gravity 9.80665 m/s²; air at 101.325 kPa.";
  private static final String FLAMMABLE =
      "Sanitising alcohol is flammable: keep flames, sparks and running tools away and let hole,"
          + " nail and hands dry first.";
  private static final String BURST =
      "A cask under pressure can burst or throw its bung or head. Use a regulator and a relief"
          + " valve, stay out of the way of bung and head, and follow local codes and licensed"
          + " practice.";
  private static final String NAILS =
      "Common 2d, 3d, 6d, 8d, 10d, 12d, 16d, and 4d rounded up: nail size chart, toolsize.io. From"
          + " memory, and agreeing with the few found in print (box 2d, 3d, 6d; finishing 6d and"
          + " the gauges): the rest.";
  private static final String PENNY = "Penny size (2 to 10, 12 or 16)";

  private Barrel() {}

  /** The curve of the staves, after the four varieties of the gauging books, and a cylinder. */
  public enum Shape {
    ELLIPSE,
    PARABOLA,
    TWO_PARABOLOIDS,
    CONE,
    CYLINDER
  }

  /** The kinds of nail. */
  public enum Nail {
    COMMON,
    BOX,
    FINISHING
  }

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
              to = LARGEST)
          double contentsL,
      @Arg(name = "shape", help = SHAPE, byDefault = "ellipse") Shape shape) {
    return new Cask(headCm, bilgeCm, lengthCm, shape).depth(contentsL * Cask.LITRE);
  }

  /** Contents of the barrel standing on a head. */
  @CellarFunction(
      summary = "What a barrel standing on its head holds, from the depth of the mead.",
      gives = Quantity.VOLUME,
      formula =
          "π r² integrated from the lower head to the surface. The shapes are those of"
              + " BARREL.CONTENTS.",
      source = "Geometry: cross-sections summed along the cask. " + GAUGING,
      example = "BARREL.STANDING(50.5;64;81.5;40)")
  public static double standing(
      @Arg(name = "head", help = HEAD, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double headCm,
      @Arg(name = "bilge", help = BILGE, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double bilgeCm,
      @Arg(name = "length", help = LENGTH, is = Quantity.LENGTH, from = NARROWEST, to = LONGEST)
          double lengthCm,
      @Arg(
              name = "depth",
              help = "Depth of the mead above the inside of the lower head",
              is = Quantity.LENGTH,
              above = 0,
              to = LONGEST)
          double depthCm,
      @Arg(name = "shape", help = SHAPE, byDefault = "ellipse") Shape shape) {
    return new Cask(headCm, bilgeCm, lengthCm, shape).standing(depthCm) / Cask.LITRE;
  }

  /** Contents from outside sizes. */
  @CellarFunction(
      summary = "What a barrel holds when full, from its outside sizes.",
      gives = Quantity.VOLUME,
      formula =
          "BARREL.VOLUME of the inside: diameters less 2 stave, length less 2 (croze + stave).",
      source =
          "Stave 2.7 cm: transport barrel, dimensionsguide.com. Croze 4 cm: common practice, no"
              + " source. "
              + GAUGING,
      example = "BARREL.FROMOUTSIDE(55.5;69;94.5)",
      note =
          "A centimetre more of stave is 20 L less in a 225 L barrel: measure it at the bung hole.")
  public static double fromOutside(
      @Arg(
              name = "head",
              help = "Outside diameter of a head, over the stave ends",
              is = Quantity.LENGTH,
              from = NARROWEST,
              to = WIDEST)
          double headCm,
      @Arg(
              name = "bilge",
              help = "Outside diameter at the bilge",
              is = Quantity.LENGTH,
              from = NARROWEST,
              to = WIDEST)
          double bilgeCm,
      @Arg(
              name = "length",
              help = "Outside length of the staves",
              is = Quantity.LENGTH,
              from = NARROWEST,
              to = LONGEST)
          double lengthCm,
      @Arg(
              name = "stave",
              help = "Thickness of staves and heads",
              is = Quantity.LENGTH,
              from = 0.5,
              to = 10,
              byDefault = "2.7")
          double staveCm,
      @Arg(
              name = "croze",
              help = "From the end of a stave to the outer face of the head",
              is = Quantity.LENGTH,
              from = 0.5,
              to = 15,
              byDefault = "4")
          double crozeCm,
      @Arg(name = "shape", help = SHAPE, byDefault = "ellipse") Shape shape) {
    return outside(headCm, bilgeCm, lengthCm, staveCm, crozeCm, shape).volume() / Cask.LITRE;
  }

  private static Cask outside(
      double headCm, double bilgeCm, double lengthCm, double staveCm, double crozeCm, Shape shape) {
    double insideHead = headCm - 2 * staveCm;
    double insideLength = lengthCm - 2 * (crozeCm + staveCm);
    if (insideHead < NARROWEST || insideLength < NARROWEST) {
      throw Refusal.inconsistent(
          "stave and croze leave an inside of less than " + text(NARROWEST) + " cm.");
    }
    return new Cask(insideHead, bilgeCm - 2 * staveCm, insideLength, shape);
  }

  /** Contents by weight. */
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
      @Arg(name = "density", help = DENSITY, is = Quantity.DENSITY, from = 0.95, to = 1.25)
          double densityKgPerL) {
    if (grossKg <= wetEmptyKg) {
      throw Refusal.inconsistent(
          "gross is "
              + text(grossKg)
              + " kg; it must be more than wetEmpty, "
              + text(wetEmptyKg)
              + " kg.");
    }
    return (grossKg - wetEmptyKg) / densityKgPerL;
  }

  /** Inside area. */
  @CellarFunction(
      summary = "Area of wood that the mead touches in a full barrel, staves and heads.",
      gives = Quantity.AREA,
      formula = "4π ∫ r √(1 + (dr/dx)²) dx over half the length, plus two heads of π d²/4.",
      source = "Geometry: surface of revolution. " + GAUGING,
      example = "BARREL.AREA(50.5;64;81.5)")
  public static double area(
      @Arg(name = "head", help = HEAD, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double headCm,
      @Arg(name = "bilge", help = BILGE, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double bilgeCm,
      @Arg(name = "length", help = LENGTH, is = Quantity.LENGTH, from = NARROWEST, to = LONGEST)
          double lengthCm,
      @Arg(name = "shape", help = SHAPE, byDefault = "ellipse") Shape shape) {
    return new Cask(headCm, bilgeCm, lengthCm, shape).area() / CM2_PER_M2;
  }

  /** Inside area per litre. */
  @CellarFunction(
      summary = "Area of wood for each litre of a full barrel.",
      gives = Quantity.SQUARE_CENTIMETRE_PER_LITRE,
      formula = "BARREL.AREA over BARREL.VOLUME.",
      source = "Geometry: surface of revolution. " + GAUGING,
      example = "BARREL.AREAPERLITRE(50.5;64;81.5)",
      note =
          "In cm² per litre in both systems of units. The smaller the barrel, the more wood a"
              + " litre meets.")
  public static double areaPerLitre(
      @Arg(name = "head", help = HEAD, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double headCm,
      @Arg(name = "bilge", help = BILGE, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double bilgeCm,
      @Arg(name = "length", help = LENGTH, is = Quantity.LENGTH, from = NARROWEST, to = LONGEST)
          double lengthCm,
      @Arg(name = "shape", help = SHAPE, byDefault = "ellipse") Shape shape) {
    Cask cask = new Cask(headCm, bilgeCm, lengthCm, shape);
    return cask.area() / (cask.volume() / Cask.LITRE);
  }

  /** Wood per litre against the reference barrel. */
  @CellarFunction(
      summary = "How much more wood a litre meets than in a 225 L barrel; 2 is twice as much.",
      formula = "BARREL.AREAPERLITRE over that of the reference barrel, 86 cm²/L.",
      source =
          "Reference: Bordeaux barrel, outside 69 × 55.5 × 94.5 cm (dimensionsguide.com), with"
              + " staves of 2.7 cm and a croze of 4 cm, its inside an ellipse.",
      example = "BARREL.OAKRATIO(36;42;50)",
      note = "A first guess for how much sooner a small barrel is ready; taste decides.")
  public static double oakRatio(
      @Arg(name = "head", help = HEAD, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double headCm,
      @Arg(name = "bilge", help = BILGE, is = Quantity.LENGTH, from = NARROWEST, to = WIDEST)
          double bilgeCm,
      @Arg(name = "length", help = LENGTH, is = Quantity.LENGTH, from = NARROWEST, to = LONGEST)
          double lengthCm,
      @Arg(name = "shape", help = SHAPE, byDefault = "ellipse") Shape shape) {
    Cask reference = outside(55.5, 69, 94.5, 2.7, 4, Shape.ELLIPSE);
    return areaPerLitre(headCm, bilgeCm, lengthCm, shape)
        * (reference.volume() / Cask.LITRE)
        / reference.area();
  }

  /** Free surface. */
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
  public static double surface(
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
    return new Cask(headCm, bilgeCm, lengthCm, shape).surface(dipCm);
  }

  /** What the wood holds. */
  @CellarFunction(
      summary = "How much liquid the wood of a barrel has soaked up.",
      gives = Quantity.VOLUME,
      formula = "area × depth × share.",
      source =
          "Depth 0.6 cm and share 50 %: common practice, no source. Oak has 56 to 63 % of voids"
              + " (computed from its basic density 0.57 to 0.68 and 1.53 for wood substance, from"
              + " memory).",
      example = "BARREL.SOAKED(1.93;0.635)",
      note = SCALE)
  public static double soaked(
      @Arg(
              name = "area",
              help = "Area of wood that is wet, as BARREL.AREA gives it",
              is = Quantity.AREA,
              above = 0,
              to = 500)
          double areaM2,
      @Arg(
              name = "depth",
              help = "How deep the liquid has gone in",
              is = Quantity.LENGTH,
              above = 0,
              to = 10,
              byDefault = "0.6")
          double depthCm,
      @Arg(
              name = "share",
              help = "Share of the wet wood that is liquid",
              is = Quantity.PERCENT,
              from = 1,
              to = 100,
              byDefault = "50")
          double share) {
    return areaM2 * depthCm * LITRES_PER_M2_CM * share / 100;
  }

  /** What came out of the wood. */
  @CellarFunction(
      summary = "Share of the present liquid that came out of the staves: the last occupant.",
      gives = Quantity.PERCENT,
      formula = "m / (volume + m), with m = soaked × exchange.",
      source = MIXING,
      example = "BARREL.CARRYOVER(225;6.1)",
      note = SCALE)
  public static double carryover(
      @Arg(name = "volume", help = VOLUME, is = Quantity.VOLUME, above = 0, to = LARGEST)
          double volumeL,
      @Arg(name = "soaked", help = SOAKED, is = Quantity.VOLUME, above = 0, to = 2000)
          double soakedL,
      @Arg(
              name = "exchange",
              help = EXCHANGE,
              is = Quantity.PERCENT,
              from = 1,
              to = 100,
              byDefault = "100")
          double exchange) {
    return 100 * Wood.carried(volumeL, soakedL * exchange / 100);
  }

  /** Shares of all fills. */
  @CellarFunction(
      summary = "Share of each past fill in the present liquid, the oldest first; they sum to 100.",
      gives = Quantity.PERCENT,
      formula =
          "Each fill mixes with m = soaked × exchange of what was before: earlier shares × m /"
              + " (fill + m). Topping mixes in the same way, earlier shares × (fill + m) / (fill +"
              + " m + topped), and counts with the last fill.",
      source = MIXING,
      example = "BARREL.HISTORY({200;225;225};6.1)",
      note =
          "Shares are of litres poured in: evaporation takes water and alcohol and leaves behind"
              + " what tastes.\n"
              + SCALE)
  public static double[] history(
      @Arg(
              name = "volumes",
              help = "Volume of each fill, the oldest first, the present one last",
              is = Quantity.VOLUME,
              above = 0,
              to = LARGEST)
          double[] volumesL,
      @Arg(name = "soaked", help = SOAKED, is = Quantity.VOLUME, above = 0, to = 2000)
          double soakedL,
      @Arg(
              name = "exchange",
              help = EXCHANGE,
              is = Quantity.PERCENT,
              from = 1,
              to = 100,
              byDefault = "100")
          double exchange,
      @Arg(
              name = "topped",
              help = "Poured in to top up since the last fill",
              is = Quantity.VOLUME,
              from = 0,
              to = LARGEST,
              byDefault = "0")
          double toppedL) {
    double[] shares = Wood.shares(volumesL, soakedL * exchange / 100, toppedL);
    for (int i = 0; i < shares.length; i++) {
      shares[i] *= 100;
    }
    return shares;
  }

  /** Strength after a spirit cask has given up its spirit. */
  @CellarFunction(
      summary = "Strength once the wood of a spirit cask and the mead in it have become one.",
      gives = Quantity.PERCENT_VOL,
      formula =
          "Masses and ethanol of mead and spirit add up; the strength of the mix follows from its"
              + " density, so contraction is in it.",
      source = "Mass balance with the ethanol–water densities of OIML R 22 (1975) at 20 °C.",
      example = "BARREL.SPIRITGAIN(220;12;5;60)",
      note =
          "5 L of 60 % vol in the wood lift 220 L of 12 % vol by about one point.\n"
              + "Sugar in the mead is left out; it hardly changes the strength.",
      caution =
          "The alcohol gained counts for label and tax class; follow the law that applies to you.")
  public static double spiritGain(
      @Arg(
              name = "volume",
              help = "What is filled in",
              is = Quantity.VOLUME,
              above = 0,
              to = LARGEST)
          double volumeL,
      @Arg(name = "abv", help = "Strength of it", is = Quantity.PERCENT_VOL, from = 1, to = 25)
          double abv,
      @Arg(
              name = "soaked",
              help = "Spirit that the wood holds, as BARREL.SOAKED gives it",
              is = Quantity.VOLUME,
              above = 0,
              to = 2000)
          double soakedL,
      @Arg(
              name = "spiritAbv",
              help = "Strength of that spirit",
              is = Quantity.PERCENT_VOL,
              from = 10,
              to = 96)
          double spiritAbv,
      @Arg(
              name = "drained",
              help = "How much of it was drained or rinsed out before filling",
              is = Quantity.VOLUME,
              from = 0,
              to = 2000,
              byDefault = "0")
          double drainedL) {
    if (drainedL > soakedL) {
      throw Refusal.inconsistent(
          "drained is " + text(drainedL) + " L, more than soaked, " + text(soakedL) + " L.");
    }
    return Blend.abv(new double[] {volumeL, soakedL - drainedL}, new double[] {abv, spiritAbv});
  }

  /** What a topping log tells. */
  public record LossRate(
      @Gives(value = "loss", is = Quantity.PERCENT_PER_YEAR) double loss,
      @Gives(value = "standard error", is = Quantity.PERCENT_PER_YEAR) double standardError) {}

  /** Loss from a topping log. */
  @CellarFunction(
      summary = "Loss of a barrel in a year and its standard error, from the log of toppings.",
      formula =
          "Litres of all toppings but the first over the days since the first: least squares"
              + " through the origin, weighted by the time between. The standard error is from the"
              + " scatter of the toppings.",
      source =
          "Weighted linear regression. For comparison, published losses: 1.7 % a year in a cave,"
              + " 6.7 % in a warehouse (Northern California; encyclopaedia entry Wine cave), 1 to"
              + " 9 % over all cellars (cavesa.ch, glossary).",
      example = "BARREL.LOSSRATE({0;30;61;92};{4;0.9;1;0.8};225)",
      note =
          "The first topping only starts the count: it fills what the wood soaked up. Each topping"
              + " must fill to the same mark.")
  public static LossRate lossRate(
      @Arg(
              name = "days",
              help = "Day of each topping, in order",
              is = Quantity.DATE,
              from = 0,
              to = 200000)
          double[] days,
      @Arg(
              name = "topups",
              help = "What each topping took",
              is = Quantity.VOLUME,
              from = 0,
              to = LARGEST)
          double[] topupsL,
      @Arg(name = "capacity", help = CAPACITY, is = Quantity.VOLUME, above = 0, to = LARGEST)
          double capacityL) {
    return Topping.rate(days, topupsL, capacityL);
  }

  /** Headspace after some days. */
  @CellarFunction(
      summary = "Headspace that will have opened after some days.",
      gives = Quantity.VOLUME,
      formula = "start + capacity × lossRate/100 × days/365.25.",
      source = LINEAR_LOSS,
      example = "BARREL.HEADSPACEAFTER(225;4;60)")
  public static double headspaceAfter(
      @Arg(name = "capacity", help = CAPACITY, is = Quantity.VOLUME, above = 0, to = LARGEST)
          double capacityL,
      @Arg(name = "lossRate", help = LOSS_RATE, is = Quantity.PERCENT_PER_YEAR, from = 0.1, to = 50)
          double lossRate,
      @Arg(name = "days", help = "Days since", is = Quantity.DAYS, above = 0, to = 20000)
          double days,
      @Arg(
              name = "start",
              help = START,
              is = Quantity.VOLUME,
              from = 0,
              to = LARGEST,
              byDefault = "0")
          double startL) {
    double headspaceL = startL + capacityL * Topping.share(lossRate, days);
    if (headspaceL > capacityL) {
      throw Refusal.inconsistent(
          "The headspace would be "
              + text(headspaceL)
              + " L, more than capacity, "
              + text(capacityL)
              + " L.");
    }
    return headspaceL;
  }

  /** Days until the headspace is too large. */
  @CellarFunction(
      summary = "Days until the headspace reaches a limit and the barrel wants topping.",
      gives = Quantity.DAYS,
      formula = "(limit − start) / (capacity × lossRate/100 / 365.25).",
      source = LINEAR_LOSS,
      example = "BARREL.DAYSTOTOP(225;4;1.5)",
      note = "Less than 0: that many days overdue.")
  public static double daysToTop(
      @Arg(name = "capacity", help = CAPACITY, is = Quantity.VOLUME, above = 0, to = LARGEST)
          double capacityL,
      @Arg(name = "lossRate", help = LOSS_RATE, is = Quantity.PERCENT_PER_YEAR, from = 0.1, to = 50)
          double lossRate,
      @Arg(
              name = "limit",
              help = "Headspace at which to top up",
              is = Quantity.VOLUME,
              above = 0,
              to = LARGEST)
          double limitL,
      @Arg(
              name = "start",
              help = START,
              is = Quantity.VOLUME,
              from = 0,
              to = LARGEST,
              byDefault = "0")
          double startL) {
    double larger = Math.max(limitL, startL);
    if (larger > capacityL) {
      throw Refusal.inconsistent(
          (larger == limitL ? "limit" : "start")
              + " is "
              + text(larger)
              + " L, more than capacity, "
              + text(capacityL)
              + " L.");
    }
    return (limitL - startL) / (capacityL * Topping.share(lossRate, 1));
  }

  /** Strength after evaporation. */
  @CellarFunction(
      summary = "Estimate of the strength after a share of the volume has gone through the wood.",
      gives = Quantity.PERCENT_VOL,
      formula =
          "Driving forces: ethanol leaves in proportion to what is there, water to what is there"
              + " and to (100 − humidity)/(100 − neutral). Both run until the volume is down by"
              + " loss; contraction is left out.",
      source =
          "Direction (dry air raises, humid air lowers the strength): The Oxford Companion to"
              + " Wine, 2006, evaporation. From memory: the driving forces, and 65 to 70 % as"
              + " neutral humidity. The default 67: common practice, no source.",
      example = "BARREL.STRENGTH(13;5;80)",
      note =
          "An estimate: warmth, draught, wood and bung are not in it. Measure before you print a"
              + " label.")
  public static double strength(
      @Arg(name = "abv", help = "Strength before", is = Quantity.PERCENT_VOL, from = 1, to = 75)
          double abv,
      @Arg(name = "loss", help = "Volume lost", is = Quantity.PERCENT, from = 0.1, to = 60)
          double loss,
      @Arg(
              name = "humidity",
              help = "Relative humidity of the cellar",
              is = Quantity.PERCENT,
              from = 40,
              to = 85)
          double humidity,
      @Arg(
              name = "neutral",
              help = "Humidity at which the strength stands still",
              is = Quantity.PERCENT,
              from = 50,
              to = 80,
              byDefault = "67")
          double neutral) {
    return Evaporation.strength(abv, loss, humidity, neutral);
  }

  /** Oxygen through the wood. */
  @CellarFunction(
      summary = "Oxygen that has come in through wood, joints and bung of a barrel.",
      gives = Quantity.MILLIGRAM_PER_LITRE,
      formula = "rate × days/365.25.",
      source =
          "Default 10 for used wood, 20 for new: common practice, no source. Published: 11.4 mg/L"
              + " a year in new oak (Junqua, Zeng, Pons, OENO One 55(3), 2021), 20 to 27 by many"
              + " authors (IVES Technical Reviews 5449).",
      example = "BARREL.OXYGEN(180)",
      note =
          "The spread of the rate, 8 to 45 mg/L a year, is far larger than anything else here."
              + " Each topping and racking adds more.")
  public static double oxygen(
      @Arg(name = "days", help = "Days in the barrel", is = Quantity.DAYS, above = 0, to = 20000)
          double days,
      @Arg(
              name = "rate",
              help = "Oxygen that comes in",
              is = Quantity.MILLIGRAM_PER_LITRE_YEAR,
              above = 0,
              to = 100,
              byDefault = "10")
          double rate) {
    return rate * Topping.years(days);
  }

  /** Oxygen in the headspace. */
  @CellarFunction(
      summary = "Oxygen in a headspace that has just been open to the air: an upper bound.",
      gives = Quantity.MILLIGRAM,
      formula =
          "headspace × 0.20946 (p − pw) 31.998 g/mol / (R T) at 101.325 kPa, pw that of water"
              + " vapour.",
      source = "Ideal gas, R = 8.314463 J/(mol K)." + VAPOUR,
      example = "BARREL.HEADSPACEOXYGEN(3;15)",
      note = "A closed barrel soon holds less: mead takes the oxygen up.")
  public static double headspaceOxygen(
      @Arg(
              name = "headspace",
              help = "Volume of the headspace",
              is = Quantity.VOLUME,
              above = 0,
              to = LARGEST)
          double headspaceL,
      @Arg(
              name = "temperature",
              help = "Temperature of the headspace",
              is = Quantity.TEMPERATURE,
              from = 0,
              to = 40,
              zeroIsBlank = true)
          double temperatureC) {
    return headspaceL * Air.oxygen(temperatureC);
  }

  /** Oxygen at saturation. */
  @CellarFunction(
      summary = "Oxygen that water holds when it has stood under air.",
      gives = Quantity.MILLIGRAM_PER_LITRE,
      formula = "C p (1 − pw/p)(1 − θp) / ((1 − pw)(1 − θ)), p and pw in atmospheres, C as below.",
      source = BENSON_KRAUSE + VAPOUR,
      example = "BARREL.SATURATION(15)",
      note =
          "For water. At 20 °C mead of 12 % vol holds a little less, about 8.5 mg/L (from memory).")
  public static double saturation(
      @Arg(
              name = "temperature",
              help = "Temperature of the liquid",
              is = Quantity.TEMPERATURE,
              from = 0,
              to = 40,
              zeroIsBlank = true)
          double temperatureC,
      @Arg(
              name = "pressure",
              help = "Absolute pressure of the air",
              is = Quantity.PRESSURE,
              from = 60,
              to = 110,
              byDefault = "101.325")
          double pressureKPa) {
    return Air.saturation(temperatureC, pressureKPa);
  }

  /** Gas to purge a headspace. */
  @CellarFunction(
      summary = "Inert gas that brings the oxygen of a headspace full of air down to a share.",
      gives = Quantity.VOLUME,
      formula =
          "headspace × ln(20.946 / oxygen): gas flows through and mixes, at the pressure of the"
              + " cellar.",
      source = "Perfect mixing. Oxygen in dry air 20.946 %: standard atmosphere, from memory.",
      example = "BARREL.PURGE(10;1)",
      note = "Slow gas heavier than air takes less, a jet into an open bung more.",
      caution =
          "Carbon dioxide, nitrogen and argon kill without warning in cellars and pits: ventilate,"
              + " carry a meter, never lean into a vessel. Never blow gas into a closed barrel."
              + " Follow local codes.")
  public static double purge(
      @Arg(
              name = "headspace",
              help = "Volume of the headspace",
              is = Quantity.VOLUME,
              above = 0,
              to = LARGEST)
          double headspaceL,
      @Arg(
              name = "oxygen",
              help = "Oxygen to be left in the headspace",
              is = Quantity.PERCENT,
              from = 0.1,
              to = 20)
          double oxygen) {
    return headspaceL * Math.log(100 * Air.OXYGEN_SHARE / oxygen);
  }

  /** Extraction against time. */
  @CellarFunction(
      summary = "Extraction so far, in per cent of what a new barrel would give in the end.",
      gives = Quantity.PERCENT,
      formula = "(1 − depletion/100)^(fill − 1) × (1 − 2^(−days/halfTime)).",
      source = APPROACH + " Depletion of half a fill, from memory: 50, 25, 12 %.",
      example = "BARREL.EXTRACTION(120;90;2)",
      note =
          "Substances differ: those of the toast go with the first fill, some lactones come later."
              + " Take the half time from your own notes with BARREL.EXTRACTIONFIT.")
  public static double extraction(
      @Arg(name = "days", help = "Days in the barrel", is = Quantity.DAYS, above = 0, to = 20000)
          double days,
      @Arg(
              name = "halfTime",
              help = "Days in which half of the limit goes into the mead",
              is = Quantity.DAYS,
              above = 0,
              to = 5000)
          double halfTime,
      @Arg(
              name = "fill",
              help = "Which fill of the barrel this is, 1 when new",
              is = Quantity.COUNT,
              from = 1,
              to = 30,
              byDefault = "1")
          double fill,
      @Arg(
              name = "depletion",
              help = "What each fill takes away from the limit",
              is = Quantity.PERCENT,
              from = 1,
              to = 99,
              byDefault = "50")
          double depletion) {
    if (fill != Math.rint(fill)) {
      throw Refusal.outOfRange("fill is " + text(fill) + "; it must be a whole number.");
    }
    return 100 * Math.pow(1 - depletion / 100, fill - 1) * Extraction.share(days, halfTime);
  }

  /** Limit and half time of an extraction. */
  public record ExtractionFit(
      @Gives("limit") double limit,
      @Gives(value = "half time", is = Quantity.DAYS) double halfTime,
      @Gives("standard error of the limit") double limitError,
      @Gives(value = "standard error of the half time", is = Quantity.DAYS) double halfTimeError) {}

  /** Extraction fitted to notes. */
  @CellarFunction(
      summary =
          "Limit and half time of what the wood gives, from one's own notes of its intensity.",
      formula =
          "Least squares of limit × (1 − 2^(−days/halfTime)), standard errors from the scatter of"
              + " the notes.",
      source = APPROACH + " Levenberg–Marquardt (Commons Math).",
      example = "BARREL.EXTRACTIONFIT({14;30;60;90;150};{1;2.1;3.6;4.4;5.6})",
      note =
          "Score on one scale, 0 meaning no wood at all. Refused before the notes level off: then"
              + " the limit could be anything.")
  public static ExtractionFit extractionFit(
      @Arg(
              name = "days",
              help = "Days since filling of each note",
              is = Quantity.DAYS,
              from = 0,
              to = 20000)
          double[] days,
      @Arg(
              name = "intensities",
              help = "Intensity noted, in any unit",
              is = Quantity.NUMBER,
              from = 0,
              to = 1000000)
          double[] intensities) {
    return Extraction.fit(days, intensities);
  }

  /** First flow from a nail hole. */
  @CellarFunction(
      summary = "Flow from a small hole in the head of a barrel when the nail is pulled.",
      gives = Quantity.MILLILITRE_PER_SECOND,
      formula =
          "coefficient × bore area × √(2 p/density), p = density × 9.80665 m/s² × depth − vacuum.",
      source = TORRICELLI,
      example = "BARREL.SAMPLEFLOW(2.778;30;1.01)",
      note =
          "The flow falls as the barrel makes its own vacuum: see BARREL.SAMPLETIME. Narrow holes"
              + " in cold, sweet mead run slower.",
      caution = FLAMMABLE)
  public static double sampleFlow(
      @Arg(name = "hole", help = HOLE, is = Quantity.MILLIMETRE, from = 0.5, to = 10) double holeMm,
      @Arg(name = "depth", help = DEPTH, is = Quantity.LENGTH, above = 0, to = 200) double depthCm,
      @Arg(name = "density", help = DENSITY, is = Quantity.DENSITY, from = 0.95, to = 1.25)
          double densityKgPerL,
      @Arg(
              name = "vacuum",
              help = VACUUM,
              is = Quantity.PRESSURE,
              from = 0,
              to = 50,
              byDefault = "0")
          double vacuumKPa,
      @Arg(name = "coefficient", help = COEFFICIENT, from = 0.4, to = 1, byDefault = "0.7")
          double coefficient) {
    return NailHole.flow(
        holeMm, NailHole.driving(depthCm, densityKgPerL, vacuumKPa), densityKgPerL, coefficient);
  }

  /** Time to draw a sample. */
  @CellarFunction(
      summary = "Seconds for a sample to run from a nail hole of a tight barrel.",
      gives = Quantity.SECONDS,
      formula =
          "BARREL.SAMPLEFLOW with the pressure that is left, integrated: the gas of the headspace"
              + " expands by what has run out (Boyle), so its vacuum grows.",
      source = TORRICELLI,
      example = "BARREL.SAMPLETIME(30;2;2.778;30;1.01)",
      note =
          "A bung that lets air in behind the sample makes it faster. Refused where the vacuum"
              + " would stop it before: see BARREL.SAMPLEMAX.",
      caution = FLAMMABLE)
  public static double sampleTime(
      @Arg(
              name = "amount",
              help = "Size of the sample",
              is = Quantity.MILLILITRE,
              above = 0,
              to = 5000)
          double amountMl,
      @Arg(
              name = "headspace",
              help = "Volume of the headspace",
              is = Quantity.VOLUME,
              above = 0,
              to = LARGEST)
          double headspaceL,
      @Arg(name = "hole", help = HOLE, is = Quantity.MILLIMETRE, from = 0.5, to = 10) double holeMm,
      @Arg(name = "depth", help = DEPTH, is = Quantity.LENGTH, above = 0, to = 200) double depthCm,
      @Arg(name = "density", help = DENSITY, is = Quantity.DENSITY, from = 0.95, to = 1.25)
          double densityKgPerL,
      @Arg(
              name = "vacuum",
              help = VACUUM,
              is = Quantity.PRESSURE,
              from = 0,
              to = 50,
              byDefault = "0")
          double vacuumKPa,
      @Arg(name = "coefficient", help = COEFFICIENT, from = 0.4, to = 1, byDefault = "0.7")
          double coefficient) {
    return NailHole.seconds(
        amountMl, headspaceL, holeMm, depthCm, densityKgPerL, vacuumKPa, coefficient);
  }

  /** Largest sample of a tight barrel. */
  @CellarFunction(
      summary = "How much runs from a nail hole until the vacuum of a tight barrel stops it.",
      gives = Quantity.MILLILITRE,
      formula =
          "Boyle: headspace × (h − vacuum)/(101.325 − h), h = density × 9.80665 m/s² × depth, all"
              + " in kPa.",
      source = "Boyle's law at a steady temperature; air at 101.325 kPa.",
      example = "BARREL.SAMPLEMAX(2;30;1.01)",
      note =
          "After that the hole sucks air in: set the nail before. In mL in both systems of units."
              + " The fuller the barrel, the smaller the sample.",
      caution = FLAMMABLE)
  public static double sampleMax(
      @Arg(
              name = "headspace",
              help = "Volume of the headspace",
              is = Quantity.VOLUME,
              above = 0,
              to = LARGEST)
          double headspaceL,
      @Arg(name = "depth", help = DEPTH, is = Quantity.LENGTH, above = 0, to = 200) double depthCm,
      @Arg(name = "density", help = DENSITY, is = Quantity.DENSITY, from = 0.95, to = 1.25)
          double densityKgPerL,
      @Arg(
              name = "vacuum",
              help = VACUUM,
              is = Quantity.PRESSURE,
              from = 0,
              to = 50,
              byDefault = "0")
          double vacuumKPa) {
    return NailHole.most(headspaceL, depthCm, densityKgPerL, vacuumKPa);
  }

  /** Pressure to push a sample out. */
  @CellarFunction(
      summary =
          "Gas pressure to add in the headspace so that a hole held back by vacuum begins to run.",
      gives = Quantity.PRESSURE,
      formula = "vacuum − density × 9.80665 m/s² × depth; 0 if it runs by itself.",
      source = "Hydrostatics. Nothing above 15 kPa is given: common practice, no source.",
      example = "BARREL.PUSH(20;1.01;5)",
      note = "Opening the bung for a moment does the same without pressure.",
      caution = BURST + " " + FLAMMABLE)
  public static double push(
      @Arg(name = "depth", help = DEPTH, is = Quantity.LENGTH, above = 0, to = 200) double depthCm,
      @Arg(name = "density", help = DENSITY, is = Quantity.DENSITY, from = 0.95, to = 1.25)
          double densityKgPerL,
      @Arg(name = "vacuum", help = VACUUM, is = Quantity.PRESSURE, above = 0, to = 50)
          double vacuumKPa) {
    return NailHole.push(depthCm, densityKgPerL, vacuumKPa);
  }

  /** Shank of a nail. */
  @CellarFunction(
      summary = "Thickness of the shank of a nail, to match a drill to it.",
      gives = Quantity.MILLIMETRE,
      formula = "Table of sizes.",
      source = NAILS,
      example = "BARREL.NAIL(4)",
      note =
          "In mm in both systems of units. Take stainless steel: iron blackens mead. Makers differ"
              + " by a few hundredths of a millimetre; measure yours.",
      caution = FLAMMABLE)
  public static double nail(
      @Arg(name = "penny", help = PENNY, is = Quantity.PENNY, from = 2, to = 16) double penny,
      @Arg(name = "kind", help = "Kind of nail", byDefault = "common") Nail kind) {
    return NailSizes.shankMm(penny, kind);
  }

  /** Play of a nail in its hole. */
  @CellarFunction(
      summary = "Play between a drilled hole and the nail that shall close it.",
      gives = Quantity.MILLIMETRE,
      formula = "drill − BARREL.NAIL.",
      source = NAILS,
      example = "BARREL.CLEARANCE(2.778;4)",
      note =
          "A 4d common nail in a 7/64 in (2.778 mm) hole has 0.26 mm of play: common practice, no"
              + " source. Less than 0: the nail would split the wood. Wet wood swells and closes"
              + " the rest.\n"
              + "Take stainless steel: iron blackens mead.",
      caution = FLAMMABLE)
  public static double clearance(
      @Arg(name = "drill", help = HOLE, is = Quantity.MILLIMETRE, from = 0.5, to = 10)
          double drillMm,
      @Arg(name = "penny", help = PENNY, is = Quantity.PENNY, from = 2, to = 16) double penny,
      @Arg(name = "kind", help = "Kind of nail", byDefault = "common") Nail kind) {
    return drillMm - nail(penny, kind);
  }
}
