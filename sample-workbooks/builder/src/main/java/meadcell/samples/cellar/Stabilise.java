package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.DATE;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Table.in;

import meadcell.law.UsHoneyWine;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;

/** From the blend to the bottle: sulfite, sorbate, counts, label, tax, pressure. */
final class Stabilise {
  static final String TITLE = "Stabilise & bottle";

  /** Wait until it is still; then the bottle must bear all that may ferment. */
  private static final String VERDICT =
      """
      IF(ISERROR(rest_pressure),"Wait: "&CELLAR.WHY("FERMENT.REMAINING",rest_days,rest_gravities,rest_horizon),
      IF(rest_state="falling","Wait: it still ferments. "&CELLAR.WHY("FERMENT.STATE",rest_days,rest_gravities,rest_expected),
      IF(rest_state="cannot tell","Wait: "&CELLAR.WHY("FERMENT.STATE",rest_days,rest_gravities,rest_expected),
      IF(ISERROR(bottle_pressure),"Stabilise: "&CELLAR.WHY("BOTTLE.WORSTPRESSURE",rest_original,rest_last,bottle_abv,"",bottle_co2,bottle_store,units),
      IF(bottle_pressure<=rest_rating,"Bottle: it is at rest, and all that may be sugar in it comes to "&TEXT(bottle_pressure,"0")&UNIT&", for which the bottle is rated ("&TEXT(rest_rating,"0")&UNIT&").",
      "Stabilise: it is at rest, but all that may be sugar in it comes to "&IF(bottle_pressure>BURSTS,"more than any bottle bears",TEXT(bottle_pressure,"0")&UNIT)&", and the bottle is rated for "&TEXT(rest_rating,"0")&UNIT&". At the present pace "&TEXT(rest_pressure,"0")&UNIT&" could come of it by themselves"&IF(rest_measured="yes",".",": have the sugar measured, or read on.")
      )))))"""
          .replace("\n", "")
          .replace("BURSTS", "IF(units=\"US\",145,1000)")
          .replace("UNIT", "IF(units=\"US\",\" psi\",\" kPa\")");

  private Stabilise() {}

  static void add(Book book) {
    Block block =
        book.page(TITLE, 38, 14, 22, 22, 22)
            .head(
                TITLE,
                "The blend's numbers come from the sheet Blend; the laboratory's go into the framed cells.");
    blend(block);
    sulfite(block);
    counts(block);
    label(block);
    pressure(block);
  }

  private static void blend(Block block) {
    block.form(
        """
            # What is bottled
            Volume                   | bottle_volume | VOLUME 1               | =plan_volume
            Strength by calculation  |               | PERCENT_VOL 2          | =plan_abv
            Strength by laboratory   | bottle_abv    | BOTTLE.TAXCLASS abv 2  | 14.0 | At 20 °C.
            its standard uncertainty | bottle_u      | PERCENT_VOL 2 0.01..2  | 0.1 | Half of the ± that the certificate prints.
            Fermentable sugar        | bottle_sugar  | GRAM_PER_LITRE 1       | =plan_sugar
            Sugar measured           | rest_measured | yes/no                 | no | In this blend, by a laboratory or an enzymatic test, not by hydrometer.
            its standard uncertainty | bottle_u_sugar | GRAM_PER_LITRE 1 0..20 | 0.5 | Of the measurement.
            Sugar, at least          | bottle_sugar_low | GRAM_PER_LITRE 1    | =IF(rest_measured="yes",MAX(0,bottle_sugar-2*bottle_u_sugar),INDEX(ALCOHOL.SUGARLEFTLIMITS(rest_original,rest_last),1,1)) | If it was not measured: by the last gravity of the blend at rest, below.
            Sugar, at most           | bottle_sugar_high | GRAM_PER_LITRE 1   | =IF(rest_measured="yes",bottle_sugar+2*bottle_u_sugar,INDEX(ALCOHOL.SUGARLEFTLIMITS(rest_original,rest_last),1,2)) | Pressure and the sweetness word take this one.
            Acid                     | bottle_acid   | GRAM_PER_LITRE 1       | =plan_acid
            pH                       | bottle_ph     | SULFITE.MOLECULAR ph 2 | 3.52 | Measured on the bench blend. pH does not blend by volume.
            """);
  }

  private static void sulfite(Block block) {
    block.form(
        """
            # Sulfite and sorbate
            Free SO₂ now                      | so2_free      | SULFITE.MOLECULAR free 0       | 14
            Molecular SO₂ wanted              | so2_molecular | SULFITE.FREENEEDED molecular 2 | 0.6 | 0.5 to 0.8 mg/L: common practice for dry and sweet.
            Binds of what is added            | so2_bound     | SULFITE.DOSE bound 0           | 30 | Per cent; measure again after a day.
            Temperature of the cellar         | so2_temperature | SULFITE.MOLECULAR temperature 0 | 13
            Molecular SO₂ now                 |               | MILLIGRAM_PER_LITRE 2          | =SULFITE.MOLECULAR(so2_free,bottle_ph) | With the everyday constant pK 1.81.
            the same after OIV                |               | MILLIGRAM_PER_LITRE 2          | =SULFITE.MOLECULAR(so2_free,bottle_ph,"oiv",bottle_abv,so2_temperature,units) | Alcohol and temperature counted. Below 20 °C extrapolated: the truth may be a third lower. Trade targets were set with the line above.
            Free SO₂ needed                   | so2_needed    | MILLIGRAM_PER_LITRE 0          | =SULFITE.FREENEEDED(so2_molecular,bottle_ph)
            Rise still needed                 | so2_rise      | MILLIGRAM_PER_LITRE 0          | =MAX(0,so2_needed-so2_free)
            Potassium metabisulfite           |               | GRAM 0                         | =IF(so2_rise=0,0,SULFITE.DOSE(bottle_volume,so2_rise,57.6,so2_bound,units))
            or stock solution, 10 g in 100 mL |               | MILLILITRE 0                   | =IF(so2_rise=0,0,SULFITE.SOLUTION(bottle_volume,so2_rise,10,so2_bound,units))
            Sorbic acid wanted                | so2_sorbic    | SULFITE.SORBATE sorbicAcid 0   | 150 | Only where sugar is left and no lactic ferment has run.
            Potassium sorbate                 |               | GRAM 0                         | =SULFITE.SORBATE(bottle_volume,so2_sorbic,"usa",units) | Refused above the limit of the rule.
            Delle units                       |               | DELLE 0                        | =BOTTLE.DELLE(bottle_sugar_low,bottle_abv) | With the least that may be sugar. Below 78 sugar and alcohol alone do not keep it still; above it is no guarantee either.
            ! Sulfites can bring on asthma: weigh them under ventilation, declare them where the law asks. Limits differ from place to place.
            """);
  }

  private static void counts(Block block) {
    block.form(
        """
            # Bottles
            Bottle                           | bottle_size | BOTTLE.COUNT bottle 0 | 750
            Loss on the line                 | bottle_loss | BOTTLE.COUNT loss 1   | 2
            Bottles to have ready            |             | COUNT 0               | =BOTTLE.COUNT(bottle_volume,bottle_size,bottle_loss,units)
            Volume when the mead is at 12 °C |             | VOLUME 1              | =BOTTLE.VOLUMEAT(bottle_volume,20*degree+freezing,12*degree+freezing,bottle_abv,bottle_sugar,units) | Cold mead fills more bottles, and they rise when they warm.
            Standard drinks a bottle         |             | NUMBER 1              | =BOTTLE.DRINKS(bottle_size,bottle_abv) | US: 14 g of alcohol.
            Energy in 100 mL                 |             | KILOJOULE 0           | =BOTTLE.ENERGY(100,bottle_abv,bottle_sugar,7,bottle_acid) | With 7 g/L of glycerol.
            """);
  }

  private static void label(Block block) {
    block.form(
        """
            # Label and tax
            Strength on the label  | label_abv  | BOTTLE.LABELRANGE label 1 | 14.0
            Whose law              | label_rule | BOTTLE.LABELRANGE rule 0  | usa
            True strength at least | label_low  | PERCENT_VOL 1             | =INDEX(BOTTLE.LABELRANGE(label_abv,label_rule),1,1)
            True strength at most  | label_high | PERCENT_VOL 1             | =INDEX(BOTTLE.LABELRANGE(label_abv,label_rule),1,2) | US: 14 % itself must not be crossed.
            ? 2 | label_verdict | IF(AND(bottle_abv-2*bottle_u>=label_low,bottle_abv+2*bottle_u<=label_high),"The label holds, with twice the uncertainty to spare.",IF(OR(bottle_abv+2*bottle_u<label_low,bottle_abv-2*bottle_u>label_high),"The label does not hold.","Undecided: "&TEXT(bottle_abv,"0.00")&" ± "&TEXT(2*bottle_u,"0.00")&" % vol reaches past "&TEXT(IF(bottle_abv+2*bottle_u>label_high,label_high,label_low),"0.0")&". Measure better, blend away from the limit, or choose another label."))
            Chance that it is outside | label_risk | PERCENT 1            | =BOTTLE.LABELRISK(label_abv,bottle_abv,bottle_u,label_rule) | Of the true strength, by the laboratory's value and its uncertainty.
            Carbon dioxide       | bottle_co2   | BOTTLE.TAXCLASS co2 1 | 0.9 | g/L; still means at most 3.92.
            Only honey and water | bottle_plain | yes/no                | yes | No fruit, no flavouring.
            US tax class         |              | TEXT                  | =BOTTLE.TAXCLASS(bottle_abv,bottle_co2,"natural",IF(bottle_plain="yes",1,0)) | The tax boundary is 16 % vol, the label's is 14.
            Sweetness word       |              | TEXT                  | =BOTTLE.SWEETNESS(bottle_sugar_high,bottle_acid) | By the most that may be sugar. EU scale for still wine, a convention for mead.
            ! Law is quoted with its date in the help of each function and changes: check the current text and ask your authority.
            """);
    block.warning(UsHoneyWine.STANDARD);
  }

  private static void pressure(Block block) {
    block
        .heading("Readings of the blend at rest")
        .note(
            "As warm as the bottles will be stored, over weeks: a cold cellar hides what is left.")
        .table(8, in("Read on", DATE), in("Gravity", arg("FERMENT.STATE", "gravities", 4)))
        .fill(
            """
            2026-08-03|1.0005
            2026-08-17|1
            2026-08-31|1.0005
            2026-09-14|1
            2026-09-28|1
            """)
        .name("Read on", "rest_days")
        .name("Gravity", "rest_gravities");
    block.form(
        """
            # Wait, stabilise or bottle
            Last gravity                               | rest_last       | SPECIFIC_GRAVITY 4           | =INDEX(rest_gravities,MATCH(MAX(rest_days),rest_days,0))
            Gravity at which it may end                | rest_expected   | FERMENT.STATE expected 3     | 1.000
            Days in the bottle                         | rest_horizon    | FERMENT.REMAINING horizon 0  | 365
            Warmest store                              | bottle_store    | BOTTLE.REFERMENT temperature 0 | 35
            The bottle is rated for                    | rest_rating     | PRESSURE 0 0..1500           | 100 | Its maker's figure. Still-wine bottles have none: at most 100 kPa, and corks creep from 150 (common practice, no source).
            Original gravity that gives this strength  | rest_original   | SPECIFIC_GRAVITY 3           | =ALCOHOL.ORIGINAL(bottle_abv,rest_last) | For a blend, or a mead that was sweetened.
            State                                      | rest_state      | TEXT                         | =FERMENT.STATE(rest_days,rest_gravities,rest_expected)
            Further fall, at most                      |                 | SPECIFIC_GRAVITY 4           | =INDEX(FERMENT.REMAINING(rest_days,rest_gravities,rest_horizon),1,2) | At the present pace, over the days in the bottle; 95 % limit.
            as sugar                                   | rest_sugar      | GRAM_PER_LITRE 1             | =INDEX(FERMENT.REMAINING(rest_days,rest_gravities,rest_horizon),1,3)
            Pressure from it                           | rest_pressure   | PRESSURE 0                   | =BOTTLE.REFERMENT(MIN(150,rest_sugar),bottle_abv,bottle_co2,bottle_store,units)
            Pressure if all that may be sugar ferments | bottle_pressure | PRESSURE 0                   | =IF(rest_measured="yes",BOTTLE.REFERMENT(bottle_sugar_high,bottle_abv,bottle_co2,bottle_store,units),BOTTLE.WORSTPRESSURE(rest_original,rest_last,bottle_abv,,bottle_co2,bottle_store,units)) | Gauge, in the warmest store. From 1000 kPa on it only says: it bursts.
            ? 5 | bottle_verdict | VERDICT
            ! Still-wine bottles are not made for pressure. Bottle only what is finished or truly stabilised; wear eye protection near bottles that may have gone on.
            """
            .replace("VERDICT", VERDICT));
  }
}
