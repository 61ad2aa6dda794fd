package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.ABV;
import static meadcell.samples.sheet.Field.GRAMS_PER_LITRE;
import static meadcell.samples.sheet.Field.NUMBER;
import static meadcell.samples.sheet.Field.PERCENT;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Table.always;

import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Workings;

/** Blends that empty each vessel they take: every choice from the stock is tried. */
final class WholeCasks {
  private static final int CHOICES = (1 << BlendPage.LOTS) - 1;
  private static final int SHOWN = 5;

  /** Which vessels a choice takes: one digit each of its number, the first of the stock lowest. */
  private static final String TAKEN =
      "MOD(INT(INDEX(choice_best,#+1)/2^(ROW(blend_vessels)-ROW(INDEX(blend_vessels,1)))),2)";

  private WholeCasks() {}

  static void workings(Workings state) {
    state
        .column(
            "whole_out",
            BlendPage.LOTS,
            "IF(COUNT(STOCK(1),STOCK(3),STOCK(4),STOCK(5))=4,IF(STOCK(1)>0,0,1),1)"
                .replaceAll("STOCK\\((\\d)\\)", stock("$1")))
        .column("whole_volume", BlendPage.LOTS, "IF([whole_out]=1,0," + stock("1") + ")")
        .column("whole_cost", BlendPage.LOTS, amount(2))
        .column("whole_strength", BlendPage.LOTS, amount(3))
        .column("whole_sugar", BlendPage.LOTS, amount(4))
        .column("whole_acid", BlendPage.LOTS, amount(5))
        .block("whole_stock", "whole_out", "whole_acid", BlendPage.LOTS)
        .column("whole_abv", BlendPage.LOTS, "IF([whole_out]=1,0," + stock("3") + ")")
        .block("whole_volumes", "whole_volume", "whole_volume", BlendPage.LOTS)
        .block("whole_abvs", "whole_abv", "whole_abv", BlendPage.LOTS)
        .array(
            CHOICES,
            "MMULT(MOD(INT(ROW($A$1:$A$@)/2^(COLUMN($A$1:$#$1)-1)),2),whole_stock)"
                .replace("@", Integer.toString(CHOICES))
                .replace("#", Character.toString('A' + BlendPage.LOTS - 1)),
            "choice_out",
            "choice_volume",
            "choice_cost",
            "choice_strength",
            "choice_sugar",
            "choice_acid")
        .column(
            "choice_off",
            CHOICES,
            "IF([choice_out]>0,\"\","
                + off("strength", "abv")
                + "+"
                + off("sugar", "sugar")
                + "+"
                + off("acid", "acid")
                + ")")
        // on target first, the nearest volume first; then what misses least
        .column(
            "choice_key",
            CHOICES,
            "IF([choice_off]=\"\",\"\",IF([choice_off]>0,1000000+[choice_off],ABS([choice_volume]-N(blend_volume))/MAX(1,N(blend_volume)))+ROW()/1000000000)")
        .column(
            "choice_best", SHOWN, "IFERROR(MATCH(SMALL(choice_key,ROW()-1),choice_key,0)-1,\"\")");
  }

  private static String stock(String column) {
    return "INDEX(blend_stock,ROW()-1," + column + ")";
  }

  /** How much of it the whole vessel brings. */
  private static String amount(int column) {
    return "IF([whole_out]=1,0,[whole_volume]*N(" + stock(Integer.toString(column)) + "))";
  }

  /** By how much of the span in the stock a property misses its limits. */
  private static String off(String property, String target) {
    return "MAX(0,IF(LOW=\"\",0,LOW-MEAN),IF(HIGH=\"\",0,MEAN-HIGH))/MAX(0.01,MAX(ALL)-MIN(ALL))"
        .replace("MEAN", "[choice_" + property + "]/[choice_volume]")
        .replace("LOW", "blend_" + target + "_low")
        .replace("HIGH", "blend_" + target + "_high")
        .replace("ALL", "blend_" + target + "s");
  }

  static void add(Block block) {
    block
        .heading("Whole vessels only")
        .note(
            "Each vessel of the stock wholly or not at all, so that none is left part full: all "
                + CHOICES
                + " choices are tried, and the volume is what it comes to.");
    block.arrayTable(
        SHOWN,
        always(
            "Emptied",
            TEXT,
            shown("TEXTJOIN(\" + \",TRUE,IF(" + TAKEN + "=1,blend_vessels,\"\"))")),
        always(
            "Volume", VOLUME, shown("BLEND.VOLUME(" + TAKEN + "*whole_volumes,whole_abvs,units)")),
        always(
            "of the volume wanted",
            PERCENT,
            "IF(OR([Volume]=\"\",N(blend_volume)=0),\"\",100*[Volume]/blend_volume)"),
        always("Strength", ABV, shown("BLEND.ABV(" + TAKEN + "*whole_volumes,whole_abvs,units)")),
        always("Sugar", GRAMS_PER_LITRE, shown(mean("sugar"))),
        always("Acid", GRAMS_PER_LITRE, shown(mean("acid"))),
        always("Cost a unit", NUMBER, shown(mean("cost"))),
        always(
            "Misses",
            TEXT,
            shown(
                "TRIM("
                    + misses("strength", "abv")
                    + "&"
                    + misses("sugar", "sugar")
                    + "&"
                    + misses("acid", "acid")
                    + ")")));
    block.verdict(
        "IF(COUNT(blend_targets)=0,\"Type a target.\",IF(COUNT(choice_best)=0,\"No choice: of no vessel are contents, strength, sugar and acid all known.\",IF(COUNTIF(choice_key,\"<1000000\")=0,\"No choice of whole vessels is on target; those that miss least come first.\",COUNTIF(choice_key,\"<1000000\")&\" of \"&COUNT(choice_key)&\" choices are on target, the nearest to the volume wanted first.\")))",
        2,
        "whole_verdict");
  }

  private static String shown(String formula) {
    return "IF(OR(INDEX(choice_best,#+1)=\"\",COUNT(blend_targets)=0),\"\"," + formula + ")";
  }

  private static String mean(String property) {
    return "INDEX(choice_P,INDEX(choice_best,#+1)+1)/INDEX(choice_volume,INDEX(choice_best,#+1)+1)"
        .replace("choice_P", "choice_" + property);
  }

  private static String misses(String property, String target) {
    return "IF(MEAN<IF(LOW=\"\",-1,LOW),\"WHAT low \",IF(AND(HIGH<>\"\",MEAN>HIGH),\"WHAT high \",\"\"))"
        .replace("MEAN", mean(property))
        .replace("LOW", "blend_" + target + "_low")
        .replace("HIGH", "blend_" + target + "_high")
        .replace("WHAT", property);
  }
}
