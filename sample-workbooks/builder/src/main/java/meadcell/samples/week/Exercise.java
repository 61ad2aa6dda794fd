package meadcell.samples.week;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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

  /** An answer within so many tolerances is nearly right. */
  private static final int NEARLY = 5;

  private final Texts texts;
  private final String key;
  private final String typed;
  private final List<Fact> facts = new ArrayList<>();
  private final List<Slip> slips = new ArrayList<>();
  private Field field;
  private String answer;
  private String tolerance;
  private String why;
  private String[] rewarded = {};
  private String[] hinted = {};
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

  /** Puts formulas into what is said to an answer that is neither refused nor right. */
  Exercise hint(String... formulas) {
    hinted = formulas.clone();
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

  void add(Book book) {
    Block block = book.page(title(), 34, 16, 20, 20, 20).head(title(), question());
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
        .verdict(verdict(), 2, typed + "_verdict");
    CheckRow row =
        PUBLISHED.stream()
            .filter(candidate -> candidate.call().equals(published))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no check value: " + published));
    String source =
        texts.formula(
            "source",
            Texts.quoted(shown(row.expected()) + unit(row)),
            Texts.quoted(row.call()),
            Texts.quoted(row.source() + "; " + row.where()));
    block
        .heading(texts.get("compare"))
        .verdict(choice(isRight(), source, texts.formula("later")), 3, typed + "_published");
  }

  private String verdict() {
    String hint = texts.formula(key + ".hint", hinted);
    String high = typed + ">" + answer;
    String off = choice(high, texts.formula("high", hint), texts.formula("low", hint));
    String nearly =
        choice(high, texts.formula("nearly.high", hint), texts.formula("nearly.low", hint));
    String wrong =
        choice("ABS(" + typed + "-" + answer + ")<=" + NEARLY + "*" + tolerance, nearly, off);
    for (Slip slip : slips) {
      wrong = choice(slip.condition(), slip.sentence(), wrong);
    }
    String refused = why == null ? wrong : choice(why + "<>\"\"", texts.formula("no", why), wrong);
    String right = texts.formula("right", texts.formula(key + ".right", rewarded));
    String judged = choice(isRight(), right, refused);
    String number = choice("ISTEXT(" + typed + ")", texts.formula("text"), judged);
    String code = "IFERROR(ERROR.TYPE(" + typed + "),0)";
    String error =
        choice(
            code + "=5",
            texts.formula("error.name"),
            choice(code + "=3", texts.formula("error.value"), texts.formula("error.other")));
    return choice(
        "ISBLANK(" + typed + ")",
        texts.formula("empty"),
        choice("ISERROR(" + typed + ")", error, number));
  }

  private String isRight() {
    return "IFERROR(AND(ISNUMBER("
        + typed
        + "),ABS("
        + typed
        + "-"
        + answer
        + ")<="
        + tolerance
        + "),FALSE)";
  }

  private static String choice(String condition, String then, String otherwise) {
    return "IF(" + condition + "," + then + "," + otherwise + ")";
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
