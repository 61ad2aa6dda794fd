package meadcell.must;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import meadcell.catalogue.Refusal;
import meadcell.honey.Honey;

/**
 * What goes into a must: its liquid part (all but fibre), what is dissolved in that, and the sugar.
 *
 * @param ndb number in the USDA database, empty for honey and water
 * @param waterPercent water in the edible part
 * @param sugarsPercent fermentable sugars in the edible part
 * @param fibrePercent the part that does not become liquid
 * @param refusePercent stones, stems, cores and peel of the whole
 * @param brix dissolved solids of the liquid part
 */
@SuppressWarnings("ReferenceEquality") // constants of Ingredient, as of an enum
record Ingredient(
    String name,
    String ndb,
    double waterPercent,
    OptionalDouble sugarsPercent,
    double fibrePercent,
    double refusePercent,
    OptionalDouble brix) {

  private static final double MEAN_MOISTURE = Honey.MEAN_MOISTURE;
  private static final double FERMENTABLE = Honey.FERMENTABLE;

  static final Ingredient WATER = pure("water", "", 100, 0, 0);
  static final Ingredient HONEY =
      pure(
          "honey",
          "",
          MEAN_MOISTURE,
          Honey.sugar(100, MEAN_MOISTURE, FERMENTABLE),
          100 - MEAN_MOISTURE);

  /** Granulated sugar: USDA Standard Reference 26. */
  static final Ingredient SUGAR = pure("sugar", "19335", 0.02, 99.8, 99.98);

  private static final Map<String, Ingredient> FRUITS = readFruits();
  private static final Map<String, Ingredient> ALL = new LinkedHashMap<>(FRUITS);

  static {
    for (Ingredient plain : List.of(HONEY, WATER, SUGAR)) {
      ALL.put(plain.name, plain);
    }
  }

  private static Ingredient pure(
      String name, String ndb, double water, double sugars, double brix) {
    return new Ingredient(
        name, ndb, water, OptionalDouble.of(sugars), 0, 0, OptionalDouble.of(brix));
  }

  private static Map<String, Ingredient> readFruits() {
    Map<String, Ingredient> fruits = new LinkedHashMap<>();
    try (InputStream in = Ingredient.class.getResourceAsStream("/meadcell/must/fruit.tsv")) {
      new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.split("\t", -1))
          .forEach(
              cells ->
                  fruits.put(
                      key(cells[0]),
                      new Ingredient(
                          cells[0],
                          cells[1],
                          number(cells[2]).orElseThrow(),
                          number(cells[3]),
                          number(cells[4]).orElseThrow(),
                          number(cells[5]).orElse(0),
                          number(cells[6]))));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return fruits;
  }

  private static OptionalDouble number(String cell) {
    return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
  }

  /** Capitals, spaces and hyphens do not matter. */
  private static String key(String name) {
    return name.toLowerCase(Locale.ROOT).replaceAll("[ -]", "");
  }

  static Collection<Ingredient> fruits() {
    return FRUITS.values();
  }

  /** A fruit of the table, or another of which enough is known. */
  static Ingredient fruit(
      String name, OptionalDouble brix, OptionalDouble sugars, OptionalDouble refuse) {
    return find(name, MustReason.UNKNOWN_FRUIT, FRUITS, brix, sugars, refuse);
  }

  /** An ingredient of the table, or another of which enough is known. */
  static Ingredient named(
      String name, OptionalDouble brix, OptionalDouble sugars, OptionalDouble refuse) {
    return find(name, MustReason.UNKNOWN_INGREDIENT, ALL, brix, sugars, refuse);
  }

  private static Ingredient find(
      String name,
      MustReason unknown,
      Map<String, Ingredient> known,
      OptionalDouble brix,
      OptionalDouble sugars,
      OptionalDouble refuse) {
    Ingredient found = known.get(key(name));
    if (found != null) {
      boolean same = refuse.isEmpty() || refuse.getAsDouble() == found.refusePercent;
      return same ? found : found.withRefuse(refuse.getAsDouble());
    }
    List<String> names = new ArrayList<>();
    known.values().forEach(ingredient -> names.add(ingredient.name));
    Refusal refusal = Refusal.unknownName(unknown, name, names);
    boolean mayBeMistyped = refuse.isEmpty() && refusal.suggestion().isPresent();
    if (brix.isEmpty() && sugars.isEmpty() || mayBeMistyped) {
      throw refusal;
    }
    // all of the flesh counts as juice: of its fibre nothing is known
    double solids = brix.orElse(sugars.orElse(0));
    return new Ingredient(name, "", 100 - solids, sugars, 0, refuse.orElse(0), brix);
  }

  private Ingredient withRefuse(double percent) {
    return new Ingredient(name, ndb, waterPercent, sugarsPercent, fibrePercent, percent, brix);
  }

  /** Whether its composition does not change with the year. */
  boolean isPlain() {
    return isHoney() || this == WATER || this == SUGAR;
  }

  boolean isHoney() {
    return this == HONEY;
  }

  /** kJ/(kg·K). */
  double specificHeat() {
    if (isHoney()) {
      return 2.26;
    }
    if (this == SUGAR) {
      return 1.24;
    }
    return (4.19 * waterPercent + 0.84 * (100 - waterPercent)) / 100;
  }

  double edibleKg(double massKg) {
    return massKg * (1 - refusePercent / 100);
  }

  double liquidKg(double edibleKg) {
    return edibleKg * (1 - fibrePercent / 100);
  }

  /** The dissolved solids of the liquid, %: as measured, or the table's. */
  double brix(OptionalDouble measured) {
    if (measured.isEmpty() && brix.isEmpty()) {
      throw new Refusal(MustReason.NO_BRIX).with("fruit", name);
    }
    return measured.orElseGet(brix::getAsDouble);
  }

  double sugarKg(double edibleKg, OptionalDouble measuredPercent) {
    if (measuredPercent.isEmpty() && sugarsPercent.isEmpty()) {
      throw new Refusal(MustReason.NO_SUGARS).with("fruit", name);
    }
    return edibleKg * measuredPercent.orElseGet(sugarsPercent::getAsDouble) / 100;
  }
}
