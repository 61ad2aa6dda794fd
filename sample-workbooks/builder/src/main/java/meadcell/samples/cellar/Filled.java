package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.cell;
import static meadcell.samples.cellar.Formulas.given;
import static meadcell.samples.cellar.Formulas.orBlank;
import static meadcell.samples.cellar.Formulas.quoted;

import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;

/** What is in the vessel that a page asks for, under names of that page. */
final class Filled {
  private Filled() {}

  static void add(Book book, Block block, String page) {
    book.formulaName(page + "_row", "MATCH(" + page + "_lot,vessel_name,0)");
    block.form(
        """
        # What is in it
        Filled on                | @_since   | DATE             | =IF(@_lot="","",IFERROR(IF(INDEX(v_since,@_row)="","",INDEX(v_since,@_row)),""))
        Volume                   | @_volume  | VOLUME 1         | =IF(@_since="","",INDEX(v_holds,@_row)*litre)
        Strength                 | @_abv     | PERCENT_VOL 2    | =STRENGTH1 | The last analysis, carried through what was moved since.
        its standard uncertainty | @_u       | PERCENT_VOL 2    | =STRENGTH2
        Fermentable sugar        | @_sugar   | GRAM_PER_LITRE 1 | =SUGAR1 | Likewise; blank if no analysis reaches.
        its standard uncertainty | @_sugar_u | GRAM_PER_LITRE 1 | =SUGAR2
        Titratable acidity       | @_acid    | GRAM_PER_LITRE 1 | =ACIDITY | As tartaric acid.
        ? 2 | @_unknown | UNKNOWN
        """
            .replace("STRENGTH1", carried("strength", 1))
            .replace("STRENGTH2", carried("strength", 2))
            .replace("SUGAR1", carried("sugar", 1))
            .replace("SUGAR2", carried("sugar", 2))
            .replace("ACIDITY", carried("titratable acidity", 1))
            .replace("UNKNOWN", "IF(@_since=\"\",\"\"," + unknown() + ")")
            .replace("@", page));
  }

  /** The first of the three that is not known, and why. */
  private static String unknown() {
    return "IF(@_abv=\"\",\"No strength: \"&%s,IF(@_sugar=\"\",\"No sugar: \"&%s,IF(@_acid=\"\",\"No acidity: \"&%s,\"\")))"
        .formatted(
            Formulas.notCarried("@_lot", quoted("strength")),
            Formulas.notCarried("@_lot", quoted("sugar")),
            Formulas.notCarried("@_lot", quoted("titratable acidity")));
  }

  private static String carried(String property, int place) {
    return given("@_lot", orBlank(cell(Formulas.carried("@_lot", quoted(property)), place)));
  }
}
