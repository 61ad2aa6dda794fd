package meadcell.lab;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;

/** Titration arithmetic. */
@Family(name = "LAB", about = "Titration arithmetic.", says = LabReason.class)
public final class Lab {
  // g that one mole of alkali titrates, or one of iodine atoms; molar masses from standard atomic
  // weights
  private static final double TARTARIC_ACID = 150.086 / 2;
  private static final double ACETIC_ACID = 60.052;
  private static final double SULFUR_DIOXIDE = 64.064 / 2;

  private static final double MILLIGRAMS = 1000;

  static final String CAUTION =
      "Titrants and reagents are corrosive: wear goggles and gloves, and follow a laboratory's own"
          + " procedure.";

  @Arg(
      name = "titre",
      help = "Titrant used, less the blank",
      is = Quantity.MILLILITRE,
      above = 0,
      to = 100)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Titre {}

  @Arg(
      name = "normality",
      help = "Concentration of the alkali",
      is = Quantity.NORMALITY,
      from = 0.005,
      to = 1)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Normality {}

  @Arg(name = "sample", help = "Sample taken", is = Quantity.MILLILITRE, from = 1, to = 500)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Sample {}

  private Lab() {}

  /**
   * {@return titratable acidity, g/L}
   *
   * @param titre titrant used, less the blank, mL
   * @param normality concentration of the alkali, mol/L
   * @param sample sample taken, mL
   */
  @CellarFunction(
      summary = "Titratable acidity, stated as tartaric acid, from a titration with alkali.",
      gives = Quantity.GRAM_PER_LITRE,
      formula = "75.043 · titre · normality / sample",
      source =
          "Stoichiometry: tartaric acid, 150.086 g/mol, gives two protons. Procedure: OIV-MA-AS313-01.",
      example = "LAB.ACIDITY(8;0.1;10)",
      note =
          "Drive the carbon dioxide out first. The procedure titrates to pH 7; many cellars go on to"
              + " 8.2, which finds more (from memory). MUST.ACIDAS restates it as another acid.",
      caution = CAUTION)
  public static double acidity(
      @Titre double titre, @Normality double normality, @Sample double sample) {
    return TARTARIC_ACID * titre * normality / sample;
  }

  /**
   * {@return volatile acidity, g/L}
   *
   * @param titre titrant used, less the blank, mL
   * @param normality concentration of the alkali, mol/L
   * @param sample sample taken, mL
   */
  @CellarFunction(
      summary = "Volatile acidity, stated as acetic acid, from titrating a steam distillate.",
      gives = Quantity.GRAM_PER_LITRE,
      formula = "60.052 · titre · normality / sample",
      source = "Stoichiometry: acetic acid, 60.052 g/mol. Procedure: OIV-MA-AS313-02.",
      example = "LAB.VOLATILE(2;0.1;20)",
      note =
          "Sulfur dioxide and sorbic acid come over with the steam and count as acetic acid unless they"
              + " are taken off as the procedure says.",
      caution = CAUTION)
  public static double Volatile(
      @Titre double titre, @Normality double normality, @Sample double sample) {
    return ACETIC_ACID * titre * normality / sample;
  }

  /**
   * {@return sulfur dioxide, mg/L}
   *
   * @param titre titrant used, less the blank, mL
   * @param normality concentration of the alkali, or of iodine atoms, mol/L
   * @param sample sample taken, mL
   */
  @CellarFunction(
      summary = "Sulfur dioxide, free or total, from an alkali or iodine titration.",
      gives = Quantity.MILLIGRAM_PER_LITRE,
      formula = "1000 · 32.032 · titre · normality / sample",
      source =
          "Stoichiometry: sulfur dioxide, 64.064 g/mol, oxidised to sulfuric acid with two protons, or"
              + " by two atoms of iodine. Procedure: OIV-MA-AS323-04.",
      example = "LAB.SO2(2.5;0.01;20)",
      note =
          "normality counts the alkali after aspiration, or iodine atoms: 0.01 mol/L of I₂ is 0.02."
              + " Direct iodine titration also finds ascorbic acid and colour (from memory), and shows"
              + " too much in red melomels.",
      caution = CAUTION + " Acidified samples give off sulfur dioxide, which irritates the lungs.")
  public static double so2(
      @Titre double titre,
      @Arg(
              name = "normality",
              help = "Concentration of the alkali, or of iodine atoms",
              is = Quantity.NORMALITY,
              from = 0.001,
              to = 0.2)
          double normality,
      @Sample double sample) {
    return MILLIGRAMS * SULFUR_DIOXIDE * titre * normality / sample;
  }
}
