package meadcell.alcohol;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;

/** Arguments and sources of more than one topic of alcohol. */
final class Shared {
  static final String BALANCE =
      "Balling's mass balance (Nielsen et al., Balling's Formula – scrutiny of a brewing dogma) with"
          + " Tabarié's rule (OIV-MA-AS2-03B). Densities: OIML R 22 (1975), ICUMSA SPS-4.";

  static final String TABARIE =
      "Tabarié's rule, OIV-MA-AS2-03B (R2012). Densities: OIML R 22 (1975), ICUMSA SPS-4.";

  static final String R22 = "OIML R 22 (1975), general formula, Wagenbreth and Blanke 1971.";

  static final String ORIGINAL = "Gravity of the must before fermentation";

  @Arg(name = "original", help = ORIGINAL, is = Quantity.SPECIFIC_GRAVITY, from = 1, to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Original {}

  @Arg(
      name = "present",
      help = "Gravity now, as GRAVITY.CORRECT gives it",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 0.98,
      to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Present {}

  @Arg(
      name = "yield",
      help =
          "Alcohol from 1 g of extract, g, as ALCOHOL.CALIBRATE gives it; left out: Balling's 0.4839",
      from = Yield.LEAST,
      to = Yield.MOST)
  @Retention(RetentionPolicy.RUNTIME)
  @interface YieldOfCellar {}

  private Shared() {}
}
