package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class UnitTest {
  @ParameterizedTest
  @EnumSource
  void isFoundByItsWordAsTyped(Unit unit) {
    assertEquals(Optional.of(unit), Unit.named(unit.word()));
    assertEquals(Optional.of(unit), Unit.named(" " + unit.word() + " "));
    assertTrue(unit.fits(unit));
  }

  @Test
  void degreesAreFoundHoweverTheyAreWritten() {
    for (String word : new String[] {"°C", "° C", "ºC", "°c"}) {
      assertEquals("°C", Unit.named(word).orElseThrow().word(), word);
    }
    assertEquals(Unit.named("Bx"), Unit.named("degrees Bx"));
    assertEquals(Optional.empty(), Unit.named("°kg"));
    assertEquals(Optional.empty(), Unit.named("°furlong"));
    assertEquals(Optional.empty(), Unit.named("furlong"));
  }

  @Test
  void litresAndGallonsMeasureTheSameAndKilogramsDoNot() {
    Unit litre = Unit.named("L").orElseThrow();
    Unit gallon = Unit.named("gal").orElseThrow();
    assertTrue(litre.fits(gallon));
    assertFalse(litre.fits(Unit.named("kg").orElseThrow()));
    assertEquals(3.785411784, gallon.factor() / litre.factor(), 1e-12, "NIST SP 811, App. B.8");
  }
}
