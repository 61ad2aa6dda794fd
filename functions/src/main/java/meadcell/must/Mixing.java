package meadcell.must;

import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.General;
import meadcell.catalogue.Numbers;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;
import meadcell.density.Sucrose;
import meadcell.density.Water;
import meadcell.law.UsHoneyWine;

/** Water into a must, and the warmth of a mix. */
@Family(name = "MUST")
public final class Mixing {
  private static final Range SPECIFIC_HEATS = Range.between(1, 4.2);

  private Mixing() {}

  /**
   * {@return water for a lower gravity, L}
   *
   * @param volumeL must, L
   * @param gravity its gravity, SG
   * @param target gravity wanted, SG
   */
  @CellarFunction(
      summary = "Water to add to a must to bring it down to a target gravity.",
      gives = Quantity.VOLUME,
      formula =
          "mass · (w(gravity) / w(target) − 1) of water, with w the sucrose content of that SG; water"
              + " at 20 °C, 0.9982 kg/L.",
      source = Shared.MIXING + " Water: Tanaka et al. 2001.",
      example = "MUST.DILUTE(100;1.12;1.1)",
      note = "For unfermented musts.",
      caution = UsHoneyWine.WATER)
  public static double dilute(
      @Shared.MustVolume double volumeL,
      @Arg(
              name = "gravity",
              help = "Its gravity",
              is = Quantity.SPECIFIC_GRAVITY,
              above = 1,
              to = 1.3)
          double gravity,
      @Arg(
              name = "target",
              help = "Gravity wanted",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 1.002,
              to = 1.3)
          double target) {
    if (target > gravity) {
      throw new Refusal(MustReason.WATER_CANNOT_RAISE)
          .with("target", target, Quantity.SPECIFIC_GRAVITY)
          .with("gravity", gravity, Quantity.SPECIFIC_GRAVITY);
    }
    Juice must = Juice.of(volumeL, gravity);
    double waterKg = must.solidsKg() / Sucrose.massFractionFromGravity(target) - must.kg();
    return waterKg / (Water.density(20) / 1000);
  }

  /**
   * {@return temperature of a mix, °C}
   *
   * @param ingredients names, as in a recipe
   * @param massesKg their masses, kg
   * @param temperaturesC their temperatures, °C
   */
  @CellarFunction(
      summary = "Temperature of a must right after mixing its ingredients.",
      gives = Quantity.TEMPERATURE,
      formula =
          "Σ mass · c · temperature / Σ mass · c, with c in kJ/(kg·K): water 4.19, honey 2.26, sugar"
              + " 1.24, fruit 4.19 for its water and 0.84 for the rest.",
      source =
          "Honey of 17.4 % moisture at 20 °C: 0.54 cal/(g·°C), White's value, quoted at second hand."
              + " Water and fruit: R. L. Earle, Unit Operations in Food Processing, Appendix 7, fruit with"
              + " USDA's water. Sugar: from memory.",
      example = "MUST.MIXTEMPERATURE({\"honey\";\"water\"};{30;70};{15;30})",
      note =
          "The tank takes its part: steel little, thick walls more. Frozen fruit must be thawed"
              + " first: melting takes more heat than all the rest.",
      caution = "Pour hot honey and water slowly; both scald.")
  public static double mixTemperature(
      @Arg(
              name = "ingredients",
              help =
                  "Names, as in a recipe; or the specific heat in kJ/(kg·K) of one not in the table")
          String[] ingredients,
      @Arg(name = "masses", help = "Their masses", is = Quantity.MASS, above = 0, to = 1e6)
          double[] massesKg,
      @Arg(
              name = "temperatures",
              help = "Their temperatures",
              is = Quantity.TEMPERATURE,
              above = 0,
              to = 100)
          double[] temperaturesC) {
    double heat = 0;
    double capacity = 0;
    for (int i = 0; i < ingredients.length; i++) {
      double part = massesKg[i] * specificHeat(ingredients[i]);
      capacity += part;
      heat += part * temperaturesC[i];
    }
    return heat / capacity;
  }

  private static double specificHeat(String ingredient) {
    OptionalDouble given = Numbers.plain(ingredient);
    if (given.isEmpty()) {
      OptionalDouble none = OptionalDouble.empty();
      return Ingredient.named(ingredient, none, none, none).specificHeat();
    }
    double heat = given.getAsDouble();
    if (!SPECIFIC_HEATS.contains(heat)) {
      throw new Refusal(General.OUTSIDE)
          .about("ingredients")
          .with("value", heat, Quantity.NUMBER)
          .with("range", SPECIFIC_HEATS, Quantity.NUMBER);
    }
    return heat;
  }
}
