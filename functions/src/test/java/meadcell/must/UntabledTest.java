package meadcell.must;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

class UntabledTest {
  private static final double CAP_G_PER_L = 8 * 453.59237 / 3785.411784;

  private static Object call(String function, Object... arguments) {
    return Cellar.catalogue().find(function).orElseThrow().call(arguments);
  }

  private static Refusal refusal(String function, Object... arguments) {
    return assertThrows(Refusal.class, () -> call(function, arguments));
  }

  private static Object[][] recipe(Object... row) {
    return new Object[][] {{"honey", 30.0, 17.0, 0.0, 0.0}, row};
  }

  @Test
  void cherrySuggestsTheCherries() {
    assertEquals(
        "sour cherry, sweet cherry",
        refusal("MUST.FRUITSUGAR", "cherry", 25.0).suggestion().orElseThrow());
  }

  @Test
  void aMistypedFruitIsNotTakenForAnother() {
    Refusal refusal = refusal("MUST.GRAVITY", (Object) recipe("rasberry", 10.0, 9.0, "", ""));
    assertEquals("raspberry", refusal.suggestion().orElseThrow());
    call("MUST.GRAVITY", (Object) recipe("rasberry", 90.0, 9.0, "", 4.0));
  }

  @Test
  void withoutBrixItStaysUnknown() {
    assertEquals(
        Refusal.Kind.UNKNOWN_NAME,
        refusal("MUST.GRAVITY", (Object) recipe("yuzu", 10.0, "", "", "")).kind());
  }

  @Test
  void zeroStandsForWhatDoesNotApply() {
    assertEquals(
        call("MUST.GRAVITY", (Object) recipe("water", 70.0, "", "", "")),
        call("MUST.GRAVITY", (Object) recipe("water", 70.0, 0.0, 0.0, 0.0)));
    assertEquals(
        call("MUST.GRAVITY", (Object) recipe("raspberry", 70.0, "", "", "")),
        call("MUST.GRAVITY", (Object) recipe("raspberry", 70.0, 0.0, 0.0, "")));
    assertEquals(
        MustReason.MASS_ONLY,
        refusal("MUST.GRAVITY", (Object) recipe("water", 70.0, 5.0, "", "")).reason());
  }

  @Test
  void brixIsHeldToItsRange() {
    assertEquals(
        Refusal.Kind.OUT_OF_RANGE,
        refusal("MUST.GRAVITY", (Object) recipe("apple", 10.0, 95.0, "", "")).kind());
  }

  @Test
  void thePartsTogetherKeepTheLaw() {
    for (double share : new double[] {50, 100}) {
      double given = 0;
      double nitrogenG = 0;
      Object[][] parts = (Object[][]) call("MUST.FEEDING", 250.0, 240.0, 1.098, 4.0);
      for (Object[] part : parts) {
        Object[][] weighed =
            (Object[][]) call("MUST.NUTRIENT", 250.0, part[1], 4.0, "usa", given, share);
        given += (Double) weighed[0][0];
        nitrogenG += (Double) weighed[0][0] * 0.2121 + (Double) weighed[0][1] * 0.04;
      }
      assertTrue(given <= 250 * CAP_G_PER_L + 1e-9, given + " g of ammonium phosphate");
      assertEquals(250 * 0.24, nitrogenG, 0.02);
    }
  }

  @Test
  void honeyAndWaterInEqualVolumesIsAMust() {
    assertTrue((Double) call("MUST.YEAST", 100.0, 1.222) > 0);
    assertTrue((Double) call("MUST.NITROGEN", 1.293) > 0);
    call("MUST.FEEDING", 100.0, 250.0, 1.293);
  }
}
