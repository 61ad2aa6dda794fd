package meadcell.batch.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.batch.book.Figures;
import meadcell.batch.calculation.Calculator;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.UnitSystem;
import meadcell.cellar.Cellar;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Conversions written into formulas agree with the catalogue's own. */
class UnitTest {
  private final Calculator calculator = new Calculator(Cellar.catalogue());

  @ParameterizedTest
  @EnumSource(
      value = Quantity.class,
      names = {"TEMPERATURE", "VOLUME", "MASS", "LENGTH", "PRESSURE", "DENSITY"})
  void usUnitsConvertAsTheCatalogueDoes(Quantity quantity) {
    Unit us = Unit.named(quantity.unit(UnitSystem.US)).orElseThrow();
    Unit metric = Unit.named(quantity.unit(UnitSystem.METRIC)).orElseThrow();
    double there = value(us.converted("7.25", metric));
    assertEquals(quantity.toMetric(7.25, UnitSystem.US), there, 1e-12 * Math.abs(there));
    assertEquals(7.25, value(metric.converted(Figures.of(there), us)), 1e-12);
  }

  @ParameterizedTest
  @EnumSource(
      value = Unit.class,
      names = {"BRIX", "BAUME", "OECHSLE"})
  void scalesOfGravityConvertByTheirFunctions(Unit scale) {
    double gravity = value(scale.converted("11", Unit.GRAVITY));
    assertTrue(gravity > 1.01 && gravity < 1.1);
    assertEquals(11, value(Unit.GRAVITY.converted(Figures.of(gravity), scale)), 1e-9);
  }

  private double value(String formula) {
    return (Double) calculator.evaluate(formula).value();
  }
}
