package meadcell.bottle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import meadcell.catalogue.Slip;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

class SweetMeadTest {
  private static Object call(String function, Object... arguments) {
    return Cellar.catalogue().find(function).orElseThrow().call(arguments);
  }

  private static Refusal refusal(String function, Object... arguments) {
    return assertThrows(Refusal.class, () -> call(function, arguments));
  }

  @Test
  void aSweetMeadExpandsAFifthMore() {
    double dry = (Double) call("BOTTLE.VOLUMEAT", 1000.0, 12.0, 22.0, 14.0) - 1000;
    double sweet = (Double) call("BOTTLE.VOLUMEAT", 1000.0, 12.0, 22.0, 14.0, 140.0) - 1000;
    assertEquals(1.2, sweet / dry, 0.02);
  }

  @Test
  void twoDecimalsAreNoLabelInTheUnion() {
    for (String rule : new String[] {"eu", "eumacerated"}) {
      Refusal refusal = refusal("BOTTLE.LABELRANGE", 14.25, rule);
      assertEquals(BottleReason.MORE_THAN_ONE_DECIMAL, refusal.reason());
      refusal("BOTTLE.LABELRISK", 14.25, 14.0, 0.3, rule);
      for (int tenths = 12; tenths <= 240; tenths++) {
        call("BOTTLE.LABELRANGE", tenths / 10.0, rule);
      }
    }
    call("BOTTLE.LABELRANGE", 14.25, "usa");
  }

  @Test
  void macerationWidensTheLabel() {
    assertEquals(1.5, ((Double[]) bounds("eumacerated"))[1] - 12.5, 1e-12);
    assertEquals(1.0, ((Double[]) bounds("eu"))[1] - 12.5, 1e-12);
  }

  private static Object bounds(String rule) {
    Object[][] row = (Object[][]) call("BOTTLE.LABELRANGE", 12.5, rule);
    return new Double[] {(Double) row[0][0], (Double) row[0][1]};
  }

  @Test
  void fractionsInRangesGetTheHint() {
    Refusal refusal =
        refusal("BLEND.ABV", new Object[][] {{100.0}, {10.0}}, new Object[][] {{0.12}, {0.96}});
    assertEquals(Slip.What.PERCENT_FORMAT, refusal.slip().orElseThrow().what());
    assertEquals(12, refusal.slip().orElseThrow().meant(), 1e-9);
    assertEquals(
        Slip.What.PERCENT_FORMAT,
        refusal("BLEND.SWEETEN", 225.0, 0.998, 1.012, 0.132).slip().orElseThrow().what());
    double blend =
        (Double)
            call("BLEND.ABV", new Object[][] {{100.0}, {10.0}}, new Object[][] {{12.0}, {0.5}});
    assertTrue(blend < 12 && blend > 10.9);
    call("ALCOHOL.UNCERTAINTY", 1.1, 0.995, 0.0005, 0.0005, 0.3);
    call("BOTTLE.LABELRISK", 13.5, 13.2, 0.03);
  }

  @Test
  void someSulfiteAlwaysBinds() {
    assertEquals(Refusal.Kind.OUT_OF_RANGE, refusal("SULFITE.DOSE", 225.0, 20.0, 57.6, 0.0).kind());
    double dose = (Double) call("SULFITE.DOSE", 225.0, 20.0);
    assertEquals(225 * 20 / 1000.0 / 0.576 / 0.67, dose, 1e-9);
  }

  @Test
  void coldStrongAndThickMeadsHaveAnswers() {
    assertEquals(0.91, (Double) call("SULFITE.MOLECULAR", 30.0, 3.4, "oiv", 13.0, 13.0), 0.01);
    call("SULFITE.MOLECULAR", 30.0, 3.4, "oiv", 20.0, 13.0);
    call("GRAVITY.CORRECT", 1.08, 0.5);
    call("GRAVITY.CORRECT", 1.293, 12.0, 20.0, 1.293);
    call("HONEY.DENSITY", 23.0);
    call("ALCOHOL.ABV", 1.222, 1.08);
    call("ALCOHOL.EXTRACT", 1.293, 1.15);
  }
}
