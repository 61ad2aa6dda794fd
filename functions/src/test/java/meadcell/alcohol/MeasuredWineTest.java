package meadcell.alcohol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Stream;
import meadcell.measured.MeasuredTable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Gravity, alcohol and sugar of 6,497 wines by a laboratory, against what is made of the first two.
 */
class MeasuredWineTest {
  private static final double WATER = 0.998203;
  private static final OptionalDouble LEFT_OUT = OptionalDouble.empty();

  private record Wine(String colour, double gravity, double sugar, double abv) {
    double sugarFree() {
      return Extract.dryExtract(gravity, abv) - sugar;
    }

    Extract.SugarLimits limits(OptionalDouble sugarFree, OptionalDouble uSugarFree) {
      double original = Alcohol.original(abv, gravity);
      return Extract.sugarLeftLimits(original, gravity, sugarFree, uSugarFree, 0.0005);
    }
  }

  private static List<Wine> wines;

  @BeforeAll
  static void read() {
    wines =
        MeasuredTable.rows("wines").stream()
            .map(
                row ->
                    new Wine(
                        row[0],
                        Double.parseDouble(row[1]) / WATER,
                        Double.parseDouble(row[2]),
                        Double.parseDouble(row[3])))
            .toList();
    assertEquals(6497, wines.size());
  }

  private static Stream<Wine> of(String colour) {
    return wines.stream().filter(wine -> wine.colour.equals(colour));
  }

  private static double percent(Stream<Wine> some, Predicate<Wine> which) {
    return 100 * some.mapToDouble(wine -> which.test(wine) ? 1 : 0).average().orElseThrow();
  }

  /** Sugar-free extract by density is that of a white wine, and the same in dry and sweet ones. */
  @Test
  void dryExtractHoldsTheSugarThatWasMeasured() {
    double[] from = {0, 2, 4, 8, 12, 16};
    double[] to = {2, 4, 8, 12, 16, 20};
    for (int i = 0; i < from.length; i++) {
      double low = from[i];
      double high = to[i];
      double mean =
          of("white")
              .filter(wine -> wine.sugar > low && wine.sugar <= high)
              .mapToDouble(Wine::sugarFree)
              .average()
              .orElseThrow();
      System.out.printf(
          "white wines of %.0f to %.0f g/L of sugar: %.1f g/L of other extract%n", low, high, mean);
      assertEquals(19, mean, 1.1);
    }
  }

  /** Made for plain mead, whose other extract is much like a white wine's, a red one's more. */
  @Test
  void sugarLeftLiesWithinItsLimits() {
    for (String colour : new String[] {"white", "red"}) {
      double within =
          percent(
              of(colour),
              wine -> {
                Extract.SugarLimits limits = wine.limits(LEFT_OUT, LEFT_OUT);
                return limits.low() <= wine.sugar && wine.sugar <= limits.high();
              });
      double above =
          percent(of(colour), wine -> wine.sugar > wine.limits(LEFT_OUT, LEFT_OUT).high());
      System.out.printf(
          "%s wines: sugar within its limits %.1f %%, above the high one %.2f %%%n",
          colour, within, above);
      assertTrue(within >= (colour.equals("white") ? 99 : 89), () -> colour + " " + within);
      assertTrue(above <= 0.4, () -> colour + " " + above);
    }
  }

  /** The other extract as the dry wines have it: 19.8 g/L, standard deviation 2.3. */
  @Test
  void aCellarsOwnSugarFreeExtractNarrowsTheLimits() {
    double within =
        percent(
            of("white").filter(wine -> wine.sugar > 2),
            wine -> {
              Extract.SugarLimits limits =
                  wine.limits(OptionalDouble.of(19.8), OptionalDouble.of(2.3));
              return limits.low() <= wine.sugar && wine.sugar <= limits.high();
            });
    assertTrue(within >= 97, () -> "only " + within + " %");
  }
}
