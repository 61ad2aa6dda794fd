package meadcell.tank;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** Contents of upright tanks. */
@Family(name = "TANK", about = "Contents of upright tanks.", says = TankReason.class)
public final class Tank {
  private Tank() {}

  /**
   * {@return contents from a dipstick, L}
   *
   * @param diameterCm inside diameter, cm
   * @param heightCm height of the cylindrical part, cm
   * @param coneCm height of the cone below; 0 for a flat bottom, cm
   * @param dipCm wet depth from the lowest point, cm
   */
  @CellarFunction(
      summary = "Contents of an upright cylindrical tank with a cone below, from the wet depth.",
      gives = Quantity.VOLUME,
      formula =
          "Within the cone π/12 · diameter² · dip³ / cone²; above it π/12 · diameter² · cone + π/4 ·"
              + " diameter² · (dip − cone).",
      source = "Geometry; checked against D. Jones, Calculating Tank Volume, vertical tanks.",
      example = "TANK.CONTENTS(100;150;40;120)",
      note =
          "All sizes are inside sizes. Dip through the middle, down to the tip of the cone: a dip"
              + " beside the wall misses the cone.",
      caution =
          "Carbon dioxide stands in a tank long after the mead is out: never enter or lean into one"
              + " that has not been aired and measured.")
  public static double contents(
      @Arg(name = "diameter", help = "Inside diameter", is = Quantity.LENGTH, above = 0, to = 2000)
          double diameterCm,
      @Arg(
              name = "height",
              help = "Height of the cylindrical part",
              is = Quantity.LENGTH,
              above = 0,
              to = 3000)
          double heightCm,
      @Arg(
              name = "cone",
              help = "Height of the cone below; 0 for a flat bottom",
              is = Quantity.LENGTH,
              from = 0,
              to = 1000)
          double coneCm,
      @Arg(
              name = "dip",
              help = "Wet depth from the lowest point",
              is = Quantity.LENGTH,
              above = 0,
              to = 4000)
          double dipCm) {
    if (dipCm > coneCm + heightCm) {
      throw new Refusal(TankReason.DIP_ABOVE_TOP)
          .with("dip", dipCm, Quantity.LENGTH)
          .with("top", coneCm + heightCm, Quantity.LENGTH);
    }
    double circle = Math.PI / 4 * diameterCm * diameterCm;
    double inCone = Math.min(dipCm, coneCm);
    double filled = coneCm == 0 ? 0 : inCone / coneCm;
    return (circle * filled * filled * inCone / 3 + circle * (dipCm - inCone)) / 1000;
  }
}
