package meadcell.alcohol;

import java.util.OptionalDouble;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;

/** How far a strength can be trusted, and the yield of the own cellar. */
@Family(name = "ALCOHOL")
public final class Uncertainty {
  private Uncertainty() {}

  /**
   * {@return standard uncertainty of alcohol from two gravities, % vol}
   *
   * @param original gravity of the must before fermentation, SG
   * @param present gravity now, as GRAVITY.CORRECT gives it, SG
   * @param uOriginal standard uncertainty of original, SG
   * @param uPresent standard uncertainty of present, SG
   * @param uModel standard uncertainty of the balance itself, % vol
   * @param yield g of alcohol from 1 g of extract, as ALCOHOL.CALIBRATE finds it; left out:
   *     Balling's
   */
  @CellarFunction(
      summary = "Standard uncertainty of ALCOHOL.ABV by balance.",
      gives = Quantity.PERCENT_VOL,
      formula =
          "√((∂ABV/∂original · uOriginal)² + (∂ABV/∂present · uPresent)² + uModel²); uModel left out:"
              + " 3.5 % of the strength.",
      source =
          "Propagation of uncorrelated uncertainties: GUM, JCGM 100:2008, 5.1. 0.0005 for a gravity:"
              + " common practice, no source. 3.5 %: 16.5 to 18 g/L of sugar for 1 % vol, rectangular,"
              + " is 2.5 % about a middle that lies 2.5 % below the balance. In that band are what yeast"
              + " strains differ in (Winetech Technical Yearbook 2020: 16.5 to 17.2), a wine laboratory's"
              + " table (Predicting alcohol levels: 16.5 to 18) and the 18 of Regulation (EC) 729/2008"
              + " for mead.",
      example = "ALCOHOL.UNCERTAINTY(1.1;0.995)",
      note =
          "The true value lies within twice this about 95 times in 100. It shrinks with what your"
              + " laboratory has measured: give the yield of ALCOHOL.CALIBRATE, and its residual as"
              + " uModel. What both readings share, as the error of one hydrometer, partly cancels and is"
              + " then counted too high.")
  public static double uncertainty(
      @Shared.Original double original,
      @Shared.Present double present,
      @Arg(
              name = "uOriginal",
              help = "Standard uncertainty of original",
              is = Quantity.SPECIFIC_GRAVITY,
              above = 0,
              to = 0.02,
              byDefault = 0.0005)
          double uOriginal,
      @Arg(
              name = "uPresent",
              help = "Standard uncertainty of present",
              is = Quantity.SPECIFIC_GRAVITY,
              above = 0,
              to = 0.02,
              byDefault = 0.0005)
          double uPresent,
      @Arg(
              name = "uModel",
              help =
                  "Standard uncertainty of the balance itself, as the residual of ALCOHOL.CALIBRATE;"
                      + " left out: 3.5 % of the strength",
              is = Quantity.PERCENT_VOL,
              above = 0,
              to = 5)
          OptionalDouble uModel,
      @Shared.YieldOfCellar OptionalDouble yield) {
    double extractPerEthanol = Yield.extractPerEthanol(yield);
    Fermentation.Slopes slopes = Fermentation.slopes(original, present, extractPerEthanol);
    double ofModel =
        uModel.orElseGet(
            () ->
                Yield.RELATIVE_UNCERTAINTY
                    * Alcohol.abv(original, present, Alcohol.Method.BALANCE, yield));
    double fromOriginal = 100 * slopes.byOriginal() * uOriginal;
    double fromPresent = 100 * slopes.byPresent() * uPresent;
    return Math.sqrt(fromOriginal * fromOriginal + fromPresent * fromPresent + ofModel * ofModel);
  }

  /** What laboratory results tell about the cellar's own yield. */
  public record Calibration(
      @Gives("yield") double yield,
      @Gives("standard error of the yield") double standardError,
      @Gives(value = "residual", is = Quantity.PERCENT_VOL) double residual) {}

  /**
   * {@return the cellar's own yield, its standard error, and the residual in % vol, a row}
   *
   * @param originals original gravity of each mead, three at least, SG
   * @param presents its gravity when it was sampled, SG
   * @param measured its alcohol as the laboratory found it, % vol
   */
  @CellarFunction(
      summary =
          "The cellar's own yield of alcohol from gravities and laboratory results, its standard error,"
              + " and what it leaves unexplained.",
      formula =
          "The yield for which Σ (measured − ALCOHOL.ABV by balance with it)² is least; residual ="
              + " √(Σ (…)² / (n − 1)); standard error = residual / √(Σ (∂ABV/∂yield)²).",
      source =
          "Least squares, Brent's method (Commons Math). Balance: as in ALCOHOL.ABV. Asked for are 3"
              + " pairs at least: common practice, no source.",
      example = "ALCOHOL.CALIBRATE({1.1;1.09;1.12};{0.995;0.998;1.01};{13.6;11.7;14.4})",
      note =
          "Gives three cells in a row. Give the yield to ALCOHOL.ABV and ALCOHOL.UNCERTAINTY and the"
              + " residual to the latter as uModel. The residual also holds the error of the hydrometer"
              + " and of the laboratory; below six pairs it is a guess itself.\n"
              + "Only meads to which no honey, sugar, fruit, spirit or water came after the original"
              + " gravity was read.")
  public static Calibration calibrate(
      @Arg(
              name = "originals",
              help = "Original gravity of each mead",
              is = Quantity.SPECIFIC_GRAVITY,
              above = 1,
              to = 1.3)
          double[] originals,
      @Arg(
              name = "presents",
              help = "Its gravity when it was sampled",
              is = Quantity.SPECIFIC_GRAVITY,
              from = 0.98,
              to = 1.3)
          double[] presents,
      @Arg(
              name = "measured",
              help = "Its alcohol as the laboratory found it",
              is = Quantity.PERCENT_VOL,
              from = 1,
              to = 30)
          double[] measured) {
    return Yield.fit(originals, presents, measured);
  }
}
