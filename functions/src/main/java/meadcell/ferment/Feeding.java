package meadcell.ferment;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.ferment.Shared.Original;
import meadcell.ferment.Shared.Volume;

/** When the yeast of a must is fed, by the course of its ferment. */
@Family(name = "MUST")
public final class Feeding {
  private Feeding() {}

  /**
   * A part of the nitrogen.
   *
   * @param gravity gravity at which it is given, SG
   * @param nitrogen how much of it, mg/L
   * @param batch for the batch, g
   */
  public record Feed(
      @Gives(value = "gravity at which to give it", is = Quantity.SPECIFIC_GRAVITY) double gravity,
      @Gives(value = "nitrogen", is = Quantity.MILLIGRAM_PER_LITRE) double nitrogen,
      @Gives(value = "nitrogen for the batch", is = Quantity.GRAM) double batch) {}

  /**
   * {@return when to feed, a row}
   *
   * @param volumeL must, L
   * @param nitrogen nitrogen to add in all, as MUST.NITROGEN gives it, mg/L
   * @param original gravity of the must before fermentation, SG
   * @param parts how many parts, a whole number
   */
  @CellarFunction(
      summary =
          "When to feed nitrogen: for each part the gravity at which to give it, mg N/L of it, and g N"
              + " for the batch.",
      formula =
          "Equal parts at equal steps of sugar gone, the first at the original gravity, the last when"
              + " one third of the sugar is gone (FERMENT.BREAK).",
      source = "Common practice, no source.",
      example = "MUST.FEEDING(100;250;1.1)",
      note =
          "A row for each part; what to weigh out for it: MUST.NUTRIENT, given what the parts before it"
              + " got. The first one is for when the yeast has begun to work, some hours"
              + " after pitching. After the third break yeast takes up little.",
      caution =
          "Powder thrown into a working ferment makes it foam over: dissolve it first. Stirring frees"
              + " carbon dioxide: ventilate.")
  public static Feed[] feeding(
      @Volume(help = "Must") double volumeL,
      @Arg(
              name = "nitrogen",
              help = "Nitrogen to add in all, as MUST.NITROGEN gives it",
              is = Quantity.MILLIGRAM_PER_LITRE,
              from = 0,
              to = 600)
          double nitrogen,
      @Original(from = 1.02) double original,
      @Arg(
              name = "parts",
              help = "How many parts, a whole number",
              is = Quantity.COUNT,
              from = 1,
              to = 10,
              byDefault = 4)
          int parts) {
    Feed[] feeds = new Feed[parts];
    for (int i = 0; i < parts; i++) {
      double gravity =
          i == 0 ? original : Ferment.Break(original, 100.0 / 3 * i / (parts - 1), 0.995);
      feeds[i] = new Feed(gravity, nitrogen / parts, nitrogen / parts * volumeL / 1000);
    }
    return feeds;
  }
}
