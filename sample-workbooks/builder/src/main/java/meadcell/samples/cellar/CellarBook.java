package meadcell.samples.cellar;

import java.util.LinkedHashMap;
import java.util.Map;
import meadcell.samples.sheet.Book;

/** The working book of a small cellar. */
public final class CellarBook {
  private CellarBook() {}

  public static Book build() {
    Book book = new Book("Cellar book");
    About.add(
        book,
        "Cellar book",
        "The working book of a small cellar, with its functions live.",
        sheets());
    MustPlan.add(book);
    FermentLog.add(book);
    BarrelRegister.add(book);
    Barrels.add(book);
    TastingNotes.add(book);
    PanelSheet.add(book);
    BlendSheet.add(book);
    Stabilise.add(book);
    Analyses.add(book);
    Decide.add(book);
    Lineage.add(book);
    OneBottle.add(book);
    Cautions.add(book);
    return book.finish();
  }

  private static Map<String, String> sheets() {
    Map<String, String> sheets = new LinkedHashMap<>();
    sheets.put(MustPlan.TITLE, "How much honey, water, fruit and nutrient; heat and gas.");
    sheets.put(FermentLog.TITLE, "True gravity and strength of every reading; when it ends.");
    sheets.put(BarrelRegister.TITLE, "What each cask is made of and what it ever held.");
    sheets.put(Barrels.TITLE, "What each cask holds now and when to top up; loss; wood.");
    sheets.put(TastingNotes.TITLE, "What tasters found, cask by cask.");
    sheets.put(PanelSheet.TITLE, "Still improving? Another mead than last year's? Pool two casks?");
    sheets.put(BlendSheet.TITLE, "The cheapest blend on target; whole casks; the bench trial.");
    sheets.put(Stabilise.TITLE, "Sulfite, sorbate, bottles, label, tax, pressure.");
    sheets.put(Analyses.TITLE, "Free SO₂, volatile acid and pH over time, with due dates.");
    sheets.put(Decide.TITLE, "One cask decided from all of these.");
    sheets.put(Lineage.TITLE, "Which liquids are in a lot, and how long they lay in which wood.");
    sheets.put(OneBottle.TITLE, "A year from the casks to one bottle: shares, strength, air.");
    sheets.put(Cautions.TITLE, "Read before the first day.");
    return sheets;
  }
}
