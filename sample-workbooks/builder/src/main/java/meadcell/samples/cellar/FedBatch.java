package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.orBlank;
import static meadcell.samples.sheet.Field.ABV;
import static meadcell.samples.sheet.Field.SG;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Table.in;
import static meadcell.samples.sheet.Table.out;

import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Table;

/**
 * Honey given in steps: what each leaves in the tank, and the original gravity that counts then.
 */
final class FedBatch {
  private static final int FEEDS = 5;

  private FedBatch() {}

  static void add(Block block) {
    block.form(
        """
        # Honey fed in steps
        Volume when pitched | fed_volume   | FERMENT.AFTERADDITION volume 0   | 200
        Original gravity    | fed_original | FERMENT.AFTERADDITION original 3 | 1.082 | Set low, so that the yeast starts well.
        Gravity at the end  | fed_final    | ALCOHOL.ABV present 3            | 1.012
        . Honey as moist as above. Feed while the gravity falls, stirred into some of the mead; each feed foams and frees gas.
        """);
    Table feeds =
        block.table(
            FEEDS,
            in("Fed at gravity", arg("FERMENT.AFTERADDITION", "present", 3)),
            in("Honey", arg("FERMENT.AFTERADDITION", "mass", 1)),
            out(
                "Strength by then",
                ABV,
                orBlank(
                    "ALCOHOL.ABV(MAX(fed_original,[ABOVE Original that counts]),[Fed at gravity])")),
            out("Gravity after it", SG, after(2)),
            out("Original that counts", SG, after(1)),
            out("Volume", VOLUME, after(3)));
    feeds.fill(
        """
        1.030 | 12
        1.032 | 10
        1.034 | 8
        """);
    feeds
        .name("Fed at gravity", "fed_gravities")
        .name("Honey", "fed_honeys")
        .name("Original that counts", "fed_originals")
        .name("Volume", "fed_volumes");
    block.form(
        """
        Honey fed in all                    | fed_honey  | MASS 1             | =IF(COUNT(fed_originals)=0,"",SUMPRODUCT(ISNUMBER(fed_originals)*1,fed_honeys)*kilogram)
        Volume at the end                   | fed_filled | VOLUME 1           | =IF(COUNT(fed_originals)=0,"",MAX(fed_volumes)) | The tank must hold it, and its foam.
        Original gravity that counts        | fed_counts | SPECIFIC_GRAVITY 4 | =IF(COUNT(fed_originals)=0,"",MAX(fed_originals)) | As if all the honey had been there at first. Take it for all strengths from then on.
        Strength at the end                 | fed_abv    | PERCENT_VOL 2      | =IF(OR(fed_counts="",fed_final=""),"",IFERROR(ALCOHOL.ABV(fed_counts,fed_final),""))
        Strength if the feeds are forgotten | fed_wrong  | PERCENT_VOL 2      | =IF(OR(fed_counts="",fed_final=""),"",IFERROR(ALCOHOL.ABV(fed_original,fed_final),"")) | Wrong, and too low.
        ? 2 | fed_verdict | IF(OR(N(fed_volume)=0,fed_original=""),"Type what was pitched.",IF(COUNT(fed_gravities,fed_honeys)=0,"Type at which gravity how much honey is fed.",IF(COUNT(fed_originals)*2<COUNT(fed_gravities,fed_honeys),"A feed is left out: it takes a gravity below the original one that counts by then, and honey.","Write each feed into Additions on its day: page This ferment reckons with it. Yeast stops at its own strength, whatever is fed.")))
        """);
  }

  /** What is there after this row's feed, given what the feeds above left. */
  private static String after(int place) {
    return orBlank(
        "INDEX(FERMENT.AFTERADDITION(MAX(fed_volume,[ABOVE Volume]),MAX(fed_original,[ABOVE Original that counts]),[Fed at gravity],\"honey\",[Honey]*kilogram,,must_moisture,,units),1,"
            + place
            + ")");
  }
}
