package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.ABV;
import static meadcell.samples.sheet.Field.COUNT;
import static meadcell.samples.sheet.Field.GRAMS_PER_LITRE;
import static meadcell.samples.sheet.Field.MILLIGRAMS_PER_LITRE;
import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.sheet.Field.VOLUME;
import static meadcell.samples.sheet.Field.arg;
import static meadcell.samples.sheet.Field.between;
import static meadcell.samples.sheet.Field.of;
import static meadcell.samples.sheet.Field.words;

import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;

/** From the blend to the bottle: sulfite, sorbate, counts, label, tax, pressure. */
final class Stabilise {
  static final String TITLE = "Stabilise & bottle";

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
    block
        .heading("What is bottled")
        .result("Volume", VOLUME, "plan_volume", "bottle_volume", "")
        .result("Strength by calculation", ABV, "plan_abv", "", "")
        .input(
            "Strength by laboratory",
            arg("BOTTLE.TAXCLASS", "abv", 2),
            14.0,
            "bottle_abv",
            "At 20 °C.")
        .input(
            "its standard uncertainty",
            between(Quantity.PERCENT_VOL, 2, "From the certificate.", 0, 2),
            0.1,
            "bottle_u",
            "Half of the ± that the certificate prints.")
        .result("Fermentable sugar", GRAMS_PER_LITRE, "plan_sugar", "bottle_sugar", "")
        .result("Acid", GRAMS_PER_LITRE, "plan_acid", "bottle_acid", "")
        .input(
            "pH",
            arg("SULFITE.MOLECULAR", "ph", 2),
            3.52,
            "bottle_ph",
            "Measured on the bench blend. pH does not blend by volume.");
  }

  private static void sulfite(Block block) {
    block
        .heading("Sulfite and sorbate")
        .input("Free SO₂ now", arg("SULFITE.MOLECULAR", "free", 0), 14, "so2_free", "")
        .input(
            "Molecular SO₂ wanted",
            arg("SULFITE.FREENEEDED", "molecular", 2),
            0.6,
            "so2_molecular",
            "0.5 to 0.8 mg/L: common practice for dry and sweet.")
        .input(
            "Binds of what is added",
            arg("SULFITE.DOSE", "bound", 0),
            30,
            "so2_bound",
            "Per cent; measure again after a day.")
        .result(
            "Molecular SO₂ now",
            of(Quantity.MILLIGRAM_PER_LITRE, 2),
            "SULFITE.MOLECULAR(so2_free,bottle_ph)",
            "",
            "With the everyday constant pK 1.81.")
        .result(
            "the same after OIV",
            of(Quantity.MILLIGRAM_PER_LITRE, 2),
            "SULFITE.MOLECULAR(so2_free,bottle_ph,\"oiv\",bottle_abv,20*degree+freezing,units)",
            "",
            "Alcohol counted: higher. Trade targets were set with the line above.")
        .result(
            "Free SO₂ needed",
            MILLIGRAMS_PER_LITRE,
            "SULFITE.FREENEEDED(so2_molecular,bottle_ph)",
            "so2_needed",
            "")
        .result(
            "Rise still needed", MILLIGRAMS_PER_LITRE, "MAX(0,so2_needed-so2_free)", "so2_rise", "")
        .result(
            "Potassium metabisulfite",
            of(Quantity.GRAM, 0),
            "IF(so2_rise=0,0,SULFITE.DOSE(bottle_volume,so2_rise,57.6,so2_bound,units))",
            "",
            "")
        .result(
            "or stock solution, 10 g in 100 mL",
            of(Quantity.MILLILITRE, 0),
            "IF(so2_rise=0,0,SULFITE.SOLUTION(bottle_volume,so2_rise,10,so2_bound,units))",
            "",
            "")
        .input(
            "Sorbic acid wanted",
            arg("SULFITE.SORBATE", "sorbicAcid", 0),
            150,
            "so2_sorbic",
            "Only where sugar is left and no lactic ferment has run.")
        .result(
            "Potassium sorbate",
            of(Quantity.GRAM, 0),
            "SULFITE.SORBATE(bottle_volume,so2_sorbic,\"usa\",units)",
            "",
            "Refused above the limit of the rule.")
        .result(
            "Delle units",
            of(Quantity.DELLE, 0),
            "BOTTLE.DELLE(bottle_sugar,bottle_abv)",
            "",
            "Below 78 sugar and alcohol alone do not keep it still; above it is no guarantee either.")
        .warning(
            "Sulfites can bring on asthma: weigh them under ventilation, declare them where the law asks. Limits differ from place to place.");
  }

  private static void counts(Block block) {
    block
        .heading("Bottles")
        .input("Bottle", arg("BOTTLE.COUNT", "bottle", 0), 750, "bottle_size", "")
        .input("Loss on the line", arg("BOTTLE.COUNT", "loss", 1), 2, "bottle_loss", "")
        .result(
            "Bottles to have ready",
            COUNT,
            "BOTTLE.COUNT(bottle_volume,bottle_size,bottle_loss,units)",
            "",
            "")
        .result(
            "Volume when the mead is at 12 °C",
            VOLUME,
            "BOTTLE.VOLUMEAT(bottle_volume,20*degree+freezing,12*degree+freezing,bottle_abv,units)",
            "",
            "Cold mead fills more bottles, and they rise when they warm.")
        .result(
            "Standard drinks a bottle",
            of(Quantity.NUMBER, 1),
            "BOTTLE.DRINKS(bottle_size,bottle_abv)",
            "",
            "US: 14 g of alcohol.")
        .result(
            "Energy in 100 mL",
            of(Quantity.KILOJOULE, 0),
            "BOTTLE.ENERGY(100,bottle_abv,bottle_sugar,7,bottle_acid)",
            "",
            "With 7 g/L of glycerol.");
  }

  private static void label(Block block) {
    Field limit = of(Quantity.PERCENT_VOL, 1);
    block
        .heading("Label and tax")
        .input("Strength on the label", arg("BOTTLE.LABELRANGE", "label", 1), 14.0, "label_abv", "")
        .input("Whose law", arg("BOTTLE.LABELRANGE", "rule", 0), "usa", "label_rule", "")
        .result(
            "True strength at least",
            limit,
            "INDEX(BOTTLE.LABELRANGE(label_abv,label_rule),1,1)",
            "label_low",
            "")
        .result(
            "True strength at most",
            limit,
            "INDEX(BOTTLE.LABELRANGE(label_abv,label_rule),1,2)",
            "label_high",
            "US: 14 % itself must not be crossed.")
        .verdict(
            "IF(AND(bottle_abv-2*bottle_u>=label_low,bottle_abv+2*bottle_u<=label_high),\"The label holds, with twice the uncertainty to spare.\",IF(OR(bottle_abv+2*bottle_u<label_low,bottle_abv-2*bottle_u>label_high),\"The label does not hold.\",\"Undecided: \"&TEXT(bottle_abv,\"0.00\")&\" ± \"&TEXT(2*bottle_u,\"0.00\")&\" % vol reaches past \"&TEXT(IF(bottle_abv+2*bottle_u>label_high,label_high,label_low),\"0.0\")&\". Measure better, blend away from the limit, or choose another label.\"))",
            2, "label_verdict")
        .input(
            "Carbon dioxide",
            arg("BOTTLE.TAXCLASS", "co2", 1),
            0.9,
            "bottle_co2",
            "g/L; still means at most 3.92.")
        .input(
            "Only honey and water",
            words("yes", "no"),
            "yes",
            "bottle_plain",
            "No fruit, no flavouring.")
        .result(
            "US tax class",
            TEXT,
            "BOTTLE.TAXCLASS(bottle_abv,bottle_co2,\"natural\",IF(bottle_plain=\"yes\",1,0))",
            "",
            "The tax boundary is 16 % vol, the label's is 14.")
        .result(
            "Sweetness word",
            TEXT,
            "BOTTLE.SWEETNESS(bottle_sugar,bottle_acid)",
            "",
            "EU scale for still wine, a convention for mead.")
        .warning(
            "Law is quoted with its date in the help of each function and changes: check the current text and ask your authority.");
  }

  private static void pressure(Block block) {
    block
        .heading("If it ferments again in the bottle")
        .input("Warmest store", arg("BOTTLE.REFERMENT", "temperature", 0), 35, "bottle_store", "")
        .result(
            "Pressure",
            of(Quantity.PRESSURE, 0),
            "BOTTLE.REFERMENT(bottle_sugar,bottle_abv,bottle_co2,bottle_store,units)",
            "bottle_pressure",
            "Gauge, if all fermentable sugar goes.")
        .warning(
            "Still-wine bottles are not made for pressure. Bottle only what is finished or truly stabilised; wear eye protection near bottles that may have gone on.");
  }
}
