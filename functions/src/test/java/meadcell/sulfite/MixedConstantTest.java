package meadcell.sulfite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MixedConstantTest {

  // from memory: Usseglio-Tomasset 1995, pK at 20 % vol, 0.10 above that at 15 % vol at each
  // temperature; here its differences, which ionic strength does not change
  @Test
  void goesOnToTwentyPercentAsTheTableDoes() {
    for (double celsius = 20; celsius <= 40; celsius += 5) {
      double step = MixedConstant.at(20, celsius) - MixedConstant.at(15, celsius);
      assertEquals(0.1, step, 0.02);
    }
  }

  // Handbook of Chemistry and Physics, from memory: pK of sulfurous acid in water 1.81 at 18 °C,
  // 1.85 at 25 °C; the step between them is 0.006 for 1 °C
  @ParameterizedTest
  @CsvSource({"0", "5", "10", "15", "18", "19.9"})
  void colderMeadHasALittleLessMolecular(double celsius) {
    double fall = (MixedConstant.at(13, 20) - MixedConstant.at(13, celsius)) / (20 - celsius);
    assertTrue(fall > 0.006 && fall < 0.0125, () -> "pK falls by " + fall + " for 1 °C");
  }

  @Test
  void hasNoStepAtTheTablesEdge() {
    assertEquals(MixedConstant.at(13, 20), MixedConstant.at(13, 20 - 1e-9), 1e-9);
    assertEquals(MixedConstant.at(15, 13), MixedConstant.at(15 + 1e-9, 13), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({"20.1, 13", "13, -0.1", "13, 40.1"})
  void refusesBeyond(double abv, double celsius) {
    assertThrows(Refusal.class, () -> MixedConstant.at(abv, celsius));
  }
}
