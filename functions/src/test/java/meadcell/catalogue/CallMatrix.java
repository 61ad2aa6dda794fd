package meadcell.catalogue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Calls, good and bad, of every function of a catalogue, with what every host must answer. Each
 * starts from the function's declared example and changes one argument: to and just beyond each
 * limit, text, blank, error, left out, several cells.
 */
public final class CallMatrix {
  /** What stands at one argument's place in a formula. */
  public sealed interface Input permits Given, BlankCell, ErrorCell, OwnRow {}

  /** Double, String or Object[][], as a literal or in cells; null: left out. */
  public record Given(Object value) implements Input {}

  /** A reference to one blank cell. */
  public record BlankCell() implements Input {}

  /** A reference to one cell that holds {@code #N/A}. */
  public record ErrorCell() implements Input {}

  /**
   * A reference to a column of three cells whose middle one stands in the formula's own row and
   * holds the value; the other two hold the text {@code x}.
   */
  public record OwnRow(Object value) implements Input {}

  /** What a host must show. */
  public sealed interface Outcome permits Answer, Refused, HostError {}

  /** This very result: Double, String, or rows of them. */
  public record Answer(Object value) implements Outcome {}

  /** The host's error for this refusal. */
  public record Refused(Refusal refusal) implements Outcome {}

  /** Some error of the host's own. */
  public record HostError() implements Outcome {}

  /** One call. */
  public record Call(String label, FunctionSpec function, List<Input> inputs, Outcome outcome) {}

  /** Relative distance of a value just beyond a limit: survives decimal notation everywhere. */
  private static final double BEYOND = 1e-9;

  private final FunctionSpec function;
  private final UnitSystem system;
  private final List<Object> example;
  private final List<Call> calls = new ArrayList<>();

  private CallMatrix(FunctionSpec function) {
    this.function = function;
    List<Object> given =
        new ArrayList<>(
            Arrays.asList(LiteralCall.parse(function.declaration().example()).arguments()));
    Optional<UnitSystem> named =
        function.takesUnits() && !given.isEmpty()
            ? UnitSystem.named(given.get(given.size() - 1))
            : Optional.empty();
    if (named.isPresent()) {
      given.remove(given.size() - 1);
    }
    while (given.size() < function.args().size() && !function.isVariadic()) {
      given.add(null);
    }
    this.system = named.orElse(UnitSystem.METRIC);
    this.example = given;
  }

  /** All calls of a catalogue's functions. */
  public static List<Call> of(Catalogue catalogue) {
    return catalogue.functions().stream()
        .flatMap(function -> new CallMatrix(function).calls().stream())
        .toList();
  }

  private List<Call> calls() {
    add("as declared", example.stream().map(value -> (Input) new Given(value)).toList());
    for (int i = 0; i < function.args().size(); i++) {
      ArgSpec arg = function.args().get(i);
      switch (arg.kind()) {
        case NUMBER -> numbers(i, arg);
        case TEXT, CHOICE -> texts(i, arg);
        case NUMBERS, TEXTS, NUMBER_TABLE, TABLE -> ranges(i, arg);
        case REST -> {} // whatever the called function takes
      }
      if (arg.kind() != Kind.REST) {
        addHostError(i, "an error", new ErrorCell());
      }
      if (arg.isOptional()) {
        add(i, "left out", new Given(null));
      } else {
        addHostError(i, "missing", new Given(null));
      }
    }
    if (function.takesUnits() && system == UnitSystem.METRIC) {
      List<Input> blank = inputs();
      blank.add(new BlankCell());
      calls.add(new Call(label("units: a blank cell"), function, blank, outcome(inputs())));
    }
    if (!function.isVariadic()) {
      List<Input> tooMany = inputs();
      tooMany.addAll(List.of(new Given(1.0), new Given(1.0)));
      calls.add(new Call(label("too many arguments"), function, tooMany, new HostError()));
    }
    return calls;
  }

  private void numbers(int place, ArgSpec arg) {
    Range declared = arg.range();
    Map<String, Double> values = new LinkedHashMap<>();
    values.put("lowest", declared.from());
    values.put("below lowest", below(declared.from()));
    values.put("highest", declared.to());
    values.put("above highest", above(declared.to()));
    values.put("not above limit", declared.above());
    values.put("above limit", above(declared.above()));
    values.put("not below limit", declared.below());
    values.put("below limit", below(declared.below()));
    values.forEach(
        (what, metric) -> {
          if (Double.isFinite(metric)) {
            add(place, what, new Given(arg.quantity().fromMetric(metric, system)));
          }
        });
    add(place, "zero", new Given(0.0));
    add(place, "a text", new Given("x"));
    add(place, "a decimal comma", new Given("1,5"));
    add(place, "an empty text", new Given(""));
    scalars(place, arg, 0.0);
  }

  private void texts(int place, ArgSpec arg) {
    add(place, "an unknown word", new Given("xyzzy"));
    add(place, "an empty text", new Given(""));
    for (String word : arg.choices()) {
      add(place, word, new Given(word));
    }
    scalars(place, arg, arg.isOptional() ? (Object) 0.0 : "");
  }

  /** What only references show: a blank, the own row's cell of a column, several cells. */
  private void scalars(int place, ArgSpec arg, Object zero) {
    Object blank = arg.isOptional() && arg.isLeftOutBy(zero, system) ? null : zero;
    calls.add(
        new Call(
            label(arg.name() + ": a blank cell"),
            function,
            with(place, new BlankCell()),
            outcome(with(place, new Given(blank)))));
    Object value = example.get(place);
    if (arg.isOptional()) {
      Object[][] cells = {{"x"}, {"x"}, {"x"}};
      calls.add(
          new Call(
              label(arg.name() + ": a column"),
              function,
              with(place, new OwnRow("x")),
              outcome(with(place, new Given(cells)))));
    } else {
      calls.add(
          new Call(
              label(arg.name() + ": a column"),
              function,
              with(place, new OwnRow(value)),
              outcome(inputs())));
    }
  }

  private void ranges(int place, ArgSpec arg) {
    add(place, "one text", new Given(new Object[][] {{"xyzzy"}}));
    add(place, "one number", new Given(new Object[][] {{1.0}}));
    add(place, "a blank cell among others", new Given(new Object[][] {{1.0}, {""}, {2.0}}));
    add(place, "a block", new Given(new Object[][] {{1.0, 2.0}, {3.0, 4.0}}));
    add(place, "a blank", new Given(new Object[][] {{""}, {""}}));
    if (arg.kind() == Kind.NUMBERS || arg.kind() == Kind.NUMBER_TABLE) {
      Range declared = arg.range();
      for (double beyond : new double[] {below(declared.from()), above(declared.to())}) {
        if (Double.isFinite(beyond)) {
          Object[][] cells = copy(example.get(place));
          cells[0][0] = arg.quantity().fromMetric(beyond, system);
          add(place, "one value beyond a limit", new Given(cells));
        }
      }
    }
  }

  private static Object[][] copy(Object given) {
    return given instanceof Object[][] cells
        ? Arrays.stream(cells).map(Object[]::clone).toArray(Object[][]::new)
        : new Object[][] {{given}};
  }

  private static double below(double limit) {
    return limit - BEYOND * Math.max(1, Math.abs(limit));
  }

  private static double above(double limit) {
    return limit + BEYOND * Math.max(1, Math.abs(limit));
  }

  private List<Input> inputs() {
    List<Input> inputs = new ArrayList<>();
    example.forEach(value -> inputs.add(new Given(value)));
    if (system != UnitSystem.METRIC) {
      inputs.add(new Given(system.word()));
    }
    return inputs;
  }

  private List<Input> with(int place, Input input) {
    List<Input> inputs = inputs();
    inputs.set(place, input);
    return inputs;
  }

  private void add(int place, String what, Input input) {
    add(function.args().get(place).name() + ": " + what, with(place, input));
  }

  private void add(String what, List<Input> inputs) {
    calls.add(new Call(label(what), function, inputs, outcome(inputs)));
  }

  private void addHostError(int place, String what, Input input) {
    String label = label(function.args().get(place).name() + ": " + what);
    calls.add(new Call(label, function, with(place, input), new HostError()));
  }

  private String label(String what) {
    return function.name() + ", " + what;
  }

  private Outcome outcome(List<Input> inputs) {
    Object[] values = inputs.stream().map(input -> ((Given) input).value()).toArray();
    try {
      return new Answer(function.call(values));
    } catch (Refusal refusal) {
      return new Refused(refusal);
    }
  }
}
