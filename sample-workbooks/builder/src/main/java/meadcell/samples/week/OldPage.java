package meadcell.samples.week;

import static meadcell.samples.sheet.Field.TEXT;

import java.util.ArrayList;
import java.util.List;
import meadcell.catalogue.Quantity;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Block.Entry;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;

/** The last exercise: a page of a log as people really keep one. */
final class OldPage {
  /**
   * A line as noted, and what it can only mean.
   *
   * @param read the reading, or 0 where nobody can know it
   * @param why the text that says so
   */
  private record Line(
      int day, String gravity, String temperature, double read, double celsius, String why) {
    boolean isReadable() {
      return read > 0;
    }
  }

  private static final List<Line> LINES =
      List.of(
          new Line(0, "1.104", "18", 1.104, 18, ""),
          new Line(3, "1087", "23", 1.087, 23, ""),
          new Line(6, "1.066 sg", "75F", 1.066, (75 - 32) / 1.8, ""),
          new Line(9, "1,048", "~22", 1.048, 22, ""),
          new Line(13, "1.1031", "21", 0, 0, "misread"),
          new Line(17, "1.012", "", 0, 0, "missing"),
          new Line(24, "0.998 !!", "15.5", 0.998, 15.5, ""));

  private final Texts texts;
  private final Field gravity;
  private final List<String> right = new ArrayList<>();
  private final List<String> guessed = new ArrayList<>();

  private OldPage(Texts texts) {
    this.texts = texts;
    gravity = Field.between(Quantity.SPECIFIC_GRAVITY, 4, texts.get("page.type"), 0.9, 1.2);
  }

  static void add(Book book, Texts texts) {
    new OldPage(texts).add(book);
  }

  private void add(Book book) {
    Block block =
        book.page(texts.get("page"), 10, 16, 14, 16, 62)
            .head(texts.get("page"), texts.get("page.lead"));
    block
        .skip(1)
        .story(texts.get("page.story"))
        .skip(1)
        .headers(
            texts.get("page.day"),
            texts.get("page.gravity"),
            texts.get("page.temperature"),
            texts.get("page.yours"),
            texts.get("page.verdict"));
    for (int i = 0; i < LINES.size(); i++) {
      line(block, LINES.get(i), "page_" + (i + 1));
    }
    String score = texts.formula("page.score", sum(right), "" + right.size(), sum(guessed));
    String done = sum(right) + "=" + right.size();
    String none = sum(guessed) + "=0";
    block
        .skip(1)
        .verdict(
            score
                + "&\" \"&IF(AND("
                + done
                + ","
                + none
                + "),"
                + texts.formula("page.done")
                + ","
                + texts.formula("page.more")
                + ")",
            3,
            "page_score");
  }

  private void line(Block block, Line line, String name) {
    String typed = name + "_answer";
    String truth = "GRAVITY.CORRECT(" + line.read() + "," + line.celsius() + ",20)";
    String isRight = "IFERROR(ABS(" + typed + "-" + truth + ")<0.0003,FALSE)";
    String judged =
        line.isReadable()
            ? "IF("
                + isRight
                + ","
                + texts.formula("page.right")
                + ",IF(ISERROR("
                + typed
                + "),"
                + texts.formula("page.error")
                + ",IF("
                + typed
                + "="
                + line.read()
                + ","
                + texts.formula("page.uncorrected")
                + ","
                + texts.formula("page.wrong")
                + ")))"
            : texts.formula("page.unknown", texts.formula("page." + line.why()));
    (line.isReadable() ? right : guessed)
        .add(line.isReadable() ? isRight : "NOT(ISBLANK(" + typed + "))");
    block.line(
        Integer.toString(line.day()),
        Entry.worked(TEXT, Texts.quoted(line.gravity()), ""),
        Entry.worked(TEXT, Texts.quoted(line.temperature()), ""),
        Entry.typed(gravity, null, typed),
        Entry.worked(
            TEXT,
            "IF(ISBLANK(" + typed + ")," + texts.formula("page.empty") + "," + judged + ")",
            name + "_verdict"));
  }

  /** How many of these conditions hold. */
  private static String sum(List<String> conditions) {
    return "(IF(" + String.join(",1,0)+IF(", conditions) + ",1,0))";
  }
}
