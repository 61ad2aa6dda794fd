package meadcell.samples.cellar;

import java.util.LinkedHashMap;
import java.util.Map;
import meadcell.samples.sheet.Book;

/** The working book of a small cellar. */
public final class CellarBook {
  private CellarBook() {}

  public static Book build() {
    Book book = new Book("Cellar book").keeping();
    Start.add(book, pages(), logs());
    book.heeding(
        "IF(start_missing=\"\",told_day,\"Meadcell is not installed in this program: what stands below does not hold. See sheet Start.\")");
    TodayPage.add(book);
    CasksNow.add(book);
    CaskPage.add(book);
    FermentPage.add(book);
    PanelPage.add(book);
    GlassesPage.add(book);
    BlendPage.add(book);
    BottlePage.add(book);
    LabelPage.add(book);
    StoryPage.add(book);
    MustPlan.add(book);
    InstrumentPage.add(book);
    book.heeding("");
    Cautions.add(book);
    Season season = new TarnHollow();
    Registers.add(book, season);
    Logs.add(book, season);
    InstrumentPage.log(book, season);
    Behind.add(book);
    return book.draft();
  }

  private static Map<String, String> pages() {
    Map<String, String> pages = new LinkedHashMap<>();
    pages.put(TodayPage.TITLE, "What the cellar wants this week, by date, and why.");
    pages.put(CasksNow.TITLE, "What is where; what each vessel wants next.");
    pages.put(
        FermentPage.TITLE,
        "Its readings made true; falling, finished or stalled; where it will end.");
    pages.put(CaskPage.TITLE, "What it holds and wants; its losses, wood, tastings, air.");
    pages.put(
        PanelPage.TITLE, "Do these meads differ, and which is liked better? May two be pooled?");
    pages.put(
        GlassesPage.TITLE, "Serving order and blind codes of a tasting, with its key: to print.");
    pages.put(BlendPage.TITLE, "The cheapest blend on target from today's stock; the bench trial.");
    pages.put(BottlePage.TITLE, "Is it still, will the bottle bear it, what goes in?");
    pages.put(LabelPage.TITLE, "What the label says, the number behind each word; duty.");
    pages.put(
        StoryPage.TITLE,
        "Which liquids are in it, how long they lay where, what air they took up.");
    pages.put(MustPlan.TITLE, "How much honey, water, fruit and nutrient; heat and gas.");
    pages.put(
        InstrumentPage.TITLE, "What a hydrometer, refractometer or thermometer lacks; its drift.");
    pages.put(Cautions.TITLE, "Read before the first day.");
    return pages;
  }

  private static Map<String, String> logs() {
    Map<String, String> logs = new LinkedHashMap<>();
    logs.put(Logs.MOVES, "Filled, racked, topped up, dipped, lost, bottled.");
    logs.put(Logs.READINGS, "Hydrometers, with the temperature of the sample.");
    logs.put(Logs.ANALYSES, "Strength, sugar, acids, SO₂, pH: what was measured in which vessel.");
    logs.put(Logs.TASTINGS, "Taster by taster.");
    logs.put(Logs.ADDITIONS, "Sulfite, nutrients, acid, honey.");
    logs.put(InstrumentPage.CHECKS, "Instruments in water, ice and weighed solutions.");
    logs.put(Registers.LOTS, "Each must and mead that came in, once.");
    logs.put(Registers.VESSELS, "Each cask, tank, glass and bottling, once; sizes.");
    logs.put(Registers.PAST, "What casks held before the log began.");
    return logs;
  }
}
