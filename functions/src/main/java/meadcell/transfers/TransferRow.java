package meadcell.transfers;

import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.RowNumber;

/**
 * A row of a log of transfers.
 *
 * @param row its place in the table
 * @param from the vessel it was drawn from
 * @param to the vessel it was put into
 * @param volumeL how much, L, not below 0
 * @param day day number
 * @param uncertaintyL standard uncertainty of the volume, L; may be blank
 * @param order its place among the rows of its day, the lowest first; may be blank
 */
public record TransferRow(
    @RowNumber int row,
    @Arg(name = "from", help = "Vessel it was drawn from") String from,
    @Arg(name = "to", help = "Vessel it was put into") String to,
    @Arg(name = "volume", help = "How much", is = Quantity.VOLUME, from = 0) double volumeL,
    @Arg(name = "day", help = "Day", is = Quantity.DATE) double day,
    @Arg(
            name = "uncertainty",
            help = "Standard uncertainty of the volume",
            is = Quantity.VOLUME,
            above = 0,
            zeroIsBlank = true)
        OptionalDouble uncertaintyL,
    @Arg(
            name = "order",
            help =
                "Place among the rows of its day, the lowest first; blank: after the row above it")
        OptionalDouble order) {
  /**
   * Of a volume whose uncertainty is not told: 0.5 %, common practice, no source. A dip read to 2
   * mm in a lying cask of 225 L is ± 1 L.
   */
  private static final double RELATIVE_UNCERTAINTY = 0.005;

  /** {@return the variance of the volume, L²} */
  public double varianceL2() {
    double u = uncertaintyL.orElse(RELATIVE_UNCERTAINTY * volumeL);
    return u * u;
  }
}
