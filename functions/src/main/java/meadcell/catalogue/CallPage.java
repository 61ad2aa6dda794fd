package meadcell.catalogue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The page of one call: what it was given and from where, what it gives or why it does not, and
 * what it rests on. A host says which values it found and where; all else is the same in every
 * host.
 */
public final class CallPage {
  /** How many rows of a range or table are shown. */
  private static final int ROWS = 8;

  private final FunctionSpec function;
  private final List<Given> given;
  private final Words words;
  private final Object[] values;
  private final FunctionSpec.Units units;

  /**
   * What a host found at one argument's place.
   *
   * @param value what {@link FunctionSpec#call} takes; null where it is left out
   * @param from the cell it came from, or the expression; empty for a constant
   * @param error the host's own error that stands there; empty where there is none
   */
  public record Given(Object value, String from, String error) {
    /**
     * {@return a constant}
     *
     * @param value what stands in the call
     */
    public static Given constant(Object value) {
      return new Given(value, "", "");
    }
  }

  /**
   * The cell of a result that is asked about, counted from 0.
   *
   * @param row its row in the result
   * @param column its column in the result
   */
  public record Chosen(int row, int column) {
    /** The first cell, which a plain formula shows. */
    public static final Chosen FIRST = new Chosen(0, 0);
  }

  private CallPage(FunctionSpec function, List<Given> given, Words words) {
    this.function = function;
    this.given = given;
    this.words = words;
    this.values = given.stream().map(Given::value).toArray();
    this.units = function.units(values);
  }

  /**
   * {@return the page}
   *
   * @param function what is called
   * @param given what was found at each argument's place
   * @param chosen which cell of the result is asked about
   * @param words the language
   */
  public static ReferencePage of(
      FunctionSpec function, List<Given> given, Chosen chosen, Words words) {
    return new CallPage(function, given, words).page(chosen);
  }

  private ReferencePage page(Chosen chosen) {
    List<ReferencePage.Section> sections = new ArrayList<>();
    add(sections, Phrase.PURPOSE, List.of(function.summary(words)));
    add(sections, Phrase.ARGUMENTS, arguments());
    List<String> errors = errors();
    if (!errors.isEmpty()) {
      add(sections, Phrase.NOT_COMPUTED, errors);
    } else {
      try {
        Object result = function.callIn(words, values.clone());
        add(
            sections,
            Phrase.RESULT,
            function.result().lines(result, units.system(), chosen, words));
        add(sections, Phrase.BECAUSE, because().stream().toList());
      } catch (Refusal refusal) {
        add(sections, Phrase.REFUSED, List.of(refusal.sentence(words)));
      }
    }
    add(sections, Phrase.CAUTION, function.caution(words).lines().toList());
    add(sections, Phrase.SOURCE, function.source(words).lines().toList());
    add(sections, Phrase.VERSION, version());
    return new ReferencePage(function.name(), sections);
  }

  /** Which version computes this, and since which its numbers are what they are. */
  private List<String> version() {
    List<String> lines = new ArrayList<>();
    lines.add("Meadcell " + Release.version());
    ChangedNumber.all().stream()
        .filter(change -> change.function().equals(function.name()))
        .map(ChangedNumber::version)
        .distinct()
        .forEach(
            since ->
                lines.add(
                    words.say(Phrase.OTHER_BEFORE, "function", function.name(), "version", since)));
    return lines;
  }

  private Optional<String> because() {
    return function.why(values.clone()).map(said -> said.sentence(words));
  }

  private void add(List<ReferencePage.Section> sections, Phrase heading, List<String> lines) {
    if (!lines.isEmpty()) {
      sections.add(new ReferencePage.Section(words.say(heading), lines));
    }
  }

  private List<String> arguments() {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < given.size(); i++) {
      lines.add(line(i, value(i), given.get(i).from()));
    }
    for (int i = units.before(); i < function.args().size(); i++) {
      if (i >= given.size() || i == units.before()) {
        ArgSpec arg = function.args().get(i);
        if (arg.kind() != Kind.REST) {
          lines.add(named(arg.name(), leftOut(arg), arg.help(words)));
        }
      }
    }
    return lines;
  }

  private String line(int place, String value, String from) {
    String shown =
        from.isEmpty() ? value : words.say(Phrase.VALUE_FROM, "value", value, "from", from);
    return named(name(place), shown, spec(place).map(arg -> arg.help(words)).orElse(""));
  }

  private String named(String name, String value, String help) {
    return help.isEmpty()
        ? words.say(Phrase.ARGUMENT, "name", name, "value", value)
        : words.say(Phrase.ARGUMENT_HELP, "name", name, "value", value, "help", help);
  }

  private Optional<ArgSpec> spec(int place) {
    return isUnits(place) || function.args().isEmpty()
        ? Optional.empty()
        : Optional.of(function.args().get(Math.min(place, function.args().size() - 1)));
  }

  private boolean isUnits(int place) {
    return function.takesUnits()
        && (place == units.before() && units.isNamed() || place >= function.args().size());
  }

  private String name(int place) {
    if (isUnits(place)) {
      return FunctionSpec.UNITS;
    }
    int last = function.args().size() - 1;
    String name = spec(place).map(ArgSpec::name).orElse("?");
    return function.isVariadic() && place >= last ? name + (place - last + 1) : name;
  }

  private String value(int place) {
    Given found = given.get(place);
    if (!found.error().isEmpty()) {
      return found.error();
    }
    Optional<ArgSpec> arg = spec(place);
    if (arg.isEmpty()) {
      return found.value() == null ? words.say(Phrase.NOTHING) : words.shown(found.value());
    }
    if (arg.get().isLeftOutBy(found.value(), units.system())) {
      return leftOut(arg.get());
    }
    return shown(found.value(), arg.get().quantity());
  }

  private String leftOut(ArgSpec arg) {
    String value = arg.isOptional() ? arg.defaultText(units.system(), words) : "";
    String unit = words.unit(arg.quantity(), units.system());
    return value.isEmpty()
        ? words.say(Phrase.NOTHING)
        : words.say(Phrase.SO, "value", unit.isEmpty() ? value : value + " " + unit);
  }

  private String shown(Object value, Quantity quantity) {
    if (value instanceof Double number) {
      return words.measured(number, quantity, units.system());
    }
    if (value instanceof Object[][] rows) {
      String head = words.shown(Arrays.copyOf(rows, Math.min(rows.length, ROWS)));
      String unit = words.unit(quantity, units.system());
      return words.say(
          Phrase.CELLS,
          "rows",
          Integer.toString(rows.length),
          "columns",
          Integer.toString(rows[0].length),
          "values",
          head + (rows.length > ROWS ? " …" : "") + (unit.isEmpty() ? "" : " " + unit));
    }
    return value == null ? words.say(Phrase.NOTHING) : '"' + value.toString() + '"';
  }

  private List<String> errors() {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < given.size(); i++) {
      Given found = given.get(i);
      if (!found.error().isEmpty()) {
        lines.add(
            found.from().isEmpty()
                ? words.say(Phrase.ERROR, "argument", name(i), "error", found.error())
                : words.say(
                    Phrase.ERROR_IN,
                    "argument",
                    name(i),
                    "from",
                    found.from(),
                    "error",
                    found.error()));
      }
    }
    return lines;
  }
}
