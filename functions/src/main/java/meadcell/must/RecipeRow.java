package meadcell.must;

import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.RowNumber;

/**
 * A row of a recipe.
 *
 * @param row its place in the table
 * @param ingredient honey, water, sugar or a fruit of MUST.FRUITS
 * @param massKg mass, kg, 0 to 1e6
 * @param strength moisture of honey, 10 to 30 %, or °Brix of juice, 1 to 85
 * @param sugars sugars of the fruit's flesh, 1 to 100 %
 */
public record RecipeRow(
    @RowNumber int row,
    @Arg(name = "ingredient", help = "Ingredient") String ingredient,
    @Arg(name = "mass", help = "Mass", is = Quantity.MASS, from = 0, to = 1e6) double massKg,
    @Arg(name = "strength", help = "Moisture of honey, 10 to 30 %, or °Brix of juice, 1 to 85")
        OptionalDouble strength,
    @Arg(name = "sugars", help = "Sugars of the flesh", is = Quantity.PERCENT, from = 1, to = 100)
        OptionalDouble sugars) {}
