package meadcell.barrel;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;

/** Samples from a small hole in the head of a barrel, and the nail that closes it. */
@Family(name = "BARREL")
public final class Sampling {
  private static final String HOLE = "Bore of the hole (a 7/64 in drill is 2.778 mm)";
  private static final String VACUUM = "Vacuum in the headspace, below the air outside";
  private static final String TORRICELLI =
      "Torricelli and the discharge coefficients 0.62 (sharp edge) and 0.82 (short tube):"
          + " Encyclopaedia Britannica, 11th ed., vol. 14, Hydraulics §§ 17, 49. The default 0.7"
          + " lies between, for a hole ten times as long as wide: common practice, no source."
          + " Standard gravity 9.80665 m/s²; air at 101.325 kPa.";
  private static final String FLAMMABLE =
      "Sanitising alcohol is flammable: keep flames, sparks and running tools away and let hole,"
          + " nail and hands dry first.";
  private static final String NAILS =
      "Common nails of 10d and 16d: International Residential Code, table R602.3(1), as quoted in"
          + " building design. All other sizes: common practice, no source; printed lists differ by"
          + " some hundredths of a millimetre.";
  private static final String PENNY = "Penny size (2 to 10, 12 or 16)";

  @Arg(name = "hole", help = HOLE, is = Quantity.MILLIMETRE, from = 0.5, to = 10)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Hole {}

  @Arg(
      name = "depth",
      help = "How far the hole lies below the surface",
      is = Quantity.LENGTH,
      above = 0,
      to = 200)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Depth {}

  @Arg(name = "vacuum", help = VACUUM, is = Quantity.PRESSURE, from = 0, to = 50, byDefault = 0)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Vacuum {}

  @Arg(
      name = "coefficient",
      help = "Discharge coefficient of the hole",
      from = 0.4,
      to = 1,
      byDefault = 0.7)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Coefficient {}

  @Arg(name = "penny", help = PENNY, is = Quantity.PENNY, from = 2, to = 16)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Penny {}

  @Arg(name = "kind", help = "Kind of nail", byDefaultWord = "common")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Kind {}

  private Sampling() {}

  /** The kinds of nail. */
  public enum Nail {
    /** The thickest shank. */
    COMMON,
    /** A thinner shank. */
    BOX,
    /** The thinnest shank. */
    FINISHING
  }

  /**
   * {@return first flow from a nail hole, mL/s}
   *
   * @param holeMm bore of the hole (a 7/64 in drill is 2.778 mm), mm
   * @param depthCm how far the hole lies below the surface, cm
   * @param densityKgPerL density of the mead, kg/L
   * @param vacuumKPa vacuum in the headspace, below the air outside, kPa
   * @param coefficient discharge coefficient of the hole
   */
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
      @Hole double holeMm,
      @Depth double depthCm,
      @Shared.Density double densityKgPerL,
      @Vacuum double vacuumKPa,
      @Coefficient double coefficient) {
    return NailHole.flow(
        holeMm, NailHole.driving(depthCm, densityKgPerL, vacuumKPa), densityKgPerL, coefficient);
  }

  /**
   * {@return time to draw a sample, s}
   *
   * @param amountMl size of the sample, mL
   * @param headspaceL volume of the headspace, L
   * @param holeMm bore of the hole (a 7/64 in drill is 2.778 mm), mm
   * @param depthCm how far the hole lies below the surface, cm
   * @param densityKgPerL density of the mead, kg/L
   * @param vacuumKPa vacuum in the headspace, below the air outside, kPa
   * @param coefficient discharge coefficient of the hole
   */
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
      @Shared.Headspace double headspaceL,
      @Hole double holeMm,
      @Depth double depthCm,
      @Shared.Density double densityKgPerL,
      @Vacuum double vacuumKPa,
      @Coefficient double coefficient) {
    return NailHole.seconds(
        amountMl, headspaceL, holeMm, depthCm, densityKgPerL, vacuumKPa, coefficient);
  }

  /**
   * {@return largest sample of a tight barrel, mL}
   *
   * @param headspaceL volume of the headspace, L
   * @param depthCm how far the hole lies below the surface, cm
   * @param densityKgPerL density of the mead, kg/L
   * @param vacuumKPa vacuum in the headspace, below the air outside, kPa
   */
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
      @Shared.Headspace double headspaceL,
      @Depth double depthCm,
      @Shared.Density double densityKgPerL,
      @Vacuum double vacuumKPa) {
    return NailHole.most(headspaceL, depthCm, densityKgPerL, vacuumKPa);
  }

  /**
   * {@return pressure to push a sample out, kPa}
   *
   * @param depthCm how far the hole lies below the surface, cm
   * @param densityKgPerL density of the mead, kg/L
   * @param vacuumKPa vacuum in the headspace, below the air outside, kPa
   */
  @CellarFunction(
      summary =
          "Gas pressure to add in the headspace so that a hole held back by vacuum begins to run.",
      gives = Quantity.PRESSURE,
      formula = "vacuum − density × 9.80665 m/s² × depth; 0 if it runs by itself.",
      source = "Hydrostatics. Nothing above 15 kPa is given: common practice, no source.",
      example = "BARREL.PUSH(20;1.01;5)",
      note = "Opening the bung for a moment does the same without pressure.",
      caution =
          "A cask under pressure can burst or throw its bung or head. Use a regulator and a relief"
              + " valve, stay out of the way of bung and head, and follow local codes and licensed"
              + " practice."
              + " "
              + FLAMMABLE)
  public static double push(
      @Depth double depthCm,
      @Shared.Density double densityKgPerL,
      @Arg(name = "vacuum", help = VACUUM, is = Quantity.PRESSURE, above = 0, to = 50)
          double vacuumKPa) {
    return NailHole.push(depthCm, densityKgPerL, vacuumKPa);
  }

  /**
   * {@return shank of a nail, mm}
   *
   * @param penny penny size (2 to 10, 12 or 16), penny
   * @param kind kind of nail
   */
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
  public static double nail(@Penny int penny, @Kind Nail kind) {
    return NailSizes.shankMm(penny, kind);
  }

  /**
   * {@return play of a nail in its hole, mm}
   *
   * @param drillMm bore of the hole (a 7/64 in drill is 2.778 mm), mm
   * @param penny penny size (2 to 10, 12 or 16), penny
   * @param kind kind of nail
   */
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
      @Penny int penny,
      @Kind Nail kind) {
    return drillMm - nail(penny, kind);
  }
}
