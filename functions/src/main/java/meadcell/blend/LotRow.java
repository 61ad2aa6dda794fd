package meadcell.blend;

import meadcell.catalogue.Arg;
import meadcell.catalogue.Cell;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.RowNumber;

/**
 * A row of the stock that a blend is planned from.
 *
 * @param row its place in the table
 * @param availableL how much there is, L, not below 0
 * @param cost per unit of volume; read only where costs matter
 * @param properties what mixes by volume; read only where a target asks for it
 */
public record LotRow(
    @RowNumber int row,
    @Arg(name = "available", help = "Volume available", is = Quantity.VOLUME, from = 0)
        double availableL,
    @Arg(name = "cost", help = "Cost of a unit of volume") Cell cost,
    @Arg(name = "property", help = "A property that mixes by volume") Cell[] properties) {}
