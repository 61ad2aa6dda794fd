package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Field.words;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** What tasters found, cask by cask. */
final class TastingNotes {
  static final String TITLE = "Tasting notes";

  private TastingNotes() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 11, 7, 8, 9, 15, 22, 16, 18, 8, 8, 8, 9, 9, 12, 8, 10);
    Field tenth = between(Quantity.SCORE, 0, "0 (none) to 10 (very strong).", 0, 10);
    Table notes =
        page.head(
                "Tasting notes",
                "One line for each taster and cask. Draw the sample through the nail hole, not the bung; taste blind where you can.")
            .table(
                36,
                in("Date", DATE),
                in("Cask", TEXT),
                out(
                    "Months in wood",
                    of(Quantity.NUMBER, 1),
                    "([Date]-INDEX(register_filled,MATCH([Cask],register_cask,0)))*12/365.25"),
                in("Taster", TEXT),
                in("Appearance", TEXT),
                in("Aroma", TEXT),
                in("Attack", TEXT),
                in("Mid-palate", TEXT),
                in("Finish", between(Quantity.SECONDS, 0, "Seconds that the taste lasts.", 0, 120)),
                in("Sweet", tenth),
                in("Acid", tenth),
                in("Astrin- gent", tenth),
                in("Savour", tenth),
                in("Faults", words("none", "stale", "acetic", "sulfurous", "mousy", "other")),
                in("Score", between(Quantity.SCORE, 1, "0 to 20.", 0, 20)),
                in("Verdict", words("wait", "top up", "blend", "bottle")));
    page.freeze(notes.top());
    notes.fill(
        """
            2025-08-18 | C1 | A | hazy gold   | spirit, raw grain    | hot    | thin               | 6  | 2 | 5 | 4 | 3 | none  | 10.5 | wait
            2025-08-18 | C1 | B | hazy gold   | rye bread, spirit    | hot    | lean, spicy        | 8  | 2 | 5 | 5 | 3 | none  | 11   | wait
            2025-08-18 | C2 | A | gold        | heather, bitter herb | soft   | herbal             | 9  | 2 | 5 | 3 | 5 | none  | 12   | wait
            2025-08-18 | C3 | A | brown       | sawdust, caramel     | woody  | dry, planky        | 7  | 5 | 4 | 7 | 4 | none  | 9.5  | wait
            2025-11-17 | C1 | A | bright gold | rye, heather honey   | warm   | spice, wax         | 12 | 2 | 5 | 4 | 5 | none  | 13   | wait
            2025-11-17 | C1 | C | bright gold | grain, vanilla       | warm   | round              | 11 | 2 | 5 | 4 | 5 | none  | 13.5 | wait
            2025-11-17 | C2 | A | bright gold | wormwood, heather    | soft   | herbal, long       | 14 | 2 | 5 | 4 | 6 | none  | 13.5 | wait
            2025-11-17 | C4 | B | garnet      | cherry stone         | sharp  | juicy              | 10 | 3 | 7 | 4 | 4 | none  | 12.5 | wait
            2026-02-16 | C1 | A | bright gold | rye crust, honeycomb | warm   | full, waxy         | 17 | 2 | 5 | 4 | 6 | none  | 15   | wait
            2026-02-16 | C1 | B | bright gold | honeycomb, clove     | round  | full               | 16 | 2 | 5 | 4 | 6 | none  | 15.5 | blend
            2026-02-16 | C2 | A | bright gold | orange peel, herb    | soft   | long, bitter-sweet | 18 | 2 | 5 | 4 | 7 | none  | 15   | blend
            2026-02-16 | C3 | C | brown       | caramel, stale nut   | flat   | short              | 6  | 5 | 4 | 6 | 4 | stale | 10   | top up
            2026-02-16 | C4 | B | garnet      | cherry, almond       | bright | juicy, fine        | 15 | 3 | 6 | 4 | 5 | none  | 14.5 | wait
            """);
  }
}
