package meadcell.blend;

import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.RowNumber;

/**
 * A row of the cellar's analyses.
 *
 * @param row its place in the table
 * @param lot vessel or liquid, as transfers name it
 * @param day day of the sample, day number
 * @param property what was measured
 * @param value what was found
 * @param uncertainty its standard uncertainty; may be blank
 */
public record AnalysisRow(
    @RowNumber int row,
    @Arg(name = "lot", help = "Vessel or liquid, as transfers name it") String lot,
    @Arg(name = "day", help = "Day of the sample", is = Quantity.DATE) double day,
    @Arg(name = "property", help = "What was measured") String property,
    @Arg(name = "value", help = "What was found", from = 0, to = 1e6) double value,
    @Arg(
            name = "uncertainty",
            help = "Standard uncertainty of the value",
            above = 0,
            to = 1e6,
            zeroIsBlank = true)
        OptionalDouble uncertainty) {}
