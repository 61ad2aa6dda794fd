package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.COUNT;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Table.always;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Table;
import meadcell.samples.sheet.Workings;

/** A tasting's glasses to print: blind codes for the tasters, and the key for who pours. */
final class GlassesPage {
  static final String TITLE = "Glasses";
  private static final int TASTERS = 24;
  private static final List<String> PLACES =
      List.of("First", "Second", "Third", "Fourth", "Fifth", "Sixth");
  private static final List<String> DEMO = List.of("C1", "C2", "C4");
  private static final Field CODE = of(Quantity.NUMBER, 0);

  private static final String VERDICT =
      """
      IF(COUNTA(glass_1,glass_2,glass_3,glass_4,glass_5,glass_6)>glass_count,"A line between the meads is blank: choose them without a gap.",
      IF(glass_count<2,"Choose two meads or more.",
      IF(glass_tasters="","Type how many tasters.",
      IF(glass_tasters>ROOM,"The sheet has room for ROOM tasters: print the others with another seed.",
      IF(glass_seed="","Type a seed: any whole number, another for each tasting.",
      IF(ISERROR(INDEX(glass_orders,1,1)),CELLAR.WHY("PANEL.SERVING",glass_count,glass_tasters,glass_seed),
      IF(MOD(glass_tasters,IF(MOD(glass_count,2)=0,1,2)*glass_count)=0,"Balanced: each mead stands equally often at each place, and right after each other mead.",
      "Not fully balanced. Each mead is at most once more often at a place than another; what went before it is not balanced. That takes "&IF(MOD(glass_count,2)=0,1,2)*glass_count&" tasters, or a multiple of it."
      )))))))"""
          .replace("\n", "")
          .replace("ROOM", Integer.toString(TASTERS));

  private GlassesPage() {}

  static void workings(Workings state) {
    arrays(state, "glass_orders", "PANEL.SERVING(glass_count,glass_tasters,glass_seed)");
    arrays(state, "glass_codes", "PANEL.CODES(glass_tasters,glass_count,glass_seed)");
  }

  private static void arrays(Workings state, String name, String formula) {
    String[] headers =
        IntStream.rangeClosed(1, PLACES.size())
            .mapToObj(place -> name + "_" + place)
            .toArray(String[]::new);
    state
        .array(TASTERS, formula, headers)
        .block(name, headers[0], headers[headers.length - 1], TASTERS);
  }

  static void add(Book book) {
    book.formulaName(
        "glass_count",
        "IF(glass_1=\"\",0,IF(glass_2=\"\",1,IF(glass_3=\"\",2,IF(glass_4=\"\",3,IF(glass_5=\"\",4,IF(glass_6=\"\",5,6))))))");
    Page page = book.page(TITLE, 20, 15, 15, 15, 15, 15, 15);
    Block block =
        page.head(
            TITLE,
            "Who gets which mead when, under which code. Each part prints on its own paper; the key stays with who pours.");
    asked(block);
    int tasters = block.row();
    page.turn(tasters);
    block
        .heading("For the tasters")
        .line("Tasting on", Block.Entry.worked(DATE, "IF(glass_day=\"\",\"\",glass_day)", ""));
    table(block, CODE, "INDEX(glass_codes,#,PLACE)");
    block
        .note(
            "Taste from left to right, write down each glass by its code before the next, do not talk. Cut between the rows to give each taster only the own.")
        .warning(
            "Spit, and rinse with water: nobody who has been tasting drives or runs a machine. These meads may hold sulfites, which can bring on asthma, and traces of what fined them; who must not take alcohol, sulfites or honey does not taste.");
    page.turn(block.row());
    block
        .heading("Key: keep it from the tasters until all scores are written down")
        .line("Tasting on", Block.Entry.worked(DATE, "IF(glass_day=\"\",\"\",glass_day)", ""));
    table(
        block,
        TEXT,
        "INDEX(glass_codes,#,PLACE)&\"  \"&CHOOSE(INDEX(glass_orders,#,PLACE),glass_1,glass_2,glass_3,glass_4,glass_5,glass_6)");
    block.note(
        "Label each glass with its code, pour the mead beside it: alike glasses, the same amount and temperature, out of the tasters' sight. Then write the scores into Tastings, by vessel.");
  }

  private static void asked(Block block) {
    block
        .input("Tasting on", DATE, LocalDate.of(2026, 3, 9), "glass_day", "")
        .input(
            "Tasters",
            between(Quantity.COUNT, 0, "1 to " + TASTERS + ".", 1, TASTERS),
            6.0,
            "glass_tasters",
            "A taster who comes back for a second set counts as another.");
    for (int i = 0; i < PLACES.size(); i++) {
      block.choose(
          PLACES.get(i) + " mead",
          "vessel_list",
          i < DEMO.size() ? DEMO.get(i) : null,
          "glass_" + (i + 1),
          i == 2 ? "Leave blank what is not served, from the last on." : "");
    }
    block
        .input(
            "Seed",
            arg("PANEL.SERVING", "seed", 0),
            309.0,
            "glass_seed",
            "Any whole number: it gives these orders and codes again. Another for each tasting.")
        .verdict(VERDICT, 2);
  }

  private static void table(Block block, Field field, String value) {
    Table.Column taster =
        always("Taster", COUNT, "IF([PLACE 1]=\"\",\"\",#)".replace("PLACE 1", header(1)));
    Stream<Table.Column> places =
        IntStream.rangeClosed(1, PLACES.size())
            .mapToObj(
                place ->
                    always(
                        header(place),
                        field,
                        "IF(OR(glass_tasters=\"\",glass_tasters>ROOM,#>glass_tasters,PLACE>glass_count),\"\",IFERROR(VALUE,\"\"))"
                            .replace("VALUE", value)
                            .replace("ROOM", Integer.toString(TASTERS))
                            .replace("PLACE", Integer.toString(place))));
    block.table(TASTERS, Stream.concat(Stream.of(taster), places).toArray(Table.Column[]::new));
  }

  private static String header(int place) {
    return PLACES.get(place - 1) + " glass";
  }
}
