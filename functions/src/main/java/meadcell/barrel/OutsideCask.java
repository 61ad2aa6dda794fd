package meadcell.barrel;

import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;

/**
 * A cask by its outside sizes.
 *
 * @param headCm diameter of a head over the stave ends, cm
 * @param bilgeCm diameter at the bilge, cm
 * @param lengthCm length of the staves, cm
 * @param staveCm thickness of staves and heads, cm; left out: that of a transport barrel, and only
 *     for barrels of that size
 * @param crozeCm from the end of a stave to the outer face of the head, cm
 * @param shape curve of the staves
 */
public record OutsideCask(
    @Cask.Diameter(name = "head", help = "Outside diameter of a head, over the stave ends")
        double headCm,
    @Cask.Diameter(name = "bilge", help = "Outside diameter at the bilge") double bilgeCm,
    @Cask.Length(help = "Outside length of the staves") double lengthCm,
    @Arg(
            name = "stave",
            help =
                "Thickness of staves and heads; left out: 2.7 cm, and refused for a barrel that"
                    + " would then hold less than 180 L or more than 350 L",
            is = Quantity.LENGTH,
            from = 0.5,
            to = 10)
        OptionalDouble staveCm,
    @Arg(
            name = "croze",
            help = "From the end of a stave to the outer face of the head",
            is = Quantity.LENGTH,
            from = 0.5,
            to = 15,
            byDefault = 4)
        double crozeCm,
    @Cask.Curve Cask.Shape shape) {

  /** Stave of a transport barrel of 225 L (common practice, no source). */
  private static final double USUAL_STAVE_CM = 2.7;

  private static final double USUAL_BARREL_L = 225;

  /** Barrels that have such staves: common practice, no source. */
  private static final Range USUAL_L = Range.between(180, 350);

  /** The inside that staves and crozes leave. */
  Cask inside() {
    if (staveCm.isPresent()) {
      return inside(staveCm.getAsDouble());
    }
    Cask usual = inside(USUAL_STAVE_CM);
    double volumeL = usual.volume() / Cask.LITRE;
    if (!USUAL_L.contains(volumeL)) {
      throw new Refusal(BarrelReason.STAVE_UNKNOWN)
          .with("stave", USUAL_STAVE_CM, Quantity.LENGTH)
          .with("usual", USUAL_BARREL_L, Quantity.VOLUME, 3)
          .with("volume", volumeL, Quantity.VOLUME, 3);
    }
    return usual;
  }

  private Cask inside(double staveCm) {
    double head = headCm - 2 * staveCm;
    double length = lengthCm - 2 * (crozeCm + staveCm);
    if (head < Cask.NARROWEST || length < Cask.NARROWEST) {
      throw new Refusal(BarrelReason.INSIDE_TOO_SMALL)
          .with("least", Cask.NARROWEST, Quantity.LENGTH);
    }
    return new Cask(head, bilgeCm - 2 * staveCm, length, shape);
  }
}
