package meadcell.panel;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;

/** Meads put in order by every taster. */
@Family(name = "PANEL")
public final class Ranked {
  private static final String RANK_NOTE =
      "Each row holds 1 to the number of meads; ties share the mean of their places, as RANK.AVG"
          + " gives. For two meads use PANEL.PAIRED.";

  private static final String FRIEDMAN_SOURCE =
      "Friedman 1937; formulas and correction for ties as in NF ISO 8587, quoted at second hand.";

  @Arg(name = "ranks", help = "A row for each taster, a column for each mead", from = 1, to = 12)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Ranks {}

  private Ranked() {}

  /**
   * {@return Friedman's test, probability}
   *
   * @param ranks A row for each taster, a column for each mead
   */
  @CellarFunction(
      summary = "Friedman's test: probability of ranks so far apart if no mead were better.",
      gives = Quantity.PROBABILITY,
      formula =
          "F = 12 Σ(R − mean)² / (J·P·(P+1) − T/(P−1)), R rank sums, J tasters, P meads, T = Σ(t³ −"
              + " t) over ties. Every order of every taster counted for up to 20 tasters of 3 meads,"
              + " 12 of 4, 6 of 5, 3 of 6; else χ² with P − 1 degrees of freedom.",
      source = FRIEDMAN_SOURCE,
      example = "PANEL.RANKTEST({1,2,3,4;2,1,4,3;1,3,2,4;1,2,4,3})",
      note = RANK_NOTE)
  public static double rankTest(@Ranks double[][] ranks) {
    return Ranking.of(ranks).probability();
  }

  /**
   * {@return least significant difference of rank sums}
   *
   * @param ranks A row for each taster, a column for each mead
   */
  @CellarFunction(
      summary = "Least difference of two meads' rank sums that is significant at 5 %.",
      formula = "1.960 · √(J·P·(P+1)/6), J tasters, P meads.",
      source = "NF ISO 8587, quoted at second hand.",
      example = "PANEL.RANKDIFFERENCE({1,2,3,4;2,1,4,3;1,3,2,4;1,2,4,3})",
      note =
          "Only when PANEL.RANKTEST is significant, and for pairs chosen before tasting. "
              + RANK_NOTE)
  public static double rankDifference(@Ranks double[][] ranks) {
    return Ranking.of(ranks).leastDifference();
  }

  /**
   * {@return Kendall's W}
   *
   * @param ranks A row for each taster, a column for each mead
   */
  @CellarFunction(
      summary = "Kendall's W: how far the tasters agree, from 0 (not at all) to 1 (fully).",
      formula = "F / (J·(P−1)), F as in PANEL.RANKTEST, J tasters, P meads.",
      source = "Kendall and Babington Smith 1939 (from memory: the reference). " + FRIEDMAN_SOURCE,
      example = "PANEL.AGREEMENT({1,2,3,4;2,1,4,3;1,3,2,4;1,2,4,3})",
      note = RANK_NOTE)
  public static double agreement(@Ranks double[][] ranks) {
    return Ranking.of(ranks).agreement();
  }

  /** A trend of ranks. */
  public record Page(
      @Gives("L") double sum,
      @Gives(value = "probability", is = Quantity.PROBABILITY) double probability,
      @Gives(value = "exact or normal", is = Quantity.TEXT) String way) {}

  /**
   * {@return Page's test of a trend, a row}
   *
   * @param ranks A row for each taster, a column for each mead, in the order expected
   */
  @CellarFunction(
      summary =
          "Page's test: probability of ranks that rise so much from column to column if no mead were"
              + " better.",
      formula =
          "L = Σ j·R(j), R rank sums of the columns j. Every order of every taster's ranks counted for up"
              + " to 30 tasters and 10 meads; else normal, mean J·P·(P+1)²/4, variance J·P²(P+1)²(P−1)/144,"
              + " less for ties; J tasters, P meads. One side.",
      source =
          "Page 1963, Journal of the American Statistical Association 58:216 (from memory: the reference);"
              + " table of Siegel and Castellan in the manual of the R package crank.",
      example = "PANEL.PAGE({1,2,3,4;2,1,4,3;1,3,2,4;1,2,4,3})",
      note =
          "Columns stand in the order you expected before tasting: the same mead after 3, 6 and 9 months"
              + " in wood, and rank 1 for the least liked. It asks about rising only; for falling turn the"
              + " columns round. A trend over months is not proof that the wood made it: keep some of the"
              + " lot in glass and taste it along. "
              + RANK_NOTE)
  public static Page page(@Ranks double[][] ranks) {
    return Ranking.of(ranks).page();
  }
}
