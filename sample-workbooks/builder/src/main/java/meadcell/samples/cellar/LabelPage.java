package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.given;
import static meadcell.samples.cellar.Formulas.lastDay;
import static meadcell.samples.cellar.Formulas.orBlank;
import static meadcell.samples.sheet.Field.arg;

import meadcell.law.UsHoneyWine;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Page;

/** Everything that a label says, each word with the number behind it; and what the law takes. */
final class LabelPage {
  static final String TITLE = "Label";

  /** What is settled, for the label; then what is not. */
  private static final String SUMMARY =
      """
      IF(tag_lot="","Choose what is labelled.",
      "Settled: "&IF(tag_holds="yes",FIXED(tag_label,1,TRUE)&" % vol; ","")&IF(tag_size="","",tag_size&" mL; ")&IF(tag_sulfites="declare","contains sulfites; ","")&IF(tag_sweet="","",tag_sweet&"; ")&IF(OR(tag_kj="",tag_kcal=""),"",FIXED(tag_kj,0,TRUE)&" kJ, "&FIXED(tag_kcal,0,TRUE)&" kcal in 100 mL; ")
      &"not settled: "&IF(tag_holds="yes","","strength; ")&IF(tag_size="","content; ","")&IF(tag_sulfites="","sulfites; ","")&IF(tag_sweet="","sweetness; ","")&IF(OR(tag_kj="",tag_kcal=""),"energy; ","")&"all else the law asks.")"""
          .replace("\n", "");

  private static final String STRENGTH =
      """
      IF(OR(tag_low="",tag_abv="",tag_u=""),"No verdict without a label, a strength and its uncertainty.",
      IF(tag_holds="yes","The label holds, with twice the uncertainty to spare.",
      IF(OR(tag_abv+2*tag_u<tag_low,tag_abv-2*tag_u>tag_high),"The label does not hold.",
      "Undecided: "&FIXED(tag_abv,2,TRUE)&" ± "&FIXED(2*tag_u,2,TRUE)&" % vol reaches past a limit. Measure better, or choose another label.")))"""
          .replace("\n", "");

  private LabelPage() {}

  static void add(Book book) {
    Page page = book.page(TITLE, 36, 20, 26, 26);
    Block block =
        page.head(
            TITLE,
            "What a label says, with the number behind it. Analyses carry the strength and the sugar; what is blank gives no verdict.");
    block.choose("Bottling or vessel", "vessel_list", "Shore 25", "tag_lot", "");
    block.verdict(SUMMARY, 3);
    contents(book, block);
    strength(block);
    words(block);
    amount(block);
    page.turn(block.row());
    tax(block);
    block.warning(UsHoneyWine.STANDARD);
  }

  /** The last total SO2 of this vessel itself; later sulfite in it makes it void. */
  private static String sulfite(String column) {
    return given(
        "tag_so2_day",
        orBlank(
            "AVERAGEIFS("
                + column
                + ",an_lot,tag_lot&\"\",an_what,\"total SO2\",an_day,tag_so2_day)"));
  }

  private static String sulfiteDay() {
    String measured = lastDay("tag_lot&\"\"", "total SO2", "tag_since");
    String added = Formulas.lastSulfite("tag_lot&\"\"", "today");
    return given("tag_since", "IF(%s<=%s,\"\",%s)".formatted(measured, added, measured));
  }

  private static void contents(Book book, Block block) {
    Filled.add(book, block, "tag");
    block.form(
        """
        Total SO₂ measured on      | tag_so2_day | DATE | =MEASURED | In this vessel itself, since it was filled and after its last sulfite.
        Total SO₂                  | tag_so2    | MILLIGRAM_PER_LITRE 0 | =SULFUR
        its standard uncertainty   | tag_so2_u  | MILLIGRAM_PER_LITRE 0 | =SPREAD
        """
            .replace("MEASURED", sulfiteDay())
            .replace("SULFUR", sulfite("an_value"))
            .replace("SPREAD", sulfite("an_u")));
  }

  private static void strength(Block block) {
    block.form(
        """
        # Strength
        On the label             | tag_label | BOTTLE.LABELRANGE label 1 | 14.0
        By the law of            | tag_rule  | BOTTLE.LABELRANGE rule 0  | eu | eumacerated: with macerated fruit or parts of plants.
        True strength at least   | tag_low   | PERCENT_VOL 1 | =IF(OR(tag_label="",tag_rule=""),"",IFERROR(INDEX(BOTTLE.LABELRANGE(tag_label,tag_rule),1,1),""))
        True strength at most    | tag_high  | PERCENT_VOL 1 | =IF(OR(tag_label="",tag_rule=""),"",IFERROR(INDEX(BOTTLE.LABELRANGE(tag_label,tag_rule),1,2),""))
        Chance that it is outside | tag_risk | PERCENT 1     | =IF(OR(tag_low="",tag_abv="",tag_u=""),"",IFERROR(BOTTLE.LABELRISK(tag_label,tag_abv,tag_u,tag_rule),""))
        Holds                    | tag_holds | TEXT | =IF(OR(tag_low="",tag_abv="",tag_u=""),"",IF(AND(tag_abv-2*tag_u>=tag_low,tag_abv+2*tag_u<=tag_high),"yes","no")) | With twice the standard uncertainty to spare.
        ? 2 |  | VERDICT
        """
            .replace("VERDICT", STRENGTH));
  }

  private static void words(Block block) {
    block.form(
        """
        # Words and energy
        Sulfites         | tag_sulfites | TEXT | =IF(OR(tag_so2="",tag_so2_u=""),"",IFERROR(BOTTLE.SULFITES(tag_so2,tag_so2_u),"")) | From 10 mg/L of total SO₂. Blank: not measured in what is sold; then declare.
        Sweetness word   | tag_sweet | TEXT | =IF(OR(tag_sugar="",tag_sugar_u="",tag_acid=""),"",BOTTLE.SWEETNESS(tag_sugar+2*tag_sugar_u,tag_acid)) | By the most that may be sugar. EU scale for still wine, a convention for mead.
        Glycerol         | tag_glycerol | BOTTLE.ENERGY glycerol 1 | 7 | Some 5 to 10 g/L (common practice, no source). Blank: no energy; 0 counts none.
        Energy in 100 mL | tag_kj | KILOJOULE 0 | =IF(OR(tag_abv="",tag_sugar="",tag_acid="",tag_glycerol=""),"",IFERROR(BOTTLE.ENERGY(100,tag_abv,tag_sugar,tag_glycerol,tag_acid),"")) | By the EU's factors: kJ first, then kcal.
        and              | tag_kcal | KILOCALORIE 0 | =IF(OR(tag_abv="",tag_sugar="",tag_acid="",tag_glycerol=""),"",IFERROR(BOTTLE.KILOCALORIES(100,tag_abv,tag_sugar,tag_glycerol,tag_acid),"")) | From factors of their own.
        ! Sulfites can bring on asthma: when in doubt, declare. Honey, fruit and what fined it may be allergens too; the law lists which must be named.
        """);
  }

  private static void amount(Block block) {
    block.form(
        """
        # Content
        Content on the label     | tag_size    | BOTTLE.FILLTOLERANCE label 0 | 750
        By the law of            | tag_content | BOTTLE.FILLTOLERANCE rule 0 | eu
        One bottle may lack      |             | MILLILITRE 1 | =IF(OR(tag_size="",tag_content=""),"",IFERROR(INDEX(BOTTLE.FILLTOLERANCE(tag_size,tag_content),1,1),""))
        None may hold less than  | tag_least   | MILLILITRE 1 | =IF(OR(tag_size="",tag_content=""),"",IFERROR(INDEX(BOTTLE.FILLTOLERANCE(tag_size,tag_content),1,2),""))
        Emptiest bottle measured | tag_found   | BOTTLE.FILLCHECK contents 1 | 744 | By weight, as BOTTLE.NETCONTENT tells; invented.
        ? 2 |  | IF(OR(tag_least="",tag_found=""),"No verdict without a content, a law and a measured bottle.",IF(tag_found<tag_least,"Too little: this bottle may not be sold under this label.","That bottle is within the limit of a single one. The lot must hold its label on the mean: weigh 20 and ask BOTTLE.FILLCHECK."))
        Standard drinks of       | tag_drinks  | BOTTLE.DRINKS rule 0 | uk
        in a bottle              |             | NUMBER 1 | =IF(OR(tag_size="",tag_abv="",tag_drinks=""),"",IFERROR(BOTTLE.DRINKS(tag_size,tag_abv,tag_drinks),"")) | UK: units of 10 mL alcohol. US: 14 g. EU: 10 g, no common law.
        """);
  }

  private static void tax(Block block) {
    block.form(
        """
        # Tax on all of it
        Duty falls due on        | tag_due    | DATE | 2026-03-16
        Carbon dioxide           | tag_co2    | BOTTLE.TAXCLASS co2 1 | 0.9 | g/L; still means at most 3.92.
        Only honey and water     | tag_plain  | yes/no | yes | No fruit, no flavouring.
        US tax class             |            | TEXT | =IF(OR(tag_abv="",tag_co2="",tag_plain=""),"",IFERROR(BOTTLE.TAXCLASS(tag_abv,tag_co2,"natural",IF(tag_plain="yes",1,0)),"")) | The tax boundary is 16 % vol, the label's is 14.
        Credited earlier this year | tag_before | DUTY.USA before 0 | 0 | All wine that got the credit since January.
        US federal excise        |            | US_DOLLAR 2 | =IF(OR(tag_volume="",tag_abv="",tag_due="",tag_co2="",tag_plain=""),"",IFERROR(INDEX(DUTY.USA(tag_volume,tag_abv,tag_due,tag_before,tag_co2,"natural",IF(tag_plain="yes",1,0),units),1,4),"")) | With the producer's credit; state taxes come on top.
        UK relief a litre alcohol | tag_relief | DUTY.UK relief 2 | 0 | From DUTY.UKRELIEF.
        UK Alcohol Duty          |            | POUND_STERLING 2 | =IF(OR(tag_volume="",tag_abv="",tag_due="",tag_relief=""),"",IFERROR(INDEX(DUTY.UK(tag_volume,tag_abv,tag_due,0,tag_relief,units),1,3),"")) | Blank past January 2027: rates change every February.
        """);
    block.input(
        "Own rate",
        arg("DUTY.OWNRATE", "rate", 2),
        null,
        "tag_rate",
        "The rate of your country and class, in its currency. Blank: no duty by it.");
    block.form(
        """
        for a                    | tag_basis  | DUTY.OWNRATE basis 0 | hectolitre
        Duty by it               |            | NUMBER 2 | =IF(OR(tag_volume="",tag_abv="",tag_rate="",tag_basis=""),"",IFERROR(DUTY.OWNRATE(tag_volume,tag_abv,tag_rate,tag_basis,units),""))
        ! Not legal or tax advice. Law is quoted with its date in the help of each function and changes, rates often every year: check the current text and ask your authority before you print or declare.
        """);
  }
}
