package meadcell.samples.week;

import static meadcell.samples.sheet.Field.TEXT;

import java.util.List;
import java.util.stream.Collectors;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Factor;
import meadcell.samples.sheet.Field;

/** First sheet: what the book is, how to work, the units switch and the way to each exercise. */
final class Instructions {
  private static final List<Factor> FACTORS =
      List.of(
          Factor.LITRE,
          Factor.KILOGRAM,
          Factor.CENTIMETRE,
          Factor.CUBICMETRE,
          Factor.KILOPASCAL,
          Factor.DEGREE,
          Factor.FREEZING);

  private Instructions() {}

  static void add(Book book, Texts texts, List<Exercise> exercises, OldPage page) {
    Block block =
        book.page(texts.get("about"), 26, 14, 20, 20, 20, 20)
            .veiled()
            .head(texts.get("book"), texts.get("lead"));
    String solved =
        exercises.stream()
            .map(exercise -> "IF(" + exercise.isRight() + ",1,0)")
            .collect(Collectors.joining("+"));
    block
        .heading(texts.get("cautions"))
        .warning(texts.get("cautions.text"))
        .heading(texts.get("work"))
        .story(texts.get("work.note"))
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
        .result(
            texts.get("solved"),
            TEXT,
            texts.formula(
                "solved.of",
                "(" + solved + "+IF(" + page.isDone() + ",1,0))",
                Texts.quoted(Integer.toString(exercises.size() + 1))),
            "solved",
            texts.get("solved.note"))
        .heading(texts.get("sheets"));
    exercises.forEach(exercise -> block.link(exercise.title(), exercise.question()));
    block
        .link(page.title(), page.question())
        .skip(1)
        .note(texts.get("invented"))
        .heading(texts.get("switch"));
    for (Factor factor : FACTORS) {
      factor.put(block, texts.get("switch.note").replace("{0}", texts.get(factor.title())));
    }
  }
}
