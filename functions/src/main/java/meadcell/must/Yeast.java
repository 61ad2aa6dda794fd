package meadcell.must;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.density.Sucrose;

/** What the yeast is given: nitrogen, and how much yeast. */
@Family(name = "MUST")
public final class Yeast {
  @Arg(
      name = "gravity",
      help = "Gravity of the must",
      is = Quantity.SPECIFIC_GRAVITY,
      above = 1,
      to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface MustGravity {}

  private Yeast() {}

  /** How much nitrogen a yeast asks for, against the table's. */
  public enum Demand {
    /** Three quarters. */
    LOW(0.75),
    /** As the table has it. */
    MEDIUM(1),
    /** A quarter more. */
    HIGH(1.25);

    private final double factor;

    Demand(double factor) {
      this.factor = factor;
    }
  }

  /**
   * {@return nitrogen to add, mg/L}
   *
   * @param gravity gravity of the must, SG
   * @param demand what the yeast asks for
   * @param present assimilable nitrogen that is there, mg/L
   */
  @CellarFunction(
      summary = "Yeast assimilable nitrogen that a must still needs.",
      gives = Quantity.MILLIGRAM_PER_LITRE,
      formula =
          "200 mg N/L at 21 °Bx and 25 more for each °Bx above (less below), but not more than the 350"
              + " of 27 °Bx; times 0.75, 1 or 1.25 for low, medium or high demand; not less than 140;"
              + " less what is present, and not below 0.",
      source =
          "From memory: Bisson and Butzke 2000, Am. J. Enol. Vitic. 51:168, 200, 250, 300, 350 mg N/L"
              + " at 21, 23, 25, 27 °Bx. Least 140: the low end of what healthy ferments are reported"
              + " with (Butzke 1998, Spayd 1998, in Watson et al., Oregon State University). Demand"
              + " factors: common practice, no source.",
      example = "MUST.NITROGEN(1.1;\"medium\";20)",
      note =
          "The published range ends at 27 °Bx, SG 1.115, and is for grape must: above it the answer"
              + " stays at its end, not because strong musts need no more, but because nothing"
              + " published says how much. Honey itself brings almost none (from memory).\n"
              + "More than yeast uses feeds spoilage.")
  public static double nitrogen(
      @MustGravity double gravity,
      @Arg(name = "demand", help = "What the yeast asks for", byDefaultWord = "medium")
          Demand demand,
      @Arg(
              name = "present",
              help = "Assimilable nitrogen that is there",
              is = Quantity.MILLIGRAM_PER_LITRE,
              from = 0,
              to = 1000,
              byDefault = 0)
          double present) {
    double brix = 100 * Sucrose.massFractionFromGravity(gravity);
    double table = Math.min(350, 200 + 25 * (brix - 21));
    return Math.max(0, Math.max(140, demand.factor * table) - present);
  }

  /** Whose law sets a limit. */
  public enum Rule {
    /** 27 CFR 24.246, 8 lb in 1000 gal. */
    USA(8 * 453.59237 / 3785.411784),
    /** Delegated Regulation (EU) 2019/934, 1 g/L (from memory). */
    EU(1);

    private final double mostPhosphate;

    Rule(double mostPhosphate) {
      this.mostPhosphate = mostPhosphate;
    }
  }

  /** What to weigh out. */
  public record Nutrient(
      @Gives(value = "ammonium phosphate", is = Quantity.GRAM) double phosphate,
      @Gives(value = "organic nutrient", is = Quantity.GRAM) double organic) {}

  /**
   * {@return nutrients for that nitrogen, a row}
   *
   * @param volumeL must, L
   * @param nitrogen nitrogen to add, as MUST.NITROGEN gives it, mg/L
   * @param organicPercent nitrogen in the organic nutrient, from its label, %
   * @param rule whose limit
   * @param givenG ammonium phosphate that the batch already got, g
   * @param share share of the nitrogen that ammonium phosphate shall bring, %
   */
  @CellarFunction(
      summary =
          "Nutrients for that much nitrogen: ammonium phosphate for a share of it, within what the law"
              + " lets the batch have in all, and organic nutrient for the rest.",
      formula =
          "Diammonium phosphate is 21.21 % nitrogen: share · nitrogen of it, but with given not more"
              + " than 0.96 g/L (USA) or 1 g/L (EU) in all. Organic nutrient: the rest over"
              + " organicPercent.",
      source =
          "USA: 27 CFR 24.246, 8 lb per 1000 gal (0.96 g/L) of ammonium phosphates. EU: from memory,"
              + " Delegated Regulation (EU) 2019/934, 1 g/L of ammonium salts, a rule for wine. Nitrogen"
              + " of the salt: computed from molar masses, 28.014 of 132.056. Half of the nitrogen from"
              + " the salt: common practice, no source.",
      example = "MUST.NUTRIENT(100;250)",
      note =
          "Gives two cells in a row. In parts, as MUST.FEEDING has them, give each part what all parts"
              + " before it got as given, so that the cap holds for the batch.\n"
              + "share 100 takes the salt first, 0 none. Whether organic nitrogen counts in full is"
              + " disputed. Monoammonium phosphate has 12.18 % nitrogen and counts to the same limit.\n"
              + "Whether wine's EU limit binds mead is not shown: mead is no wine there.",
      caution =
          "The limit is for all ammonium phosphate that the lot ever gets. Laws change: the text in"
              + " force decides.")
  public static Nutrient nutrient(
      @Shared.MustVolume double volumeL,
      @Arg(
              name = "nitrogen",
              help = "Nitrogen to add, as MUST.NITROGEN gives it",
              is = Quantity.MILLIGRAM_PER_LITRE,
              from = 0,
              to = 600)
          double nitrogen,
      @Arg(
              name = "organicPercent",
              help = "Nitrogen in the organic nutrient, from its label",
              is = Quantity.PERCENT,
              from = 1,
              to = 15,
              byDefault = 4)
          double organicPercent,
      @Arg(name = "rule", help = "Whose limit", byDefaultWord = "usa") Rule rule,
      @Arg(
              name = "given",
              help = "Ammonium phosphate that the batch already got",
              is = Quantity.GRAM,
              from = 0,
              to = 1e6,
              byDefault = 0)
          double givenG,
      @Arg(
              name = "share",
              help = "Share of the nitrogen that ammonium phosphate shall bring",
              is = Quantity.PERCENT,
              from = 0,
              to = 100,
              byDefault = 50)
          double share) {
    double nitrogenOfSalt = 2 * 14.007 / 132.056;
    double nitrogenG = volumeL * nitrogen / 1000;
    double allowed = Math.max(0, volumeL * rule.mostPhosphate - givenG);
    double phosphate = Math.min(share / 100 * nitrogenG / nitrogenOfSalt, allowed);
    return new Nutrient(
        phosphate, (nitrogenG - phosphate * nitrogenOfSalt) / (organicPercent / 100));
  }

  /**
   * {@return dry yeast, g}
   *
   * @param volumeL must, L
   * @param gravity gravity of the must, SG
   * @param dose dry yeast for a litre, g/L
   */
  @CellarFunction(
      summary = "Dry yeast for a must.",
      gives = Quantity.GRAM,
      formula =
          "volume · dose; if dose is left out 0.25 g/L up to SG 1.100, 0.5 from 1.150 on, in"
              + " proportion between.",
      source = "Common practice, no source.",
      example = "MUST.YEAST(100;1.12)",
      note = "The maker's leaflet goes before this. Rehydrate as it says.")
  public static double yeast(
      @Shared.MustVolume double volumeL,
      @MustGravity double gravity,
      @Arg(
              name = "dose",
              help = "Dry yeast for a litre",
              is = Quantity.GRAM_PER_LITRE,
              from = 0.05,
              to = 2)
          OptionalDouble dose) {
    double strength = Math.min(1, Math.max(0, (gravity - 1.1) / 0.05));
    return volumeL * dose.orElse(0.25 + 0.25 * strength);
  }
}
