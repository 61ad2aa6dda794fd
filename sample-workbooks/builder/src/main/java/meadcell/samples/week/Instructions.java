package meadcell.samples.week;

import static meadcell.samples.sheet.Field.TEXT;

import java.util.List;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Factor;
import meadcell.samples.sheet.Field;

/** First sheet: what the book is, how to work, the units switch and the way to each exercise. */
final class Instructions {
  private static final List<Factor> FACTORS =
      List.of(Factor.LITRE, Factor.KILOGRAM, Factor.CENTIMETRE, Factor.DEGREE, Factor.FREEZING);

  private Instructions() {}

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
    for (Factor factor : FACTORS) {
      factor.put(block, texts.get("switch.note").replace("{0}", texts.get(factor.title())));
    }
  }
}
