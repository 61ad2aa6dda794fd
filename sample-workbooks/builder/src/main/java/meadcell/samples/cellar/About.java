package meadcell.samples.cellar;

import static meadcell.samples.sheet.Field.TEXT;

import java.util.Map;
import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;

/**
 * First sheet of a book: what it is, how to read it, the units switch and the way to each sheet.
 */
public final class About {
  private About() {}

  /**
   * Adds the sheet; {@code sheets} says for each other sheet what it answers.
   *
   * @return the block, to write on
   */
  public static Block add(Book book, String title, String lead, Map<String, String> sheets) {
    Block block = book.page("About", 26, 14, 20, 20, 20, 20).head(title, lead);
    block
        .warning(
            "Tarn Hollow is an invented cellar on an upland lake. Its lots, casks, people and"
                + " readings are invented. The arithmetic is real and its sources are named.")
        .heading("Units")
        .input(
            "Units",
            Field.words("metric", "US"),
            "metric",
            "units",
            "metric or US: every result follows. The numbers shown to begin with are written as"
                + " 225*litre or 13*degree+freezing, so they follow too. What you type over them is"
                + " taken as it stands, in the units chosen here.")
        .result(
            "Functions",
            TEXT,
            "IFERROR(CELLAR.VERSION(),\"not installed\")",
            "",
            "Version of the installed functions. If there is none, the"
                + " extension is not installed or did not load, and all numbers are those saved last.");
    block
        .heading("How to read a sheet")
        .input(
            "You type here",
            TEXT,
            "input",
            "",
            "Framed cells on straw: yours to change. Select one to see what it takes.")
        .result(
            "Worked out",
            TEXT,
            "\"result\"",
            "",
            "Grey cells hold formulas. They are locked so that nothing is overwritten by mistake; there is no password (Tools or Review, then the protection of the sheet).")
        .note(
            "A result is an error when its input is impossible, never a guess. Put CELLAR.WHY with"
                + " the same arguments beside it and read the reason. Empty rows stay empty. Percent"
                + " are percent numbers: 17.2 means 17.2 %.");
    block.heading("Sheets");
    sheets.forEach(block::link);
    block.heading("What the switch changes");
    factor(block, "litre", "1/3.785411784", "US gallons in a litre (1 US gal = 231 in³, exact).");
    factor(block, "kilogram", "1/0.45359237", "pounds in a kilogram (exact).");
    factor(block, "centimetre", "1/2.54", "inches in a centimetre (exact).");
    factor(block, "squaremetre", "1/0.3048^2", "square feet in a square metre (exact).");
    factor(block, "cubicmetre", "1/0.3048^3", "cubic feet in a cubic metre (exact).");
    factor(
        block,
        "kilopascal",
        "0.64516/(0.45359237*9.80665)",
        "pounds on a square inch in a kilopascal (exact).");
    factor(block, "degree", "1.8", "°F in a °C.");
    block.result(
        "freezing",
        Field.of(Quantity.NUMBER, 0),
        "IF(units=\"US\",32,0)",
        "freezing",
        "where the scale of temperature has the freezing point of water.");
    return block;
  }

  private static void factor(Block block, String name, String us, String note) {
    block.result(
        name,
        Field.of(Quantity.NUMBER, 6),
        "IF(units=\"US\"," + us + ",1)",
        name,
        "1, or in US units the " + note);
  }
}
