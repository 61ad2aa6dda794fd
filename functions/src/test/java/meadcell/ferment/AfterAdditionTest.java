package meadcell.ferment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.OptionalDouble;
import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import meadcell.density.Water;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class AfterAdditionTest {
  private static final OptionalDouble NONE = OptionalDouble.empty();
  private static final String[] INGREDIENTS = {"honey", "sugar", "water", "raspberry", "apple"};

  private static AfterAddition.Enlarged added(
      double volume, double original, double present, String ingredient, double mass) {
    return AfterAddition.afterAddition(
        volume, original, present, ingredient, mass, NONE, 17.2, NONE);
  }

  /** The balance of the larger mead knows the alcohol that was there and weighs what went in. */
  @Property
  void ethanolAndMassAreConserved(
      @Between(min = 1.06, max = 1.14) double original,
      @Between(min = 0, max = 1) double gone,
      @Between(min = 0.1, max = 30) double mass,
      @Between(min = 0, max = 4.99) double which) {
    double present = original - gone * (original - 0.995);
    String ingredient = INGREDIENTS[(int) which];
    AfterAddition.Enlarged after = added(100, original, present, ingredient, mass);
    double ethanol = 100 * Course.ethanol(original, present);
    assertEquals(
        ethanol, after.volumeL() * Course.ethanol(after.original(), after.present()), 1e-5);
    double grown =
        (after.volumeL() * after.present() - 100 * present) * Water.bettinSpieweck(20) / 1000;
    assertEquals(mass, grown, which < 3 ? 1e-6 : 0.15 * mass); // fibre and cores stay behind
  }

  @Property
  void honeyGivesWhatOriginalAfterGives(
      @Between(min = 1.06, max = 1.14) double original,
      @Between(min = 0, max = 1) double gone,
      @Between(min = 0.1, max = 20) double mass) {
    double present = original - gone * (original - 0.995);
    assertEquals(
        Ferment.originalAfter(100, original, present, mass, 17.2),
        added(100, original, present, "honey", mass).original(),
        1e-12);
  }

  @Test
  void beforeTheFermentItIsMixing() {
    double mixed =
        (double) Cellar.catalogue().get("MUST.AFTERFRUIT").call(100.0, 1.08, "raspberry", 20.0);
    AfterAddition.Enlarged after = added(100, 1.08, 1.08, "raspberry", 20);
    assertEquals(mixed, after.original(), 1e-10);
    assertEquals(mixed, after.present(), 1e-10);
  }

  @Test
  void waterMakesItWeakerAndLighter() {
    AfterAddition.Enlarged after = added(100, 1.1, 1.02, "water", 10);
    assertEquals(110, after.volumeL(), 0.1);
    assertEquals(1.0906, after.original(), 0.0005);
    assertEquals(1.018, after.present(), 0.0005);
  }

  private static String refusal(String ingredient, double mass, OptionalDouble brix) {
    return assertThrows(
            Refusal.class,
            () -> AfterAddition.afterAddition(100, 1.09, 1.02, ingredient, mass, brix, 17.2, NONE))
        .getMessage();
  }

  @Test
  void whatDoesNotBelongIsRefused() {
    assertEquals(
        "Brandy brings alcohol that no yeast has made; see BLEND.FORTIFY for it.",
        refusal("Brandy", 5, NONE));
    assertEquals(
        "water takes no °Brix; honey has its moisture instead.",
        refusal("water", 5, OptionalDouble.of(10)));
    assertEquals(
        "The mass of honey is too much for volume: together they had the gravity 1.322; at most 1.3 is"
            + " a must. Are they swapped?",
        refusal("honey", 280, NONE));
    assertEquals(
        12.0,
        AfterAddition.afterAddition(
                    100,
                    1.09,
                    1.02,
                    "pear juice",
                    10,
                    OptionalDouble.of(12),
                    17.2,
                    OptionalDouble.of(0))
                .volumeL()
            - 97.75,
        1);
  }
}
