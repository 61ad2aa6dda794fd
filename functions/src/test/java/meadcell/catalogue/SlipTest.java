package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which slip a number out of range tells of, on both sides of each limit; and how it is said. */
class SlipTest {
  @ParameterizedTest
  @CsvSource(
      nullValues = "-",
      value = {
        "SPECIFIC_GRAVITY, METRIC, 0, ZERO_OR_BLANK, NaN",
        "SPECIFIC_GRAVITY, METRIC, 899.9, -, -",
        "SPECIFIC_GRAVITY, METRIC, 900, THOUSANDFOLD, 0.9",
        "SPECIFIC_GRAVITY, METRIC, 1300, THOUSANDFOLD, 1.3",
        "SPECIFIC_GRAVITY, METRIC, 1300.1, -, -",
        "SPECIFIC_GRAVITY, METRIC, 1.3, -, -",
        "SPECIFIC_GRAVITY, METRIC, 1.31, BRIX_FOR_GRAVITY, NaN",
        "SPECIFIC_GRAVITY, METRIC, 50, BRIX_FOR_GRAVITY, NaN",
        "SPECIFIC_GRAVITY, METRIC, 50.1, -, -",
        "SPECIFIC_GRAVITY, METRIC, -1, -, -",
        "PERCENT, METRIC, 0.12, PERCENT_FORMAT, 12",
        "PERCENT_VOL, US, 0.999, PERCENT_FORMAT, 99.9",
        "PERCENT_MASS, METRIC, 1, -, -",
        "BRIX, METRIC, -0.1, -, -",
        "TEMPERATURE, METRIC, 45, -, -",
        "TEMPERATURE, METRIC, 45.1, FAHRENHEIT, NaN",
        "TEMPERATURE, METRIC, 120, FAHRENHEIT, NaN",
        "TEMPERATURE, METRIC, 120.1, -, -",
        "TEMPERATURE, US, 68, -, -",
        "VOLUME, METRIC, 0.5, -, -",
      })
  void isTold(Quantity quantity, UnitSystem system, double value, Slip.What what, Double meant) {
    Optional<Slip> slip = quantity.likelySlip(value, system);
    assertEquals(Optional.ofNullable(what), slip.map(Slip::what));
    if (what != null) {
      assertEquals(meant, slip.orElseThrow().meant(), 1e-12);
    }
  }

  @Test
  void onlyAGravityHasLimitsOfWhatACellarMeasures() {
    for (Quantity quantity : Quantity.values()) {
      assertEquals(quantity == Quantity.SPECIFIC_GRAVITY, quantity.plausible().isPresent());
    }
    assertEquals(Range.between(0.98, 1.3), Quantity.SPECIFIC_GRAVITY.plausible().orElseThrow());
    assertEquals(Unit.named("L"), Quantity.VOLUME.unitIn(UnitSystem.METRIC));
    assertEquals(Unit.named("gal"), Quantity.VOLUME.unitIn(UnitSystem.US));
    assertTrue(Unit.named("L").isPresent());
  }

  @Test
  void rangesAreSaidWithTheLimitsTheyHave() {
    double low = Double.NEGATIVE_INFINITY;
    double high = Double.POSITIVE_INFINITY;
    assertEquals("2 to 45", text(Range.between(2, 45)));
    assertEquals("at least 2, below 9", text(new Range(2, high, low, 9)));
    assertEquals("above 2, at most 9", text(new Range(low, 9, 2, high)));
    assertEquals("", text(new Range(low, high, low, high)));
    Range open = new Range(low, high, 2, 9);
    assertEquals(2, open.lowest());
    assertEquals(9, open.highest());
    assertEquals(2, Range.between(2, 45).lowest());
    assertEquals(45, Range.between(2, 45).highest());
    assertTrue(Range.between(2, 45).contains(2) && Range.between(2, 45).contains(45));
    assertTrue(!open.contains(2) && !open.contains(9) && open.contains(3));
  }

  private static String text(Range range) {
    return range.text(Quantity.NUMBER, UnitSystem.METRIC, Fresh.words("en"));
  }

  @Test
  void statementsSayWhatTheyHold() {
    Statement statement =
        Statement.of(General.OUTSIDE)
            .with("argument", List.of("a", "b"))
            .with("value", 2.54, Quantity.LENGTH)
            .with("range", Range.between(0, 2.54), Quantity.LENGTH);
    Words words = Fresh.words("en");
    assertEquals(General.OUTSIDE, statement.message());
    assertEquals(3, statement.parameters().size());
    assertEquals("a, b is 1 in; it must be 0 to 1.", statement.text(UnitSystem.US, words));
    assertEquals(
        "a; b ist 2,54 cm; erlaubt ist 0 bis 2,54.",
        statement.text(UnitSystem.METRIC, Fresh.words("de")));
    Statement nested = Statement.of(General.BLANK).with("argument", Slip.What.ZERO_OR_BLANK);
    assertEquals("It is 0 or a blank cell. is blank.", nested.text(UnitSystem.METRIC, words));
    Statement clauses = Statement.of(General.BLANK).with("argument", List.of(nested, nested));
    assertTrue(clauses.text(UnitSystem.METRIC, words).contains("is blank.; It is 0"));
    assertEquals("de", Fresh.words("de").tag());
    assertEquals("metric", UnitSystem.METRIC.word());
    assertEquals("US", UnitSystem.US.word());
  }
}
