package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.cell;
import static meadcell.samples.cellar.Formulas.given;
import static meadcell.samples.cellar.Formulas.orBlank;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Workings;

/**
 * What Additions say was fed to a ferment: all that is not known to bring no sugar. From it the
 * original gravity that counts, feed by feed. Where one cannot be counted it stays blank from then
 * on, and a sentence says why.
 */
final class Feeds {
  static final int MOST = 12;
  private static final int LOTS = Registers.MOST_LOTS + 20;

  /** A vessel with less of the lot is not what the lot's readings tell of. */
  private static final String WHOLE = "0.75";

  private static final String CALL =
      "\"FERMENT.AFTERADDITION\",[feed_volume],[feed_original],[feed_present],[feed_what],[feed_mass],\"\",\"\",\"\",kept";

  private Feeds() {}

  /** What has one of these in its name is sulfite, */
  private static final List<String> SULFITE = List.of("sulfi", "sulphi", "so2");

  /** changes the acid, */
  private static final List<String> ACID = List.of("acid", "carbonat");

  /** or neither; none of these brings sugar. */
  private static final List<String> NEITHER =
      List.of(
          "sorb",
          "phosphat",
          "nutri",
          "yeast",
          "fining",
          "bentonit",
          "gelatin",
          "enzym",
          "tannin",
          "oak",
          "chip");

  private static final List<String> WITHOUT_SUGAR =
      Stream.of(SULFITE, ACID, NEITHER).flatMap(List::stream).toList();

  static void workings(Book book, Workings state) {
    ofLots(state);
    chosen(state);
    book.formulaName("feed_last", "MAX(feed_day)");
  }

  /** The vessel that each pitched lot came into. */
  private static void ofLots(Workings rows) {
    rows.column(
            "l_came",
            LOTS,
            "IF(ROW()>ROWS(lot_name),\"\",IF(ISNUMBER(INDEX(lot_pitched,ROW())),IFERROR(MATCH(INDEX(lot_name,ROW())&\"\",mv_from,0),\"\"),\"\"))")
        .column("l_in", LOTS, "IF([l_came]=\"\",\"\",INDEX(mv_to,[l_came]))")
        .column("l_key", LOTS, "IF([l_came]=\"\",\"\",INDEX(mv_day,[l_came])+(ROW()-1)/1000)")
        .column(
            "l_fed",
            LOTS,
            "IF([l_came]=\"\",0,INT(MAXIFS(ad_key,ad_lot,INDEX(lot_name,ROW()),ad_key,\"<\"&(today+1))))");
  }

  /**
   * Which rows of Additions feed which lot: the last one pitched in there, else what lies there.
   */
  static void fed(Workings additions) {
    additions
        .following(
            "ad_day",
            "IF(ISNUMBER({addition_day})*({addition_vessel}<>\"\")*({addition_what}<>\"\"),INT({addition_day}),\"\")")
        .following("ad_vessel", "IF([ad_day]=\"\",\"\",{addition_vessel}&\"\")")
        .following("ad_sulfite", named("[ad_day]", "\"\"", SULFITE))
        .following("ad_acid", named("[ad_day]", "\"\"", ACID))
        .following("ad_key", named("\"\"", "[ad_day]+[ROW]/100000", WITHOUT_SUGAR))
        .following("ch_vessel", "IF([ch_what]=\"\",\"\",{addition_vessel}&\"\")")
        .following("ch_day", "IF([ch_what]=\"\",\"\",INT({addition_day}))")
        .following(
            "ch_what",
            "IF({addition_vessel}=\"\",\"\",IF(([ad_key]<>\"\")+([ad_sulfite]<>\"\")*([ad_acid]<>\"\")>0,\"everything\",IF([ad_sulfite]<>\"\",\"total SO2\",IF([ad_acid]<>\"\",\"titratable acidity\",\"\"))))")
        .block("changes_block", "ch_vessel", "ch_what")
        // 1, which is no row of a lot, where none was
        .following(
            "ad_by",
            "IF([ad_key]=\"\",1,1+ROUND(MOD(MAXIFS(l_key,l_in,[ad_vessel],l_key,\"<\"&(IF([ad_key]=\"\",0,INT({addition_day}))+1)),1)*1000,0))")
        .following(
            "ad_lot",
            "IF([ad_key]=\"\",\"\",IF(([ad_by]>1)*((INDEX(lot_closed,[ad_by])=\"\")+(INDEX(lot_closed,[ad_by])>=INT({addition_day}))>0),INDEX(lot_name,[ad_by])&\"\",INDEX(held_lot,MATCH([ad_vessel],held_name,0))))");
  }

  /** One or the other, by whether the name of what was added has one of these words in it. */
  private static String named(String with, String without, List<String> words) {
    String found =
        words.stream()
            .map(word -> "ISNUMBER(SEARCH(\"" + word + "\",{addition_what}))")
            .collect(Collectors.joining("+"));
    return "IF([ad_day]=\"\",\"\",IF(%s>0,%s,%s))".formatted(found, with, without);
  }

  /** The feeds of the chosen lot, one after the other. */
  private static void chosen(Workings rows) {
    String first = "IF(ROW()=2,FIRST,BEFORE)";
    rows.array(
            MOST,
            "IFERROR(SMALL(IF((ad_lot=ferment&\"\")*(ad_key<1+IF(ISNUMBER(ferment_closed),MIN(today,ferment_closed),today)),ad_key,\"\"),ROW($A$1:$A$"
                + MOST
                + ")),\"\")",
            "feed_key")
        .column("feed_row", MOST, given("[feed_key]", "ROUND(MOD([feed_key],1)*100000,0)"))
        .column("feed_day", MOST, given("[feed_key]", "INT([feed_key])"))
        .column("feed_vessel", MOST, given("[feed_key]", "INDEX(addition_vessel,[feed_row])&\"\""))
        .column(
            "feed_what",
            MOST,
            given(
                "[feed_key]",
                "IF(ISNUMBER(SEARCH(\"honey\",INDEX(addition_what,[feed_row]))),\"honey\",INDEX(addition_what,[feed_row])&\"\")"))
        .column("feed_mass", MOST, given("[feed_key]", mass()))
        .column(
            "feed_original",
            MOST,
            given(
                "[feed_key]",
                first
                    .replace("FIRST", "ferment_original")
                    .replace("BEFORE", "INDEX(feed_counts,ROW()-1)")))
        .column(
            "feed_read",
            MOST,
            given("[feed_key]", "MAXIFS(g_day,g_lot,ferment&\"\",g_day,\"<=\"&[feed_day])"))
        .column(
            "feed_present",
            MOST,
            given(
                "[feed_key] [feed_original]",
                "IF([feed_read]=0,[feed_original],MIN([feed_original],AVERAGEIFS(g_gravity,g_lot,ferment&\"\",g_day,[feed_read])))"))
        // by Movements, and what was fed before, unless that stands there too
        .column(
            "feed_volume",
            MOST,
            given(
                "[feed_key]",
                orBlank(
                    "VESSEL.HOLDS(moves,[feed_vessel],[feed_day],kept)+MAX(0,"
                        + first
                            .replace("FIRST", "0")
                            .replace("BEFORE", "N(INDEX(feed_grown,ROW()-1))")
                        + "-SUMIFS(mv_volume,mv_to,[feed_vessel],mv_from,\"*honey*\",mv_day,\"<=\"&[feed_day]))")))
        .column(
            "feed_whole",
            MOST,
            given(
                "[feed_volume]",
                "IF([feed_volume]>="
                    + WHOLE
                    + "*SUMIFS(mv_volume,mv_from,ferment&\"\",mv_day,\"<=\"&[feed_day]),1,0)"))
        .column("feed_counts", MOST, after(1))
        .column("feed_left", MOST, after(2))
        .column("feed_filled", MOST, after(3))
        .column(
            "feed_grown",
            MOST,
            given(
                "[feed_counts]",
                first.replace("FIRST", "0").replace("BEFORE", "N(INDEX(feed_grown,ROW()-1))")
                    + "+[feed_filled]-[feed_volume]"))
        .column(
            "feed_why",
            MOST,
            "IF(OR([feed_key]=\"\",[feed_counts]<>\"\"),\"\",IF([feed_original]=\"\",IF(ROW()=2,\"Lots has no original gravity of it.\",\"one before it is not counted.\"),"
                + "IF([feed_mass]=\"\",\"it takes an amount in kg, g or lb; honey and water also in L, mL or US gal.\","
                + "IF(N([feed_volume])=0,\"by Movements \"&[feed_vessel]&\" holds nothing on that day.\","
                + "IF([feed_whole]=0,[feed_vessel]&\" holds only a part of the lot, and readings tell of the whole.\","
                + "CELLAR.WHY("
                + CALL
                + "))))))")
        .block("feed_whys", "feed_why", "feed_why", MOST)
        .block("feeds", "feed_key", "feed_why", MOST);
  }

  /** In the unit of the book; of honey and water by volume, too. */
  private static String mass() {
    return orBlank(
        "IF(N(INDEX(addition_amount,[feed_row]))<=0,\"\",INDEX(addition_amount,[feed_row])*SWITCHED)"
            .replace(
                "SWITCHED",
                "IF(UNIT=\"kg\",1,IF(UNIT=\"g\",0.001,IF(UNIT=\"lb\",0.45359237,IF(UNIT=\"L\",1,IF(UNIT=\"mL\",0.001,IF(UNIT=\"US gal\",3.785411784,NA())))*IF([feed_what]=\"honey\",HONEY.DENSITY(),IF([feed_what]=\"water\",GRAVITY.DENSITY(1,20,0),NA())))))"
                    + "/IF(kept=\"US\",0.45359237,1)")
            .replace("UNIT", "INDEX(addition_unit,[feed_row])"));
  }

  private static String after(int place) {
    return given(
        "[feed_original] [feed_mass] [feed_volume]",
        "IF([feed_whole]=0,\"\","
            + orBlank(
                cell(
                    CALL.replace("\"FERMENT.AFTERADDITION\",", "FERMENT.AFTERADDITION(")
                            .replace("\"\"", "")
                        + ")",
                    place))
            + ")");
  }

  /**
   * The original gravity that counts for a reading: a reading of the day of a feed is before it.
   */
  static String counting(String day) {
    return "IF(COUNTIF(feed_day,\"<\"&DAY)=0,ferment_original,INDEX(feed_counts,1+COUNTIF(feed_day,\"<\"&DAY)))"
        .replace("DAY", day);
  }
}
