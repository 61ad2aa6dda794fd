package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.DATE;

import java.time.LocalDate;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;

/** What strength the first mead takes up from staves that held spirit. */
final class FirstFill {
  private FirstFill() {}

  static void add(Book book, Block block) {
    book.formulaName("first_day", "IF(first_typed=\"\",today,first_typed)");
    book.formulaName(
        "first_past",
        "IF(COUNTIFS(mv_to,cask,mv_from,\"<>gauge\",mv_day,\"<\"&first_day)>0,NA(),SUMPRODUCT(MAX((past_vessel=cask)*(past_liquid<>\"\")*(past_from=MAXIFS(past_from,past_vessel,cask,past_liquid,\"?*\"))*(ROW(past_vessel)-ROW(INDEX(past_vessel,1))+1))))");
    block
        .heading("Its first fill, after spirit")
        .choose("Filled from", "vessel_list", "Tank 1", "first_from", "")
        .input("Filled on", DATE, LocalDate.of(2025, 5, 12), "first_typed", "Blank: today.");
    block.form(
        """
        It held            | first_held   | TEXT          | =IF(cask="","",IFERROR(IF(first_past=0,"",INDEX(past_liquid,first_past)&""),"")) | Last in Past occupants.
        Strength of that   | first_spirit | PERCENT_VOL 0 | =IF(first_held="","",IF(ISNUMBER(INDEX(past_strength,first_past)),INDEX(past_strength,first_past),"")) | From 10 % vol on.
        Held in the staves | first_soaked | VOLUME 1      | =IF(first_held="","",IFERROR(BARREL.SOAKED(BARREL.AREA(INDEX(vessel_head,cask_row),INDEX(vessel_bilge,cask_row),INDEX(vessel_length,cask_row),kept),kept)*litre,""))
        Rinsed out         | first_rinsed | BARREL.SPIRITGAIN drained 1 | 1
        Volume filled in   | first_volume | VOLUME 1      | =IF(first_held="","",IFERROR(IF(FILLED>0,FILLED,INDEX(v_capacity,cask_row))*litre,"")) | By Movements of that day, else all it holds.
        Strength of it     | first_abv    | PERCENT_VOL 2 | =IF(OR(first_from="",first_held=""),"",IFERROR(INDEX(BLEND.CARRIED(moves,analyses,first_from,"strength",first_day,house_humidity,changes,kept),1,1),""))
        Once they are one  | first_after  | PERCENT_VOL 2 | =IF(OR(first_abv="",first_spirit="",first_soaked="",first_volume=""),"",IFERROR(BARREL.SPIRITGAIN(first_volume,first_abv,first_soaked,first_spirit,N(first_rinsed),units),"")) | Counts for label and tax.
        Gained             | first_gain   | PERCENT_VOL 2 | =IF(first_after="","",first_after-first_abv)
        ? 4 | first_verdict | IF(cask="","",IF(ISERROR(first_past),cask&" was filled before that day: its staves hold mead.",IF(first_held="","Past occupants has nothing of "&cask&".",IF(first_after="","Not known: "&IF(first_spirit="","how strong that was (Past occupants). ","")&IF(first_abv="","how strong the mead is (Analyses). ","")&IF(first_soaked="","the cask's sizes (Vessels).",""),"Write into Movements, before the filling: from “"&first_held&" in the staves” to "&cask&", "&FIXED(first_soaked-N(first_rinsed),IF(units="US",2,1),TRUE)&IF(units="US"," US gal"," L")&"; and its strength into Analyses. Then all pages reckon with it."))))
        ! A cask that has held spirit gives off vapour that burns: no flame, no burning wick, and air it before any sulfur.
        """
            .replace("FILLED", "SUMIFS(mv_volume,mv_from,first_from,mv_to,cask,mv_day,first_day)"));
  }
}
