package meadcell.barrel;

import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/**
 * A cask by its outside sizes.
 *
 * @param headCm diameter of a head over the stave ends, cm
 * @param bilgeCm diameter at the bilge, cm
 * @param lengthCm length of the staves, cm
 * @param staveCm thickness of staves and heads, cm
 * @param crozeCm from the end of a stave to the outer face of the head, cm
 * @param shape curve of the staves
 */
public record OutsideCask(
    @Arg(
            name = "head",
            help = "Outside diameter of a head, over the stave ends",
            is = Quantity.LENGTH,
            from = Cask.NARROWEST,
            to = Cask.WIDEST)
        double headCm,
    @Arg(
            name = "bilge",
            help = "Outside diameter at the bilge",
            is = Quantity.LENGTH,
            from = Cask.NARROWEST,
            to = Cask.WIDEST)
        double bilgeCm,
    @Arg(
            name = "length",
            help = "Outside length of the staves",
            is = Quantity.LENGTH,
            from = Cask.NARROWEST,
            to = Cask.LONGEST)
        double lengthCm,
    @Arg(
            name = "stave",
            help = "Thickness of staves and heads",
            is = Quantity.LENGTH,
            from = 0.5,
            to = 10,
            byDefault = 2.7)
        double staveCm,
    @Arg(
            name = "croze",
            help = "From the end of a stave to the outer face of the head",
            is = Quantity.LENGTH,
            from = 0.5,
            to = 15,
            byDefault = 4)
        double crozeCm,
    @Cask.Curve Cask.Shape shape) {

  /** The inside that staves and crozes leave. */
  Cask inside() {
    double head = headCm - 2 * staveCm;
    double length = lengthCm - 2 * (crozeCm + staveCm);
    if (head < Cask.NARROWEST || length < Cask.NARROWEST) {
      throw new Refusal(BarrelReason.INSIDE_TOO_SMALL)
          .with("least", Cask.NARROWEST, Quantity.LENGTH);
    }
    return new Cask(head, bilgeCm - 2 * staveCm, length, shape);
  }
}
