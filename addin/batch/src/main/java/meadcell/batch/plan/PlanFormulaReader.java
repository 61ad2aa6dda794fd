package meadcell.batch.plan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import meadcell.batch.plan.PlanFormula.Piece;
import meadcell.batch.plan.PlanFormula.Reference;
import meadcell.batch.plan.PlanFormula.Target;
import meadcell.batch.plan.PlanFormula.Use;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Nearest;
import meadcell.catalogue.UnitSystem;
import meadcell.formula.Dialect;
import meadcell.formula.FormulaScanner;
import org.apache.poi.ss.formula.atp.AnalysisToolPak;
import org.apache.poi.ss.formula.function.FunctionMetadataRegistry;

/** Reads the formulas of a plan, and finds the mistakes in them that need no workbook. */
final class PlanFormulaReader {
  private static final String WHOLE_COLUMN = "all ";
  private static final String SO_FAR = "so far ";

  /** A call, or a bracket, being read. */
  private static final class Call {
    final FunctionSpec function; // null for a bracket or a function that is not ours
    int separators;
    int lastFilled = -1;
    String lastText = "";

    Call(FunctionSpec function) {
      this.function = function;
    }

    Optional<UnitSystem> units() {
      return UnitSystem.named(lastText.replace("\"", ""));
    }

    /** How many arguments it has, without the units. */
    int given() {
      return lastFilled + 1 - (function.takesUnits() && units().isPresent() ? 1 : 0);
    }
  }

  /** A reference as read; what it is used for is known when its call has been read. */
  private static final class Mention {
    final Target target;
    final String name;
    final Call call;
    final int argument;
    final boolean inCall;
    boolean alone;

    Mention(Target target, String name, Call call, boolean inCall) {
      this.target = target;
      this.name = name;
      this.call = call;
      this.argument = call == null ? 0 : call.separators;
      this.inCall = inCall;
      this.alone = call == null || call.lastFilled < call.separators;
    }

    Piece piece() {
      return new Piece(null, new Reference(target, name, use(), inCall));
    }

    private Optional<Use> use() {
      if (!alone || call == null || call.function == null) {
        return Optional.empty();
      }
      List<ArgSpec> args = call.function.args();
      return argument < args.size()
          ? Optional.of(
              new Use(call.function, args.get(argument), call.units().orElse(UnitSystem.METRIC)))
          : Optional.empty();
    }
  }

  private final String where;
  private final String source;
  private final Catalogue catalogue;
  private final FormulaScanner tokens;
  private final List<Supplier<Piece>> pieces = new ArrayList<>();
  private final Deque<Call> calls = new ArrayDeque<>();
  private final StringBuilder text = new StringBuilder();
  private Mention lastMention;
  private FunctionSpec outermost;
  private UnitSystem system = UnitSystem.METRIC;
  private String separator = "";

  private PlanFormulaReader(String where, String source, Catalogue catalogue) {
    this.where = where;
    this.source = source;
    this.catalogue = catalogue;
    this.tokens = new FormulaScanner(source, Dialect.PLAN);
  }

  static PlanFormula read(String where, String source, Catalogue catalogue) throws PlanMistake {
    String plain = source.strip();
    return new PlanFormulaReader(
            where, plain.startsWith("=") ? plain.substring(1) : plain, catalogue)
        .read();
  }

  private PlanFormula read() throws PlanMistake {
    while (tokens.next()) {
      switch (tokens.kind()) {
        case SPACE -> text.append(tokens.text());
        case TEXT -> text();
        case BRACKETED -> header();
        case LABEL -> mention(Target.LABEL, tokens.inside());
        case FUNCTION -> call();
        case NAME -> name();
        case OPEN -> open();
        case CLOSE -> close();
        case SEPARATOR -> separator();
        case UNCLOSED -> throw unclosed(source.charAt(tokens.start()));
        default -> other(tokens.text());
      }
    }
    if (tokens.isInArray()) {
      throw unclosed('{');
    }
    if (!calls.isEmpty()) {
      throw mistake("a bracket is not closed.");
    }
    flush();
    return new PlanFormula(source, pieces.stream().map(Supplier::get).toList(), outermost, system);
  }

  private PlanMistake mistake(String sentence) {
    return new PlanMistake(where, sentence);
  }

  private PlanMistake unclosed(char open) {
    return switch (open) {
      case '"' -> mistake("a text is not closed by \".");
      case '[' -> mistake("a [ is not closed by ].");
      case '{' -> mistake("a { is not closed by }.");
      default -> mistake("a " + open + " is not closed by " + open + ".");
    };
  }

  private void text() {
    other(tokens.text());
    if (!calls.isEmpty()) {
      calls.peek().lastText = tokens.text();
    }
  }

  private void header() {
    String name = tokens.inside().strip();
    if (startsWith(name, WHOLE_COLUMN)) {
      mention(Target.COLUMN, name.substring(WHOLE_COLUMN.length()));
    } else if (startsWith(name, SO_FAR)) {
      mention(Target.SO_FAR, name.substring(SO_FAR.length()));
    } else {
      mention(Target.ROW, name);
    }
  }

  private static boolean startsWith(String name, String word) {
    return name.regionMatches(true, 0, word, 0, word.length());
  }

  /** A header without its brackets is the likeliest slip in a call of ours. */
  private void name() throws PlanMistake {
    String name = tokens.text();
    boolean isValue = name.equalsIgnoreCase("TRUE") || name.equalsIgnoreCase("FALSE");
    boolean isOurs = calls.stream().anyMatch(call -> call.function != null);
    if (isOurs && !isValue && !tokens.isBefore('!')) {
      throw mistake(
          "what is "
              + name
              + "? Write ["
              + name
              + "] for the value in each row under that header, {"
              + name
              + "} for the one beside that label.");
    }
    other(name);
  }

  private void mention(Target target, String name) {
    boolean inCall = calls.stream().anyMatch(call -> call.function != null);
    Mention mention = new Mention(target, name.strip(), calls.peek(), inCall);
    filled();
    flush();
    pieces.add(mention::piece);
    lastMention = mention;
  }

  /** Anything but a reference: whatever stands in this argument does not stand alone. */
  private void other(String written) {
    filled();
    if (lastMention != null) {
      lastMention.alone = false;
    }
    text.append(written);
  }

  private void filled() {
    if (!calls.isEmpty()) {
      calls.peek().lastFilled = calls.peek().separators;
      calls.peek().lastText = "";
    }
  }

  private void flush() {
    if (text.length() > 0) {
      Piece piece = new Piece(text.toString(), null);
      pieces.add(() -> piece);
      text.setLength(0);
    }
  }

  private void open() {
    other("(");
    calls.push(new Call(null));
  }

  private void call() throws PlanMistake {
    String name = tokens.text();
    FunctionSpec function = catalogue.find(name).orElse(null);
    if (function == null && !isSpreadsheetFunction(name)) {
      throw mistake(
          "the function "
              + name
              + " is not known."
              + Nearest.to(name, catalogue.names())
                  .map(near -> " Did you mean " + near + "?")
                  .orElse(""));
    }
    boolean isFirst = calls.isEmpty() && pieces.isEmpty() && text.toString().isBlank();
    outermost = isFirst ? function : calls.isEmpty() ? null : outermost;
    boolean blank;
    do { // Excel takes no blank in front of the bracket
      blank = tokens.next() && tokens.kind() == FormulaScanner.Kind.SPACE;
    } while (blank);
    other((function == null ? name : function.name()) + "(");
    calls.push(new Call(function));
    lastMention = null;
  }

  private static boolean isSpreadsheetFunction(String name) {
    String upper = name.toUpperCase(Locale.ROOT);
    return FunctionMetadataRegistry.getFunctionByName(upper) != null
        || AnalysisToolPak.instance.findFunction(upper) != null;
  }

  private void close() throws PlanMistake {
    if (calls.isEmpty()) {
      throw mistake("a bracket is closed that was not opened.");
    }
    FunctionSpec function = calls.peek().function;
    int given = function == null ? 0 : calls.peek().given();
    Call closed = calls.pop();
    text.append(')');
    lastMention = null;
    if (calls.isEmpty()) {
      outermost = source.substring(tokens.end()).isBlank() ? outermost : null;
      system = function == null ? system : closed.units().orElse(UnitSystem.METRIC);
    }
    boolean isTooMany =
        function != null && !function.isVariadic() && given > function.args().size();
    if (function != null && (given < function.required() || isTooMany)) {
      throw mistake(
          function.name() + " has " + given + " arguments; it takes " + function.signature() + ".");
    }
  }

  private void separator() throws PlanMistake {
    if (!separator.isEmpty() && !separator.equals(tokens.text())) {
      throw mistake("arguments are separated by ; and by , in one formula; use one of them.");
    }
    if (calls.isEmpty()) {
      throw mistake("a " + tokens.text() + " stands outside of a call.");
    }
    separator = tokens.text();
    text.append(Dialect.EXCEL.written(tokens));
    calls.peek().separators++;
    lastMention = null;
  }
}
