package meadcell.must;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import meadcell.catalogue.Numbers;
import meadcell.catalogue.Refusal;
import meadcell.density.Sucrose;
import meadcell.honey.Honey;

/** A must by its ingredients, as a range of cells holds them. */
final class Recipe {

  private record Part(
      Ingredient ingredient, double massKg, OptionalDouble strength, OptionalDouble sugars) {

    double liquidKg() {
      return ingredient.liquidKg(ingredient.edibleKg(massKg));
    }

    double brix() {
      return ingredient == Ingredient.HONEY && strength.isPresent()
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

  Recipe(Object[][] rows) {
    for (int i = 0; i < rows.length; i++) {
      if (!Arrays.stream(rows[i]).allMatch(Objects::isNull)) {
        parts.add(part(rows[i], "recipe, row " + (i + 1) + ": "));
      }
    }
    if (parts.isEmpty()) {
      throw Refusal.wrongKind("recipe has only blank cells.");
    }
  }

  private static Part part(Object[] row, String where) {
    if (row.length < 2 || row.length > 4) {
      throw Refusal.wrongKind(
          "recipe has "
              + row.length
              + " columns; due are ingredient, mass, and if need be moisture or °Brix, and sugars.");
    }
    if (!(row[0] instanceof String name)) {
      throw Refusal.wrongKind(where + "the name of an ingredient is due.");
    }
    Ingredient ingredient = Ingredient.named(name);
    OptionalDouble mass = number(row, 1, 0, 1e6, where + "mass");
    if (mass.isEmpty()) {
      throw Refusal.wrongKind(where + "mass is blank.");
    }
    OptionalDouble strength =
        ingredient == Ingredient.HONEY
            ? number(row, 2, 10, 30, where + "moisture, %,")
            : number(row, 2, 1, 85, where + "°Brix");
    OptionalDouble sugars = number(row, 3, 1, 100, where + "sugars, %,");
    boolean fixed = ingredient == Ingredient.WATER || ingredient == Ingredient.SUGAR;
    if (fixed && (strength.isPresent() || sugars.isPresent())) {
      throw Refusal.inconsistent(where + name + " takes a mass and nothing else.");
    }
    return new Part(ingredient, mass.getAsDouble(), strength, sugars);
  }

  private static OptionalDouble number(
      Object[] row, int column, double from, double to, String what) {
    if (column >= row.length || row[column] == null) {
      return OptionalDouble.empty();
    }
    if (!(row[column] instanceof Double value)) {
      throw Refusal.wrongKind(what + " is the text \"" + row[column] + "\"; a number is due.");
    }
    if (!(value >= from && value <= to)) {
      throw Refusal.outOfRange(
          what
              + " is "
              + Numbers.text(value)
              + "; it must be "
              + Numbers.text(from)
              + " to "
              + Numbers.text(to)
              + ".");
    }
    return OptionalDouble.of(value);
  }

  double sugarKg() {
    return parts.stream().mapToDouble(Part::sugarKg).sum();
  }

  Liquid liquid() {
    double liquidKg = parts.stream().mapToDouble(Part::liquidKg).sum();
    double solidsKg = parts.stream().mapToDouble(p -> p.liquidKg() * p.brix() / 100).sum();
    if (liquidKg == 0) {
      throw Refusal.inconsistent("recipe holds nothing: every mass is 0.");
    }
    if (solidsKg > liquidKg * Sucrose.massFractionFromGravity(Honey.THICKEST_MUST)) {
      throw Refusal.inconsistent(
          "recipe is "
              + Numbers.text(100 * solidsKg / liquidKg, 3)
              + " % solids, above the SG of "
              + Honey.THICKEST_MUST
              + " up to which a mixture is a must. Is the water missing?");
    }
    return new Liquid(liquidKg, solidsKg);
  }
}
