package meadcell.batch.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.batch.book.Figures;
import meadcell.batch.calculation.Calculator;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Unit;
import meadcell.catalogue.UnitSystem;
import meadcell.cellar.Cellar;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Conversions written into formulas agree with the catalogue's own. */
class ConversionTest {
  private final Calculator calculator = new Calculator(Cellar.catalogue());

  @ParameterizedTest
  @EnumSource(
      value = Quantity.class,
      names = {
        "TEMPERATURE",
        "VOLUME",
        "MASS",
        "MASS_PER_HOUR",
        "LENGTH",
        "AREA",
        "ROOM",
        "PRESSURE",
        "DENSITY",
        "GRAVITY_YIELD"
      })
  void usUnitsConvertAsTheCatalogueDoes(Quantity quantity) {
    Unit us = Unit.named(quantity.unit(UnitSystem.US)).orElseThrow();
    Unit metric = Unit.named(quantity.unit(UnitSystem.METRIC)).orElseThrow();
    double there = value(Conversion.of("7.25", us, metric));
    assertEquals(quantity.toMetric(7.25, UnitSystem.US), there, 1e-12 * Math.abs(there));
    assertEquals(7.25, value(Conversion.of(Figures.of(there), metric, us)), 1e-12);
  }

  @ParameterizedTest
  @EnumSource(
      value = Unit.class,
      names = {"BRIX", "BAUME", "OECHSLE"})
  void scalesOfGravityConvertByTheirFunctions(Unit scale) {
    double gravity = value(Conversion.of("11", scale, Unit.GRAVITY));
    assertTrue(gravity > 1.01 && gravity < 1.1);
    assertEquals(11, value(Conversion.of(Figures.of(gravity), Unit.GRAVITY, scale)), 1e-9);
  }

  private double value(String formula) {
    return (Double) calculator.evaluate(formula).value();
  }
}
