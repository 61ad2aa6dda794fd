package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Field.words;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;

/** Who made each cask, of what, how large, and everything it ever held. */
final class BarrelRegister {
  static final String TITLE = "Barrel register";
  static final int CASKS = 8;
  static final int FILLS = 12;
  private static final String FILLS_BEFORE =
      "Fills before the first line about this cask below. 0: it came new, or the list is whole.";

  private BarrelRegister() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 8, 22, 18, 12, 12, 10, 9, 9, 9, 11, 11, 12, 13, 13);
    Block block =
        page.head(
            "Barrel register",
            "Inside sizes are measured once, empty and dry, through the bung hole and along the axis."
                + " Everything about contents and wood follows from them.");
    Table casks =
        block.table(
            CASKS,
            in("Cask", TEXT),
            in("Cooper", TEXT),
            in("Wood", TEXT),
            in("Toast", words("none", "light", "medium", "heavy", "char")),
            in("Made", of(Quantity.NUMBER, 0)),
            in("Fills before", between(Quantity.COUNT, 0, FILLS_BEFORE, 0, 20)),
            in("Head", arg("BARREL.VOLUME", "head", 1)),
            in("Bilge", arg("BARREL.VOLUME", "bilge", 1)),
            in("Length", arg("BARREL.VOLUME", "length", 1)),
            out("Inside volume", VOLUME, "BARREL.VOLUME([Head],[Bilge],[Length],units)"),
            out("Wetted wood", of(Quantity.AREA, 2), "BARREL.AREA([Head],[Bilge],[Length],units)"),
            out(
                "Wood, 225 L = 1",
                of(Quantity.NUMBER, 2),
                "BARREL.OAKRATIO([Head],[Bilge],[Length],units)"),
            in("Holds now", TEXT),
            in("Filled on", DATE));
    page.freeze(casks.top());
    casks.fill(
        """
            C1 | cooperage in the valley | oak, American | char   | 2021 | 0 | 50   | 60   | 80 | Heather 25 | 2025-05-12
            C2 | cooperage by the lake   | chestnut      | light  | 2016 | 0 | 51   | 64   | 81 | Heather 25 | 2025-05-12
            C3 | cooperage by the lake   | oak, sessile  | medium | 2025 | 0 | 50.5 | 63.5 | 81 | Bochet 25  | 2025-06-16
            C4 | cooperage in the valley | oak, sessile  | light  | 2018 | 4 | 40   | 50   | 66 | Cherry 25  | 2025-10-06
            """);
    casks
        .name("Cask", "register_cask")
        .name("Head", "register_head")
        .name("Bilge", "register_bilge")
        .name("Length", "register_length")
        .name("Inside volume", "register_volume")
        .name("Wetted wood", "register_area")
        .name("Wood, 225 L = 1", "register_ratio")
        .name("Fills before", "register_before")
        .name("Holds now", "register_lot")
        .name("Filled on", "register_filled");
    block
        .heading("Every past occupant, oldest first")
        .note(
            "One line for each fill of each cask that is known; how many went before them stands above, as"
                + " the seller said. The sheet Barrels counts and reads a cask's lines from here.");
    Table occupants =
        block.table(
            FILLS,
            in("Cask", TEXT),
            in("Liquid", TEXT),
            in("From", DATE),
            in("To", DATE),
            in("Strength", arg("BLEND.ABV", "abvs", 1)),
            in("Volume", arg("BARREL.HISTORY", "volumes", 0)),
            out("Months", of(Quantity.NUMBER, 0), "([To]-[From])*12/365.25"),
            out("Fill", TEXT, "[Cask]&\"/\"&COUNTIF(INDEX(occupant_cask,1):[Cask],[Cask])"));
    occupants.fill(
        """
            C1 | rye spirit | 2021-03-01 | 2025-03-10 | 60   | 196
            C2 | white wine | 2016-10-03 | 2019-09-02 | 12.5 | 224
            C2 | vermouth   | 2019-09-09 | 2023-05-08 | 17   | 225
            C2 | Heather 23 | 2023-06-05 | 2024-05-27 | 13.8 | 226
            C2 | Heather 24 | 2024-06-03 | 2025-05-09 | 14.1 | 225
            C4 | Cherry 23  | 2023-09-04 | 2024-08-26 | 12.2 | 112
            C4 | Cherry 24  | 2024-09-09 | 2025-09-29 | 12.4 | 113
            """);
    occupants
        .name("Cask", "occupant_cask")
        .name("Fill", "occupant_fill")
        .name("Liquid", "occupant_liquid")
        .name("Volume", "occupant_volume");
  }
}
