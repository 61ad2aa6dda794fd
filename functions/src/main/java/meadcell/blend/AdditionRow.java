package meadcell.blend;

import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.RowNumber;

/**
 * Something that was added to a vessel, and only an analysis tells with what effect.
 *
 * @param row its place in the table
 * @param vessel vessel or liquid, as transfers name it
 * @param day day number
 * @param property what it changed, as analyses name it, or {@link Additions#EVERYTHING}
 */
public record AdditionRow(
    @RowNumber int row,
    @Arg(name = "vessel", help = "Vessel or liquid, as transfers name it") String vessel,
    @Arg(name = "day", help = "Day", is = Quantity.DATE) double day,
    @Arg(
            name = "property",
            help = "What it changed, as analyses name it",
            byDefaultWord = Additions.EVERYTHING)
        String property) {}
