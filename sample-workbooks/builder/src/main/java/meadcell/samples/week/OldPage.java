package meadcell.samples.week;

import static meadcell.samples.sheet.Field.TEXT;
import static meadcell.samples.week.Slips.choice;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
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
   * @param gravity as an English hand writes it
   * @param metric the temperature as noted in a cellar that thinks in °C
   * @param us the same in one that thinks in °F
   * @param read the reading, or 0 where nobody can know it
   * @param celsius the temperature that the first one means
   * @param fahrenheit the temperature that the second one means
   * @param why the text that says why nobody can know it
   */
  record Line(
      int day,
      String gravity,
      String metric,
      String us,
      double read,
      double celsius,
      double fahrenheit,
      String why) {
    boolean isReadable() {
      return read > 0;
    }

    private static Line of(
        int day, String gravity, String metric, String us, double read, double c, double f) {
      return new Line(day, gravity, metric, us, read, c, f, "");
    }

    private static Line unknown(int day, String gravity, String metric, String us, String why) {
      return new Line(day, gravity, metric, us, 0, 0, 0, why);
    }
  }

  private static final double HYDROMETER = 20;

  static final List<Line> LINES =
      List.of(
          Line.of(0, "1.104", "18", "64", 1.104, 18, 64),
          Line.of(3, "1087", "23", "73", 1.087, 23, 73),
          Line.of(6, "1.066 sg", "75F", "24C", 1.066, (75 - 32) / 1.8, 24 * 1.8 + 32),
          Line.of(9, "1,048", "~22", "~72", 1.048, 22, 72),
          Line.unknown(11, "1.046?", "22", "72", "doubt"),
          Line.unknown(13, "1.1031", "21", "70", "misread"),
          Line.unknown(15, "1.021-1.026", "21", "70", "range"),
          Line.unknown(17, "1.012", "", "", "missing"),
          Line.of(20, "SG 1.004", "20", "68", 1.004, 20, 68),
          Line.of(24, "0.998", "15.5", "60", 0.998, 15.5, 60));

  private final Texts texts;

  OldPage(Texts texts) {
    this.texts = texts;
  }

  String title() {
    return texts.get("page");
  }

  String question() {
    return texts.get("page.lead");
  }

  void add(Book book) {
    Block block =
        book.page(title(), 12, 16, 16, 16, 60)
            .veiled()
            .head(title(), question())
            .skip(1)
            .story(texts.get("page.story"))
            .labels(2)
            .fixed(
                texts.get("page.calibration"),
                Field.of(Quantity.TEMPERATURE, 0),
                HYDROMETER,
                "page_calibration")
            .labels(1)
            .skip(1)
            .headers(
                texts.get("page.day"),
                texts.get("page.gravity"),
                texts.get("page.temperature"),
                texts.get("page.yours"),
                texts.get("page.verdict"));
    for (int i = 0; i < LINES.size(); i++) {
      line(block, LINES.get(i), i);
    }
    String score =
        texts.formula("page.score", right(), Texts.quoted("" + readable().size()), guessed());
    block
        .skip(1)
        .verdict(
            score
                + "&\" \"&"
                + choice(isDone(), texts.formula("page.done"), texts.formula("page.more")),
            3,
            "page_score")
        .heading(texts.get("page.whole"))
        .story(texts.get("page.steps"));
  }

  private static List<Integer> readable() {
    return numbers(true);
  }

  private static List<Integer> numbers(boolean readable) {
    return IntStream.range(0, LINES.size())
        .filter(i -> LINES.get(i).isReadable() == readable)
        .boxed()
        .toList();
  }

  private static String name(int line) {
    return "page_" + (line + 1);
  }

  private static String typed(int line) {
    return name(line) + "_answer";
  }

  private static String truth(int line) {
    Line noted = LINES.get(line);
    return "GRAVITY.CORRECT("
        + noted.read
        + ",IF(units=\"US\","
        + noted.fahrenheit
        + ","
        + noted.celsius
        + "),page_calibration,units)";
  }

  private static String isRight(int line) {
    return "IFERROR(ABS(" + typed(line) + "-" + truth(line) + ")<0.0003,FALSE)";
  }

  /** How many readable lines are right. */
  private static String right() {
    return sum(readable().stream().map(OldPage::isRight));
  }

  /** How many lines that nobody can know have been given a number. */
  private static String guessed() {
    return sum(numbers(false).stream().map(line -> "NOT(ISBLANK(" + typed(line) + "))"));
  }

  private static String sum(Stream<String> conditions) {
    return conditions.collect(Collectors.joining(",1,0)+IF(", "(IF(", ",1,0))"));
  }

  /** Whether all that can be read is there, and nothing else, as a condition. */
  String isDone() {
    return "AND(" + right() + "=" + readable().size() + "," + guessed() + "=0)";
  }

  private void line(Block block, Line line, int number) {
    block.line(
        Integer.toString(line.day()),
        Entry.worked(TEXT, Texts.quoted(texts.numbers(line.gravity())), ""),
        Entry.worked(
            TEXT,
            choice(
                "units=\"US\"",
                Texts.quoted(texts.numbers(line.us())),
                Texts.quoted(texts.numbers(line.metric()))),
            ""),
        Entry.prompted(
            Field.of(Quantity.SPECIFIC_GRAVITY, 4), typed(number), texts.get("page.type")),
        Entry.worked(TEXT, verdict(number), name(number) + "_verdict"));
  }

  private String verdict(int number) {
    Line line = LINES.get(number);
    String typed = typed(number);
    String judged =
        line.isReadable()
            ? choice(
                isRight(number),
                texts.formula("page.right"),
                choice(
                    "ISERROR(" + typed + ")",
                    Slips.error(texts, typed),
                    choice(
                        "NOT(ISNUMBER(" + typed + "))",
                        texts.formula("text"),
                        choice(
                            "ABS(" + typed + "-" + line.read() + ")<0.00001",
                            texts.formula("page.uncorrected"),
                            choice(
                                typed + ">1.6",
                                texts.formula("page.point"),
                                texts.formula("page.wrong"))))))
            : texts.formula("page.unknown", texts.formula("page." + line.why()));
    return choice("ISBLANK(" + typed + ")", texts.formula("page.empty"), judged);
  }
}
