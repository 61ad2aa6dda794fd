package meadcell.blend;

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
 */
public record TransferRow(
    @RowNumber int row,
    @Arg(name = "from", help = "Vessel it was drawn from") String from,
    @Arg(name = "to", help = "Vessel it was put into") String to,
    @Arg(name = "volume", help = "How much", is = Quantity.VOLUME, from = 0) double volumeL,
    @Arg(name = "day", help = "Day", is = Quantity.DATE) double day) {}
