package meadcell.batch.plan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Nearest;
import meadcell.catalogue.UnitSystem;
import org.apache.poi.ss.formula.atp.AnalysisToolPak;
import org.apache.poi.ss.formula.function.FunctionMetadataRegistry;

/**
 * A formula as a plan writes it: {@code [Header]} is this row's value, {@code [all Header]} the
 * whole column, {@code {Label}} a labelled cell; array constants start with a number, a sign or a
 * quote.
 */
public final class PlanFormula {
  /** What a reference points to. */
  public enum Target {
    ROW,
    COLUMN,
    LABEL
  }

  /** Which argument of which of our functions a reference is, alone. */
  public record Use(FunctionSpec function, ArgSpec arg, UnitSystem system) {}

  /**
   * A reference in the formula.
   *
   * @param use where it is an argument by itself, else empty
   * @param inCall whether it stands somewhere inside one of our calls
   */
  public record Reference(Target target, String name, Optional<Use> use, boolean inCall) {}

  /** Text, or a reference; {@code mention} only while the formula is being read. */
  private record Piece(String text, Mention mention, Reference reference) {}

  /** A call being read. */
  private static final class Call {
    final FunctionSpec function;
    int separators;
    int lastFilled = -1;
    String lastText = "";

    Call(FunctionSpec function) {
      this.function = function;
    }

    UnitSystem system() {
      return UnitSystem.named(lastText.replace("\"", "")).orElse(UnitSystem.METRIC);
    }

    int given() {
      boolean unitsNamed = UnitSystem.named(lastText.replace("\"", "")).isPresent();
      return lastFilled + 1 - (unitsNamed && function.takesUnits() ? 1 : 0);
    }
  }

  /** A reference as read; what it is used for is known when its call has been read. */
  private static final class Mention {
    final Target target;
    final String name;
    final Call call;
    final int argument;
    final boolean inCall;
    boolean alone = true;

    Mention(Target target, String name, Call call, int argument, boolean inCall) {
      this.target = target;
      this.name = name;
      this.call = call;
      this.argument = argument;
      this.inCall = inCall;
    }

    Reference reference() {
      Optional<Use> use = Optional.empty();
      if (alone && call != null && call.function != null) {
        List<ArgSpec> args = call.function.args();
        if (argument < args.size()) {
          use = Optional.of(new Use(call.function, args.get(argument), call.system()));
        }
      }
      return new Reference(target, name, use, inCall);
    }
  }

  private final String where;
  private final String source;
  private final Catalogue catalogue;
  private final List<Piece> pieces = new ArrayList<>();
  private final Deque<Call> calls = new ArrayDeque<>();
  private final StringBuilder text = new StringBuilder();
  private Mention aloneInArgument;
  private List<Reference> references;
  private FunctionSpec outermost;
  private char separator;
  private int at;

  private PlanFormula(String where, String source, Catalogue catalogue) throws PlanMistake {
    this.where = where;
    this.source = source;
    this.catalogue = catalogue;
    read();
  }

  static PlanFormula parse(String where, String source, Catalogue catalogue) throws PlanMistake {
    String plain = source.strip();
    return new PlanFormula(where, plain.startsWith("=") ? plain.substring(1) : plain, catalogue);
  }

  public List<Reference> references() {
    return references;
  }

  /** Whether it gives one value a row; otherwise it fills one labelled cell. */
  public boolean fillsColumn() {
    return references().stream().anyMatch(reference -> reference.target() == Target.ROW);
  }

  /** The function whose result is the formula's, where it is one call of ours and nothing more. */
  public Optional<FunctionSpec> outermost() {
    return Optional.ofNullable(outermost);
  }

  /** The formula for one cell, with each reference as {@code resolved} gives it. */
  public String with(Function<Reference, String> resolved) {
    StringBuilder formula = new StringBuilder();
    for (Piece piece : pieces) {
      formula.append(piece.reference == null ? piece.text : resolved.apply(piece.reference));
    }
    return formula.toString();
  }

  @Override
  public String toString() {
    return source;
  }

  // ---- reading ----------------------------------------------------------------------------

  private void read() throws PlanMistake {
    while (at < source.length()) {
      char c = source.charAt(at);
      if (c == '"') {
        quoted();
      } else if (c == '[') {
        String name = upTo(']');
        boolean whole = name.regionMatches(true, 0, "all ", 0, 4);
        mention(whole ? Target.COLUMN : Target.ROW, whole ? name.substring(4) : name);
      } else if (c == '{' && !isArrayConstant()) {
        mention(Target.LABEL, upTo('}'));
      } else if (c == '{') {
        String constant = upTo('}');
        other("{" + constant + "}");
      } else if (Character.isLetter(c) || c == '_') {
        word();
      } else if (c == ')') {
        close();
      } else if (c == ',' || c == ';') {
        separator(c);
      } else {
        if (c == '(') {
          calls.push(new Call(null));
        }
        if (c == ' ') {
          text.append(c);
        } else {
          other(String.valueOf(c));
        }
        at++;
      }
    }
    if (!calls.isEmpty()) {
      throw mistake("a bracket is not closed.");
    }
    flush();
    pieces.replaceAll(
        piece -> piece.mention == null ? piece : new Piece(null, null, piece.mention.reference()));
    references = pieces.stream().map(Piece::reference).filter(Objects::nonNull).toList();
  }

  private PlanMistake mistake(String sentence) {
    return new PlanMistake(where, sentence);
  }

  private boolean isArrayConstant() {
    int next = at + 1;
    while (next < source.length() && source.charAt(next) == ' ') {
      next++;
    }
    return next < source.length() && "0123456789+-.\"".indexOf(source.charAt(next)) >= 0;
  }

  private String upTo(char end) throws PlanMistake {
    int close = source.indexOf(end, at);
    if (close < 0) {
      throw mistake("a " + source.charAt(at) + " is not closed by " + end + ".");
    }
    String inside = source.substring(at + 1, close);
    at = close + 1;
    return inside.strip();
  }

  private void quoted() throws PlanMistake {
    int end = at + 1;
    while (true) {
      end = source.indexOf('"', end);
      if (end < 0) {
        throw mistake("a text is not closed by \".");
      }
      if (end + 1 < source.length() && source.charAt(end + 1) == '"') {
        end += 2;
      } else {
        break;
      }
    }
    String literal = source.substring(at, end + 1);
    other(literal);
    if (!calls.isEmpty()) {
      calls.peek().lastText = literal;
    }
    at = end + 1;
  }

  /** Anything but a reference: whatever stands in this argument does not stand alone. */
  private void other(String written) {
    filled();
    if (aloneInArgument != null) {
      aloneInArgument.alone = false;
    }
    text.append(written);
    if (!calls.isEmpty()) {
      calls.peek().lastText = "";
    }
  }

  private void filled() {
    if (!calls.isEmpty()) {
      Call call = calls.peek();
      call.lastFilled = call.separators;
    }
  }

  private void mention(Target target, String name) {
    Call call = calls.peek();
    int argument = call == null ? 0 : call.separators;
    boolean first = call == null || call.lastFilled < call.separators;
    boolean inCall = calls.stream().anyMatch(c -> c.function != null);
    Mention mention = new Mention(target, name, call, argument, inCall);
    mention.alone = first;
    filled();
    if (call != null) {
      call.lastText = "";
    }
    flush();
    pieces.add(new Piece(null, mention, null));
    aloneInArgument = mention;
  }

  private void flush() {
    if (text.length() > 0) {
      pieces.add(new Piece(text.toString(), null, null));
      text.setLength(0);
    }
  }

  private void word() throws PlanMistake {
    int end = at;
    while (end < source.length()
        && (Character.isLetterOrDigit(source.charAt(end))
            || "_.".indexOf(source.charAt(end)) >= 0)) {
      end++;
    }
    String name = source.substring(at, end);
    int next = end;
    while (next < source.length() && source.charAt(next) == ' ') {
      next++;
    }
    boolean isCall = next < source.length() && source.charAt(next) == '(';
    if (!isCall) {
      other(name);
      at = end;
      return;
    }
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
    boolean first = calls.isEmpty() && pieces.isEmpty() && text.toString().isBlank();
    other((function == null ? name : function.name()) + "(");
    outermost = first ? function : calls.isEmpty() ? null : outermost;
    calls.push(new Call(function));
    aloneInArgument = null;
    at = next + 1;
  }

  private static boolean isSpreadsheetFunction(String name) {
    String upper = name.toUpperCase(java.util.Locale.ROOT);
    return FunctionMetadataRegistry.getFunctionByName(upper) != null
        || AnalysisToolPak.instance.findFunction(upper) != null;
  }

  private void close() throws PlanMistake {
    if (calls.isEmpty()) {
      throw mistake("a bracket is closed that was not opened.");
    }
    Call call = calls.pop();
    text.append(')');
    at++;
    aloneInArgument = null;
    if (calls.isEmpty() && at < source.length() && !source.substring(at).isBlank()) {
      outermost = null;
    }
    FunctionSpec function = call.function;
    if (function == null) {
      return;
    }
    int given = call.given();
    int most = function.isVariadic() ? Integer.MAX_VALUE : function.args().size();
    if (given < function.required() || given > most) {
      throw mistake(
          function.name() + " has " + given + " arguments; it takes " + function.signature() + ".");
    }
  }

  private void separator(char c) throws PlanMistake {
    if (separator != 0 && separator != c) {
      throw mistake("arguments are separated by ; and by , in one formula; use one of them.");
    }
    if (calls.isEmpty()) {
      throw mistake("a " + c + " stands outside of a call.");
    }
    separator = c;
    text.append(',');
    calls.peek().separators++;
    aloneInArgument = null;
    at++;
  }
}
