package meadcell.blend;

import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.RowNumber;

/**
 * A vessel as air gets into it.
 *
 * @param row its place in the table
 * @param vessel its name, as transfers have it
 * @param areaCm2PerL wood for each litre, cm²/L; 0 for glass and steel
 * @param capacityL what it holds when full, L; blank where no air stands over the liquid
 * @param bottles 1 for what is filled into bottles; blank for 0
 */
public record AirRow(
    @RowNumber int row,
    @Arg(name = "vessel", help = "Vessel, as transfers name it") String vessel,
    @Arg(
            name = "area",
            help = "Wood for each litre; 0 for glass and steel",
            is = Quantity.SQUARE_CENTIMETRE_PER_LITRE,
            from = 0,
            to = 2000)
        double areaCm2PerL,
    @Arg(
            name = "capacity",
            help = "What it holds when full; blank where gas or a lid keeps the air off",
            is = Quantity.VOLUME,
            above = 0,
            to = 1e6,
            zeroIsBlank = true)
        OptionalDouble capacityL,
    @Arg(name = "bottles", help = "1 for bottles", from = 0, to = 1, byDefault = 0)
        boolean bottles) {}
