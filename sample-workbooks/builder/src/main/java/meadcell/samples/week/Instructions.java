package meadcell.samples.week;

import static meadcell.samples.sheet.Field.TEXT;

import java.util.List;
import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;

/** First sheet: what the book is, how to work, the units switch and the way to each exercise. */
final class Instructions {
  private final Texts texts;
  private final Block block;

  private Instructions(Texts texts, Block block) {
    this.texts = texts;
    this.block = block;
  }

  static void add(Book book, Texts texts, List<Exercise> exercises) {
    Block block =
        book.page(texts.get("about"), 26, 14, 20, 20, 20, 20)
            .head(texts.get("book"), texts.get("lead"));
    block
        .warning(texts.get("invented"))
        .heading(texts.get("work"))
        .note(texts.get("work.note"))
        .heading(texts.get("units"))
        .input(
            texts.get("units"),
            Field.words("metric", "US"),
            "metric",
            "units",
            texts.get("units.note"))
        .result(
            texts.get("functions"),
            TEXT,
            "IFERROR(CELLAR.VERSION()," + texts.formula("functions.none") + ")",
            "",
            texts.get("functions.note"))
        .heading(texts.get("sheets"));
    exercises.forEach(exercise -> block.link(exercise.title(), exercise.question()));
    block.link(texts.get("page"), texts.get("page.lead")).heading(texts.get("switch"));
    Instructions instructions = new Instructions(texts, block);
    instructions.factor("litre", "1/3.785411784", "1");
    instructions.factor("kilogram", "1/0.45359237", "1");
    instructions.factor("centimetre", "1/2.54", "1");
    instructions.factor("degree", "1.8", "1");
    instructions.factor("freezing", "32", "0");
  }

  private void factor(String name, String us, String metric) {
    block.result(
        name,
        Field.of(Quantity.NUMBER, 6),
        "IF(units=\"US\"," + us + "," + metric + ")",
        name,
        texts.get("switch.note").replace("{0}", texts.get(name)));
  }
}
