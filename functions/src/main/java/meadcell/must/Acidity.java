package meadcell.must;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** Acid in a must or mead: restated, raised, lowered. */
@Family(name = "MUST")
public final class Acidity {
  private static final String MOLAR =
      "Computed from molar masses; tartaric acid 150.086 g/mol, two" + " protons.";

  @Arg(name = "volume", help = "Must or mead", is = Quantity.VOLUME, above = 0, to = 1e6)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface MeadVolume {}

  private Acidity() {}

  /** Acids by grams for a mole of protons: molar mass over protons. */
  public enum Acid {
    /** C₄H₆O₆, two protons. */
    TARTARIC(150.086, 2),
    /** C₄H₆O₅, two protons. */
    MALIC(134.087, 2),
    /** C₆H₈O₇ without water, three protons. */
    CITRIC(192.123, 3),
    /** C₆H₈O₇·H₂O, three protons. */
    CITRIC_MONOHYDRATE(210.138, 3),
    /** C₃H₆O₃, one proton. */
    LACTIC(90.078, 1),
    /** C₂H₄O₂, one proton. */
    ACETIC(60.052, 1),
    /** C₄H₆O₄, two protons. */
    SUCCINIC(118.088, 2),
    /** C₆H₁₂O₇, one proton. */
    GLUCONIC(196.155, 1),
    /** H₂SO₄, two protons. */
    SULFURIC(98.072, 2);

    private final double gramsPerProton;

    Acid(double molarMass, int protons) {
      gramsPerProton = molarMass / protons;
    }
  }

  /**
   * {@return an acidity in terms of another acid, g/L}
   *
   * @param amount acidity, g/L
   * @param from the acid it is stated as
   * @param to the acid to state it as
   */
  @CellarFunction(
      summary = "An acidity stated as one acid, restated as another.",
      gives = Quantity.GRAM_PER_LITRE,
      formula = "amount · (molar mass / protons) of the one over that of the other.",
      source = MOLAR,
      example = "MUST.ACIDAS(6;\"tartaric\";\"gluconic\")",
      note = "Gluconic acid is the main acid of honey (from memory).")
  public static double acidAs(
      @Arg(name = "amount", help = "Acidity", is = Quantity.GRAM_PER_LITRE, from = 0, to = 100)
          double amount,
      @Arg(name = "from", help = "The acid it is stated as") Acid from,
      @Arg(name = "to", help = "The acid to state it as") Acid to) {
    return amount * to.gramsPerProton / from.gramsPerProton;
  }

  /**
   * {@return acid to add, g}
   *
   * @param volumeL must or mead, L
   * @param present titratable acidity now, as tartaric, g/L
   * @param target titratable acidity wanted, as tartaric, g/L
   * @param acid the acid to add
   */
  @CellarFunction(
      summary = "Acid to add to raise the titratable acidity to a target.",
      gives = Quantity.GRAM,
      formula = "volume · (target − present) · (molar mass / protons) over that of tartaric acid.",
      source = MOLAR,
      example = "MUST.ACIDADD(100;3;5;\"malic\")",
      note =
          "present and target are g/L as tartaric acid. pH does not follow from it: try on a sample"
              + " and taste.",
      caution = "Which acids may be added, and how much, is a matter of law where you sell.")
  public static double acidAdd(
      @MeadVolume double volumeL,
      @Arg(
              name = "present",
              help = "Titratable acidity now, as tartaric",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 30)
          double present,
      @Arg(
              name = "target",
              help = "Titratable acidity wanted, as tartaric",
              is = Quantity.GRAM_PER_LITRE,
              above = 0,
              to = 30)
          double target,
      @Arg(name = "acid", help = "The acid to add") Acid acid) {
    if (target < present) {
      throw new Refusal(MustReason.ACID_CANNOT_LOWER)
          .with("target", target, Quantity.GRAM_PER_LITRE)
          .with("present", present, Quantity.GRAM_PER_LITRE);
    }
    return volumeL * acidAs(target - present, Acid.TARTARIC, acid);
  }

  /** Carbonates by grams for a mole of protons. */
  public enum Salt {
    /** KHCO₃, takes one proton. */
    POTASSIUM_BICARBONATE(100.114, 1),
    /** K₂CO₃, takes two protons. */
    POTASSIUM_CARBONATE(138.205, 2),
    /** CaCO₃, takes two protons. */
    CALCIUM_CARBONATE(100.086, 2);

    private final double gramsPerProton;

    Salt(double molarMass, int protons) {
      gramsPerProton = molarMass / protons;
    }
  }

  /**
   * {@return carbonate to lower acidity, g}
   *
   * @param volumeL must or mead, L
   * @param drop titratable acidity to take away, as tartaric, g/L
   * @param salt the salt to add
   */
  @CellarFunction(
      summary = "Carbonate salt that takes a given acidity away.",
      gives = Quantity.GRAM,
      formula =
          "volume · drop · (molar mass / protons taken) of the salt over that of tartaric acid.",
      source =
          MOLAR
              + " Potassium bicarbonate 100.114, potassium carbonate 138.205, calcium carbonate"
              + " 100.086 g/mol.",
      example = "MUST.DEACIDIFY(100;1;\"potassiumbicarbonate\")",
      note =
          "drop is g/L as tartaric acid. Where grape brings tartaric acid, potassium salts"
              + " let cream of tartar settle and less is needed; honey and most fruit bring none. Add"
              + " half, wait, measure.",
      caution =
          "It foams and frees carbon dioxide: leave headspace, stir in little by little, ventilate."
              + " In the United States the fixed acids may not be brought below 5 g/L (27 CFR"
              + " 24.246); other laws differ.")
  public static double deacidify(
      @MeadVolume double volumeL,
      @Arg(
              name = "drop",
              help = "Titratable acidity to take away, as tartaric",
              is = Quantity.GRAM_PER_LITRE,
              above = 0,
              to = 15)
          double drop,
      @Arg(name = "salt", help = "The salt to add") Salt salt) {
    return volumeL * drop * salt.gramsPerProton / Acid.TARTARIC.gramsPerProton;
  }
}
