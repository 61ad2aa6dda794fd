package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.given;
import static meadcell.samples.cellar.Formulas.lastDay;
import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.SG;
import static meadcell.samples.sheet.Table.always;

import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Page;
import meadcell.samples.sheet.Workings;

/** From a vessel to the bottle: rest, pressure, sulfite, sorbate, counts. */
final class BottlePage {
  static final String TITLE = "Bottle this";
  private static final int READINGS = 12;

  /**
   * Wait until it is still; then the bottle must bear all that may ferment. A blank is no verdict.
   */
  private static final String VERDICT =
      """
      IF(bottle_lot="","Choose what to bottle.",
      IF(bottle_volume="",bottle_lot&" holds nothing on this day.",
      IF(bottle_abv="",bottle_unknown,
      IF(OR(rest_expected="",rest_horizon="",bottle_store="",rest_rating="",bottle_co2=""),"No verdict: a framed cell under Will the bottle bear it is blank.",
      IF(COUNT(rest_days)=0,"Wait: Readings has none of this vessel at rest. As warm as the bottles will be stored, over weeks.",
      IF(rest_sugar="","Wait: "&CELLAR.WHY("FERMENT.REMAINING",rest_days,rest_gravities,rest_horizon),
      IF(rest_pressure="","No verdict: "&CELLAR.WHY("BOTTLE.REFERMENT",MIN(150,rest_sugar),bottle_abv,bottle_co2,bottle_store,units),
      IF(OR(rest_state="falling",rest_state="cannot tell"),"Wait: "&CELLAR.WHY("FERMENT.STATE",rest_days,rest_gravities,rest_expected),
      IF(bottle_pressure="","Stabilise: "&CELLAR.WHY("BOTTLE.WORSTPRESSURE",rest_original,rest_last,bottle_abv,"",bottle_co2,bottle_store,units),
      IF(bottle_pressure<=rest_rating,"Bottle: it is at rest, and all that may be sugar in it comes to "&FIXED(bottle_pressure,0,TRUE)&UNIT&", for which the bottle is rated ("&FIXED(rest_rating,0,TRUE)&UNIT&").",
      "Stabilise: it is at rest, but all that may be sugar in it comes to "&IF(bottle_pressure>BURSTS,"more than any bottle bears",FIXED(bottle_pressure,0,TRUE)&UNIT)&", and the bottle is rated for "&FIXED(rest_rating,0,TRUE)&UNIT&"."&IF(rest_pressure<bottle_pressure," At the present pace "&FIXED(rest_pressure,0,TRUE)&UNIT&" could come of it by themselves.","")
      ))))))))))"""
          .replace("\n", "")
          .replace("BURSTS", "IF(units=\"US\",145,1000)")
          .replace("UNIT", "IF(units=\"US\",\" psi\",\" kPa\")");

  private BottlePage() {}

  /** The readings of the vessel since it was filled, in the order of days. */
  static void workings(Workings state) {
    state.array(
        READINGS,
        "IFERROR(LARGE(IF((g_lot=bottle_lot)*(g_day<=today)*(g_day>=bottle_since)*(g_day>=1+INT(MAXIFS(ad_key,ad_vessel,bottle_lot&\"\",ad_key,\"<\"&(today+1)))),g_day+ROW(g_day)/100000,\"\"),ROW($A$1:$A$"
            + READINGS
            + ")),\"\")",
        "rest_keys");
  }

  static void add(Book book) {
    Page page = book.page(TITLE, 38, 15, 23, 23, 2, 13, 11).onSheets(1);
    Block head =
        page.head(
            TITLE,
            "Is it still, will the bottle bear it, what goes in? Volume, strength and sugar come from the logs.");
    int top = head.row();
    Block left = page.at(top, 0, 4);
    left.choose("Vessel", "vessel_list", "C2", "bottle_lot", "")
        .verdict(VERDICT, 5, "bottle_verdict");
    contents(book, left);
    rest(left);
    sulfite(left);
    counts(left);
    left.note("What the label says, tax and duty: page Label.");
    Block right = page.at(top, 5, 2);
    String key = "INDEX(rest_keys,COUNT(rest_keys)-#+2)";
    right
        .heading("Readings at rest")
        .table(
            READINGS,
            always("Read on", DATE, "IF(#>COUNT(rest_keys),\"\",INT(KEY))".replace("KEY", key)),
            always(
                "Gravity",
                SG,
                "IF([Read on]=\"\",\"\",INDEX(g_gravity,ROUND(MOD(KEY,1)*100000,0)))"
                    .replace("KEY", key)))
        .name("Read on", "rest_days")
        .name("Gravity", "rest_gravities");
    right.note("The last of this vessel in Readings, since it was filled and fed.");
  }

  private static String latest(String property) {
    return Formulas.latest("bottle_lot", property, "bottle_since");
  }

  /** Void from the day on which sulfite was added. */
  private static String free() {
    return given(
        "bottle_since",
        "IF(%s<=%s,\"\",%s)"
            .formatted(
                lastDay("bottle_lot", "free SO2", "bottle_since"),
                Formulas.lastSulfite("bottle_lot&\"\"", "today"),
                latest("free SO2")));
  }

  private static void contents(Book book, Block block) {
    Filled.add(book, block, "bottle");
    block.form(
        """
        Sugar, at least | bottle_sugar_low  | GRAM_PER_LITRE 1     | =IF(bottle_sugar<>"",MAX(0,bottle_sugar-2*bottle_sugar_u),IF(rest_original="","",IFERROR(INDEX(ALCOHOL.SUGARLEFTLIMITS(rest_original,rest_last),1,1),""))) | Measured, less twice its uncertainty; else by the last gravity.
        Sugar, at most  | bottle_sugar_high | GRAM_PER_LITRE 1     | =IF(bottle_sugar<>"",bottle_sugar+2*bottle_sugar_u,IF(rest_original="","",IFERROR(INDEX(ALCOHOL.SUGARLEFTLIMITS(rest_original,rest_last),1,2),""))) | The pressure takes this one.
        pH              | bottle_ph         | PH 2                 | =LASTPH | The last measured in this vessel. pH does not blend.
        Free SO₂        | so2_free          | MILLIGRAM_PER_LITRE 0 | =LASTFREE | Blank: not measured since it was filled, and after its last sulfite.
        """
            .replace("LASTPH", latest("pH"))
            .replace("LASTFREE", free()));
  }

  private static void rest(Block block) {
    block.form(
        """
        # Will the bottle bear it
        Gravity at which it may end                | rest_expected   | FERMENT.STATE expected 3     | 0.996
        Days in the bottle                         | rest_horizon    | FERMENT.REMAINING horizon 0  | 365
        Warmest store                              | bottle_store    | BOTTLE.REFERMENT temperature 0 | 30
        The bottle is rated for                    | rest_rating     | PRESSURE 0 0..1500           | 100 | Its maker's figure. Still-wine bottles have none: at most 100 kPa, and corks creep from 150 (common practice, no source).
        Carbon dioxide                             | bottle_co2      | BOTTLE.TAXCLASS co2 1        | 0.9 | g/L; still means at most 3.92.
        Last gravity                               | rest_last       | SPECIFIC_GRAVITY 4           | =IF(COUNT(rest_days)=0,"",INDEX(rest_gravities,MATCH(MAX(rest_days),rest_days,0)))
        Original gravity that gives this strength  | rest_original   | SPECIFIC_GRAVITY 3           | =IF(OR(rest_last="",bottle_abv=""),"",IFERROR(ALCOHOL.ORIGINAL(bottle_abv,rest_last),"")) | For a blend, or a mead that was sweetened.
        State                                      | rest_state      | TEXT                         | =IF(OR(COUNT(rest_days)=0,rest_expected=""),"",IFERROR(FERMENT.STATE(rest_days,rest_gravities,rest_expected),"cannot tell"))
        Further fall, at most                      |                 | SPECIFIC_GRAVITY 4           | =IF(COUNT(rest_days)=0,"",IFERROR(INDEX(FERMENT.REMAINING(rest_days,rest_gravities,rest_horizon),1,2),"")) | At the present pace, over the days in the bottle; 95 % limit.
        as sugar                                   | rest_sugar      | GRAM_PER_LITRE 1             | =IF(COUNT(rest_days)=0,"",IFERROR(INDEX(FERMENT.REMAINING(rest_days,rest_gravities,rest_horizon),1,3),""))
        Pressure from it                           | rest_pressure   | PRESSURE 0                   | =IF(OR(rest_sugar="",bottle_abv="",bottle_co2=""),"",IFERROR(BOTTLE.REFERMENT(MIN(150,rest_sugar),bottle_abv,bottle_co2,bottle_store,units),"")) | Where it is more than that of the next line, the sugar runs out before.
        Pressure if all that may be sugar ferments | bottle_pressure | PRESSURE 0                   | =IF(OR(rest_last="",bottle_abv="",bottle_co2=""),"",IFERROR(IF(bottle_sugar<>"",BOTTLE.REFERMENT(bottle_sugar_high,bottle_abv,bottle_co2,bottle_store,units),BOTTLE.WORSTPRESSURE(rest_original,rest_last,bottle_abv,,bottle_co2,bottle_store,units)),"")) | Gauge, in the warmest store.
        ! Still-wine bottles are not made for pressure. Bottle only what is finished or truly stabilised; wear eye protection near bottles that may have gone on.
        """);
  }

  private static void sulfite(Block block) {
    block.form(
        """
        # Sulfite and sorbate
        Molecular SO₂ wanted    | so2_molecular | SULFITE.FREENEEDED molecular 2 | 0.6 | 0.5 to 0.8 mg/L: common practice for dry and sweet.
        Binds of what is added  | so2_bound     | SULFITE.DOSE bound 0           | 30 | Per cent; measure again after a day.
        Free SO₂ needed         | so2_needed    | MILLIGRAM_PER_LITRE 0          | =IF(OR(bottle_ph="",so2_molecular=""),"",SULFITE.FREENEEDED(so2_molecular,bottle_ph))
        Rise still needed       | so2_rise      | MILLIGRAM_PER_LITRE 0          | =IF(OR(so2_needed="",so2_free=""),"",MAX(0,so2_needed-so2_free)) | Blank while pH or free SO₂ are not measured.
        Potassium metabisulfite |               | GRAM 0                         | =IF(OR(so2_rise="",bottle_volume="",so2_bound=""),"",IF(so2_rise=0,0,SULFITE.DOSE(bottle_volume,so2_rise,57.6,so2_bound,units)))
        Sorbic acid wanted      | so2_sorbic    | SULFITE.SORBATE sorbicAcid 0   | 150 | Only where sugar is left and no lactic ferment has run.
        Potassium sorbate       |               | GRAM 0                         | =IF(OR(so2_sorbic="",bottle_volume=""),"",SULFITE.SORBATE(bottle_volume,so2_sorbic,"usa",units)) | Refused above the limit of the rule.
        Delle units             |               | DELLE 0                        | =IF(OR(bottle_sugar_low="",bottle_abv=""),"",BOTTLE.DELLE(bottle_sugar_low,bottle_abv)) | Below 78 sugar and alcohol alone do not keep it still; above it is no guarantee either.
        ! Sulfites can bring on asthma: weigh them under ventilation, declare them where the law asks. Limits differ from place to place.
        """);
  }

  private static void counts(Block block) {
    block.form(
        """
        # Bottles
        Bottle                   | bottle_size | BOTTLE.COUNT bottle 0 | 750
        Loss on the line         | bottle_loss | BOTTLE.COUNT loss 1   | 2
        Bottles to have ready    |             | COUNT 0               | =IF(OR(bottle_volume="",bottle_size=""),"",BOTTLE.COUNT(bottle_volume,bottle_size,bottle_loss,units))
        """);
  }
}
