package meadcell.samples.week;

import static meadcell.samples.week.Slips.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import meadcell.catalogue.CheckRow;
import meadcell.catalogue.LiteralCall;
import meadcell.catalogue.Numbers;
import meadcell.catalogue.UnitSystem;
import meadcell.cellar.Cellar;
import meadcell.samples.sheet.Block;
import meadcell.samples.sheet.Book;
import meadcell.samples.sheet.Field;

/**
 * One exercise on a sheet of its own: story, facts, a cell to type into, a verdict, the source. Its
 * texts are those whose keys begin with its own; so do the names of its cells.
 */
final class Exercise {
  private record Fact(String name, Field field, Object value) {}

  /** Something that is often done instead, and what to say to it. */
  private record Slip(String condition, String sentence) {}

  private static final List<CheckRow> PUBLISHED = CheckRow.load(Cellar.catalogue());

  private final Texts texts;
  private final String key;
  private final String typed;
  private final List<Fact> facts = new ArrayList<>();
  private final List<Slip> slips = new ArrayList<>();
  private Field field;
  private String answer;
  private String tolerance;
  private int nearly = 5;
  private String why;
  private String[] rewarded = {};
  private String hint;
  private String published;

  Exercise(Texts texts, String key) {
    this.texts = texts;
    this.key = key;
    typed = key + "_answer";
  }

  String title() {
    return texts.get(key);
  }

  String question() {
    return texts.get(key + ".question");
  }

  /** What is known: the name's part behind the exercise's own. */
  Exercise given(String name, Field quantity, Object value) {
    facts.add(new Fact(name, quantity, value));
    return this;
  }

  /** What is asked: the call that answers it, and how far from it (a formula) is still right. */
  Exercise ask(Field field, String answer, String tolerance) {
    this.field = field;
    this.answer = answer;
    this.tolerance = tolerance;
    return this;
  }

  /** An answer within so many tolerances is nearly right. */
  Exercise nearly(int tolerances) {
    nearly = tolerances;
    return this;
  }

  /** A call with the answer in it: where the function refuses it, it says why it is wrong. */
  Exercise refusedBy(String function, String arguments) {
    why = "CELLAR.WHY(\"" + function + "\"," + arguments + ")";
    return this;
  }

  /** Puts formulas into what is said to a right answer. */
  Exercise reward(String... formulas) {
    rewarded = formulas.clone();
    return this;
  }

  /** What is said to an answer that is wrong, instead of what the function takes. */
  Exercise hint(String... formulas) {
    hint = texts.formula(key + ".hint", formulas);
    return this;
  }

  /** What to say instead where this condition holds: a text of its own. */
  Exercise slip(String condition, String text, String... formulas) {
    slips.add(new Slip(condition, texts.formula(key + "." + text, formulas)));
    return this;
  }

  /** The value to compare with is that of this call among the shipped check values. */
  Exercise published(String call) {
    published = call;
    return this;
  }

  /** Adds the sheet, with the way to the next one below. */
  void add(Book book, String next, String nextQuestion) {
    Block block = book.page(title(), 34, 24, 18, 18, 16).veiled().head(title(), question());
    block.skip(1).story(texts.get(key + ".story")).heading(texts.get("given"));
    facts.forEach(
        fact ->
            block.fixed(
                texts.get(key + "." + fact.name()),
                fact.field(),
                fact.value(),
                key + "_" + fact.name()));
    block
        .heading(texts.get("turn"))
        .prompted(question(), field, typed, texts.get("type"))
        .skip(1)
        .verdict(verdict(), 5, typed + "_verdict")
        .heading(texts.get("compare"))
        .verdict(choice(isRight(), source(), texts.formula("later")), 3, typed + "_published")
        .heading(texts.get("next"))
        .link(next, nextQuestion);
  }

  private String source() {
    CheckRow row =
        PUBLISHED.stream()
            .filter(candidate -> candidate.call().equals(published))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no check value: " + published));
    return texts.formula(
        "source",
        Texts.quoted((texts.numbers(shown(row.expected())) + unit(row)).strip()),
        Texts.quoted(texts.numbers(row.call())),
        Texts.quoted(row.source() + "; " + row.where()),
        texts.formula("kind." + row.kind().name().toLowerCase(Locale.ROOT)));
  }

  /** A sentence for whatever stands in the cell, none of it an error. */
  private String verdict() {
    String takes = texts.formula(key + ".takes");
    String text =
        choice("TRIM(" + typed + ")=\"\"", texts.formula("text.blank"), texts.formula("text"));
    return choice(
        "ISBLANK(" + typed + ")",
        texts.formula("empty"),
        choice(
            "ISERROR(" + typed + ")",
            Slips.error(texts, typed) + "&\" \"&" + takes,
            choice("ISTEXT(" + typed + ")", text, judged(takes))));
  }

  private String judged(String takes) {
    String high = typed + ">" + answer;
    String far = choice(high, texts.formula("high"), texts.formula("low"));
    String near = choice(high, texts.formula("nearly.high"), texts.formula("nearly.low"));
    String wrong =
        choice(isWithin(typed, nearly + "*" + tolerance), near, far)
            + "&\" \"&"
            + (hint == null ? takes : hint);
    for (Slip slip : slips) {
      wrong = choice(slip.condition(), slip.sentence(), wrong);
    }
    wrong = choice(isMetricOfUs(), texts.formula("forgotten"), wrong);
    String refused = why == null ? wrong : choice(why + "<>\"\"", texts.formula("no", why), wrong);
    String dated = choice(Slips.isDate(typed), texts.formula("date"), refused);
    String other =
        field.isDimensional()
            ? choice(
                isWithin(field.fromOther(typed), tolerance), texts.formula("other", "units"), dated)
            : dated;
    String right = texts.formula("right", texts.formula(key + ".right", rewarded));
    return choice(isRight(), right, other);
  }

  /** Whether the answer is right, as a condition. */
  String isRight() {
    return "IFERROR(AND(ISNUMBER(" + typed + ")," + isWithin(typed, tolerance) + "),FALSE)";
  }

  /** Whether US numbers went in as if they were metric ones. */
  private String isMetricOfUs() {
    return answer.endsWith(",units)")
        ? "IFERROR(AND(units=\"US\",ABS("
            + typed
            + "-"
            + answer.replaceFirst(",units\\)$", ")")
            + ")<="
            + tolerance
            + "),FALSE)"
        : "FALSE";
  }

  private String isWithin(String number, String distance) {
    return "ABS(" + number + "-" + answer + ")<=" + distance;
  }

  private static String unit(CheckRow row) {
    LiteralCall call = LiteralCall.parse(row.call());
    UnitSystem system =
        Arrays.stream(call.arguments())
            .flatMap(argument -> UnitSystem.named(argument).stream())
            .findFirst()
            .orElse(UnitSystem.METRIC);
    return " " + Cellar.catalogue().get(call.function()).declaration().gives().unit(system);
  }

  private static String shown(Object expected) {
    if (expected instanceof Object[][] rows) {
      return Arrays.stream(rows)
          .flatMap(Arrays::stream)
          .map(Exercise::shown)
          .collect(Collectors.joining(" / "));
    }
    return expected instanceof Double number ? Numbers.text(number) : expected.toString();
  }
}
