package meadcell.samples.cellar;

import meadcell.samples.sheet.Block;

/**
 * What a nail hole in the head gives before the cask's own vacuum stops it, and which nail fits.
 */
final class NailSample {
  private static final String SURFACE =
      "BARREL.DIP(INDEX(vessel_head,cask_row)*centimetre,INDEX(vessel_bilge,cask_row)*centimetre,"
          + "INDEX(vessel_length,cask_row)*centimetre,INDEX(v_capacity,cask_row)*litre-nail_space,units)-nail_height";

  /** What the log says is missing, and what the cask has lost since its last row. */
  private static final String SPACE =
      "IF(today>SINCE,BARREL.HEADSPACEAFTER(INDEX(v_capacity,cask_row),INDEX(v_loss,cask_row),today-SINCE,MAX(0,INDEX(v_space,cask_row)),kept),MAX(0,INDEX(v_space,cask_row)))*litre"
          .replace("SINCE", "INDEX(v_touched,cask_row)");

  /** 1 kg/L, water's: the density under the root hardly moves the time. */
  private static final String DENSITY = "IF(units=\"US\",3.785411784/0.45359237,1)";

  private NailSample() {}

  static void add(Block block) {
    block.form(
        """
        # Before you pull the nail
        Sample wanted          | nail_amount | BARREL.SAMPLETIME amount 0  | 30
        Hole                   | nail_hole   | BARREL.CLEARANCE drill 1    | 2.8
        above the lowest stave | nail_height | LENGTH 0 1..200             | 25 | Inside, at the head: as your casks are drilled.
        Nail                   | nail_penny  | BARREL.CLEARANCE penny 0    | 8 | Penny size, in stainless steel.
        of the kind            | nail_kind   | BARREL.CLEARANCE kind 0     | finishing
        Play of that nail      | nail_play   | MILLIMETRE 2 | =IF(OR(nail_hole="",nail_penny="",nail_kind=""),"",IFERROR(BARREL.CLEARANCE(nail_hole,nail_penny,nail_kind),"")) | Less than 0 splits the wood.
        Headspace by now       | nail_space  | VOLUME 1     | =IF(OR(cask_at="",cask_space=""),"",IFERROR(SPACE,"")) | By the log, and its loss since.
        Surface above the hole | nail_depth  | LENGTH 1     | =IF(OR(nail_space="",N(nail_height)=0),"",IFERROR(SURFACE,""))
        Most that runs         | nail_most   | MILLILITRE 0 | =IF(OR(cask_at="",nail_depth=""),"",IFERROR(BARREL.SAMPLEMAX(nail_space,nail_depth,DENSITY,0,units),"")) | Then a tight cask draws air instead.
        Time for the sample    | nail_time   | SECONDS 1    | =IF(OR(nail_most="",nail_amount="",nail_hole=""),"",IFERROR(BARREL.SAMPLETIME(nail_amount,nail_space,nail_hole,nail_depth,DENSITY,0,0.7,units),"")) | Have the nail ready.
        ? 2 | nail_verdict | IF(OR(cask_at="",nail_amount=""),"",IF(nail_depth="",IF(N(nail_height)=0,"Type how high the hole is.","How high it stands is not known: sizes in Vessels, contents in Movements."),IF(nail_depth<=0,"The hole lies above the surface: nothing runs.",IF(nail_most="","It is full: without a headspace nothing runs, or it is not tight.",IF(nail_amount>nail_most,"It gives "&FIXED(nail_most,0,TRUE)&" mL before it draws air: take less, or let air in at the bung.","Set the nail before "&FIXED(nail_most,0,TRUE)&" mL have run.")))))
        ! Alcohol that cleans hole and nail burns: no flame, no running tool, and dry hands. Spit what you taste.
        """
            .replace("SURFACE", SURFACE)
            .replace("SPACE", SPACE)
            .replace("DENSITY", DENSITY));
  }
}
