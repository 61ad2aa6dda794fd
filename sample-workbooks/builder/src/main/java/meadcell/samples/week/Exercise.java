package meadcell.samples.week;

import static meadcell.samples.sheet.Field.TEXT;

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

/** One exercise on a sheet of its own: story, facts, a cell to type into, a verdict, the source. */
final class Exercise {
  private record Fact(String label, Field field, Object value, String name) {}

  private static final List<CheckRow> PUBLISHED = CheckRow.load(Cellar.catalogue());

  private final String title;
  private final String story;
  private final List<Fact> facts = new ArrayList<>();
  private String question;
  private Field field;
  private String answer;
  private String why;
  private String right;
  private String reward;
  private String hint;
  private String published;

  Exercise(String title, String story) {
    this.title = title;
    this.story = story;
  }

  String title() {
    return title;
  }

  String question() {
    return question;
  }

  /** What is known, under a name. */
  Exercise given(String label, Field quantity, Object value, String name) {
    facts.add(new Fact(label, quantity, value, name));
    return this;
  }

  /** What is asked, and the name of the cell that takes the answer. */
  Exercise ask(String question, Field field, String answer) {
    this.question = question;
    this.field = field;
    this.answer = answer;
    return this;
  }

  /** A call with the answer in it: where the function refuses it, it says why it is wrong. */
  Exercise refusedBy(String function, String arguments) {
    why = "CELLAR.WHY(\"" + function + "\"," + arguments + ")";
    return this;
  }

  /** When the answer is right, and a text formula that is then shown. */
  Exercise right(String condition, String reward) {
    this.right = condition;
    this.reward = reward;
    return this;
  }

  /** A text formula shown to an answer that is neither refused nor right. */
  Exercise hint(String hint) {
    this.hint = hint;
    return this;
  }

  /** The value to compare with is that of this call among the shipped check values. */
  Exercise published(String call) {
    published = call;
    return this;
  }

  void add(Book book) {
    Block block = book.page(title, 34, 16, 20, 20, 20).head(title, question);
    block.skip(1).story(story).heading("Given");
    facts.forEach(fact -> block.fixed(fact.label(), fact.field(), fact.value(), fact.name()));
    block
        .heading("Your turn")
        .prompted(question, field, answer, "A number, or a formula that begins with =.")
        .skip(1)
        .verdict(verdict(), 2, answer + "_verdict");
    CheckRow row =
        PUBLISHED.stream()
            .filter(candidate -> candidate.call().equals(published))
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("no check value: " + published));
    block
        .heading("To compare with")
        .fixed("Value", TEXT, shown(row.expected()) + unit(row), "")
        .note("Call: " + row.call() + "\nSource: " + row.source() + "; " + row.where() + ".");
  }

  private String verdict() {
    String judged = "IF(" + right + ",\"Right. \"&" + reward + ",\"Not yet. \"&" + hint + ")";
    return "IF("
        + answer
        + "=\"\",\"Type your answer into the framed cell.\",IF("
        + why
        + "<>\"\",\"No: \"&"
        + why
        + ","
        + judged
        + "))";
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
          .collect(Collectors.joining(" and "));
    }
    return expected instanceof Double number ? Numbers.text(number) : expected.toString();
  }
}
