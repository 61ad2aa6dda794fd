package meadcell.must;

import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.RowNumber;

/**
 * A row of a recipe.
 *
 * @param row its place in the table
 * @param ingredient honey, water, sugar, a fruit of MUST.FRUITS or, with its °Brix, anything else
 * @param massKg mass, kg, 0 to 1e6
 * @param strength moisture of honey, 10 to 30 %, or °Brix of juice, 1 to 85
 * @param sugars sugars of the fruit's flesh, 1 to 100 %
 * @param refuse what of the whole is no flesh, 0 to 90 %
 */
public record RecipeRow(
    @RowNumber int row,
    @Arg(name = "ingredient", help = "Ingredient") String ingredient,
    @Arg(name = "mass", help = "Mass", is = Quantity.MASS, from = 0, to = 1e6) double massKg,
    @Arg(
            name = "strength",
            help = "Moisture of honey, 10 to 30 %, or °Brix of juice, 1 to 85",
            zeroIsBlank = true)
        OptionalDouble strength,
    @Arg(
            name = "sugars",
            help = "Sugars of the flesh",
            is = Quantity.PERCENT,
            from = 1,
            to = 100,
            zeroIsBlank = true)
        OptionalDouble sugars,
    @Arg(
            name = "refuse",
            help = "Stones, stems or peel of the whole; 0 for juice or syrup",
            is = Quantity.PERCENT,
            from = 0,
            to = 90)
        OptionalDouble refuse) {}
