package meadcell.must;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import meadcell.catalogue.General;
import meadcell.catalogue.Place;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;
import meadcell.density.Sucrose;
import meadcell.honey.Honey;

/** A must by its ingredients. */
@SuppressWarnings("ReferenceEquality") // constants of Ingredient, as of an enum
final class Recipe {
  private static final Range MOISTURE = Range.between(10, 30);
  private static final Range BRIX = Range.between(1, 85);

  private record Part(
      Ingredient ingredient, double massKg, OptionalDouble strength, OptionalDouble sugars) {

    double liquidKg() {
      return ingredient.liquidKg(ingredient.edibleKg(massKg));
    }

    double brix() {
      return ingredient.isHoney() && strength.isPresent()
          ? 100 - strength.getAsDouble()
          : ingredient.brix(strength);
    }

    /** Sugars not given go with the solids. */
    double sugarKg() {
      boolean scaled = sugars.isEmpty() && strength.isPresent() && ingredient.brix().isPresent();
      double ripeness = scaled ? brix() / ingredient.brix().getAsDouble() : 1;
      return ripeness * ingredient.sugarKg(ingredient.edibleKg(massKg), sugars);
    }
  }

  private final List<Part> parts = new ArrayList<>();

  Recipe(Rows<RecipeRow> rows) {
    for (RecipeRow row : rows) {
      parts.add(part(row));
    }
  }

  private static Part part(RecipeRow row) {
    Ingredient ingredient =
        Ingredient.named(row.ingredient(), row.strength(), row.sugars(), row.refuse());
    boolean honey = ingredient.isHoney();
    Range allowed = honey ? MOISTURE : BRIX;
    if (row.strength().isPresent() && !allowed.contains(row.strength().getAsDouble())) {
      Quantity quantity = honey ? Quantity.PERCENT : Quantity.BRIX;
      throw new Refusal(General.OUTSIDE)
          .about("recipe", new Place(row.row(), 3, honey ? "moisture" : "strength"))
          .with("value", row.strength().getAsDouble(), quantity)
          .with("range", allowed, quantity);
    }
    boolean fixed = ingredient == Ingredient.WATER || ingredient == Ingredient.SUGAR;
    if (fixed && (row.strength().isPresent() || row.sugars().isPresent())) {
      throw new Refusal(MustReason.MASS_ONLY)
          .about("recipe", Place.row(row.row()))
          .with("ingredient", ingredient.name());
    }
    return new Part(ingredient, row.massKg(), row.strength(), row.sugars());
  }

  double sugarKg() {
    return parts.stream().mapToDouble(Part::sugarKg).sum();
  }

  Juice liquid() {
    double liquidKg = parts.stream().mapToDouble(Part::liquidKg).sum();
    double solidsKg = parts.stream().mapToDouble(p -> p.liquidKg() * p.brix() / 100).sum();
    if (liquidKg == 0) {
      throw new Refusal(MustReason.EVERY_MASS_0);
    }
    if (solidsKg > liquidKg * Sucrose.massFractionFromGravity(Honey.THICKEST_MUST)) {
      throw new Refusal(MustReason.TOO_THICK)
          .with("solids", 100 * solidsKg / liquidKg, Quantity.PERCENT, 3)
          .with("thickest", Honey.THICKEST_MUST, Quantity.SPECIFIC_GRAVITY);
    }
    return new Juice(liquidKg, solidsKg);
  }
}
