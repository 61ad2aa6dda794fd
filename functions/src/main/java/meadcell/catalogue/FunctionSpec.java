package meadcell.catalogue;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/** One function as declared: its texts, its arguments, and the one way to call it. */
public final class FunctionSpec {
  /** The last optional argument of every function that depends on the system of units. */
  public static final String UNITS = "units";

  /** What {@value #UNITS} takes. */
  public static final String UNITS_HELP = "\"metric\" or \"US\", always last. If left out: metric.";

  private final String family;
  private final String member;
  private final CellarFunction declaration;
  private final List<ArgSpec> args;
  private final Class<?>[] types;
  private final ResultSpec result;
  private final boolean takesUnits;
  private final boolean hasColumns;
  private final int required;
  private final MethodHandle handle;

  private FunctionSpec(String family, Method method) {
    this.family = family;
    this.member = method.getName();
    this.declaration = method.getAnnotation(CellarFunction.class);
    List<ArgSpec> specs = new ArrayList<>();
    for (var parameter : method.getParameters()) {
      specs.add(ArgSpec.of(parameter));
    }
    this.args = List.copyOf(specs);
    this.types = method.getParameterTypes();
    this.result = ResultSpec.of(method, declaration.gives());
    this.takesUnits = result.isDimensional() || args.stream().anyMatch(ArgSpec::isDimensional);
    this.hasColumns = args.stream().anyMatch(arg -> arg.kind().isColumn());
    this.required = (int) args.stream().filter(arg -> !arg.isOptional()).count();
    for (int i = 0; i < required; i++) {
      if (args.get(i).isOptional()) {
        throw new IllegalStateException(name() + ": an optional argument before a required one");
      }
    }
    try {
      this.handle =
          MethodHandles.publicLookup()
              .unreflect(method)
              .asFixedArity()
              .asSpreader(Object[].class, types.length)
              .asType(java.lang.invoke.MethodType.methodType(Object.class, Object[].class));
    } catch (IllegalAccessException e) {
      throw new IllegalStateException(method + " must be public", e);
    }
  }

  static FunctionSpec of(String family, Method method) {
    return new FunctionSpec(family, method);
  }

  /** {@code BARREL.VOLUME}. */
  public String name() {
    return name(family, member);
  }

  static String name(String family, String member) {
    return family + "." + member.toUpperCase(Locale.ROOT);
  }

  /** The family, {@code BARREL}. */
  public String family() {
    return family;
  }

  /** The method's name, {@code volume}. */
  public String member() {
    return member;
  }

  public CellarFunction declaration() {
    return declaration;
  }

  /** The declared arguments, without {@code units}. */
  public List<ArgSpec> args() {
    return args;
  }

  public ResultSpec result() {
    return result;
  }

  /** Whether a last optional {@code units} is taken. */
  public boolean takesUnits() {
    return takesUnits;
  }

  /** How many arguments must be given. */
  public int required() {
    return required;
  }

  /** How many arguments may be given. */
  public int most() {
    return isVariadic() ? Integer.MAX_VALUE : args.size() + (takesUnits ? 1 : 0);
  }

  /** Whether the last argument takes whatever follows. */
  public boolean isVariadic() {
    return !args.isEmpty() && args.get(args.size() - 1).kind() == Kind.REST;
  }

  /** {@code BARREL.VOLUME(head; bilge; length; [shape="ellipse"]; [units="metric"])}. */
  public String signature() {
    List<String> shown = new ArrayList<>();
    for (ArgSpec arg : args) {
      String value = arg.defaultText(UnitSystem.METRIC);
      boolean quoted = arg.kind() == Kind.CHOICE || arg.kind() == Kind.TEXT;
      String withDefault =
          value.isEmpty() ? arg.name() : arg.name() + "=" + (quoted ? '"' + value + '"' : value);
      if (arg.kind() == Kind.REST) {
        shown.add(arg.name() + "…");
      } else {
        shown.add(arg.isOptional() ? "[" + withDefault + "]" : arg.name());
      }
    }
    if (takesUnits) {
      shown.add("[" + UNITS + "=\"metric\"]");
    }
    return name() + shown.stream().collect(Collectors.joining("; ", "(", ")"));
  }

  /** Purpose and result in one or two sentences, as a function wizard shows them. */
  public String description() {
    return description(UnaryOperator.identity());
  }

  /** The same in another language, given what turns our phrases into it. */
  public String description(UnaryOperator<String> words) {
    String caution = declaration.caution();
    return words.apply(declaration.summary())
        + " "
        + words.apply("Gives %s.").formatted(result.description(words))
        + (caution.isEmpty()
            ? ""
            : " " + words.apply("Caution: %s").formatted(words.apply(caution)));
  }

  /**
   * Calls the function with what cells hold: {@code Double}, {@code String}, {@code Object[][]} for
   * a range (blank cells as null or empty text), null for an argument left out.
   *
   * @return {@code Double}, {@code String}, or rows of them
   * @throws Refusal when the input is not answered
   */
  public Object call(Object... given) {
    int count = given.length;
    while (count > 0 && given[count - 1] == null) {
      count--;
    }
    UnitSystem system = UnitSystem.METRIC;
    if (takesUnits && count > 0) {
      Optional<UnitSystem> named = UnitSystem.named(unwrapped(given[count - 1]));
      if (named.isPresent()) {
        system = named.get();
        count--;
      } else if (count == most()) {
        throw Refusal.outOfRange("units must be \"metric\" or \"US\", and the last argument.");
      }
    }
    if (count < required || count > most()) {
      throw wrongCount(count);
    }
    Object[] values = isVariadic() ? variadic(given, count) : read(given, count, system);
    Object answer;
    try {
      answer = handle.invokeExact(values);
    } catch (Refusal | Error e) {
      throw e;
    } catch (Throwable e) {
      throw new IllegalStateException(name() + " failed", e);
    }
    return result.toCells(answer, system);
  }

  private static Object unwrapped(Object raw) {
    return raw instanceof Object[][] cells && cells.length == 1 && cells[0].length == 1
        ? cells[0][0]
        : raw;
  }

  private Refusal wrongCount(int count) {
    return new Refusal(
        Refusal.Kind.WRONG_COUNT,
        name()
            + " was given "
            + count
            + (count == 1 ? " argument" : " arguments")
            + "; it takes "
            + signature()
            + ".");
  }

  private Object[] read(Object[] given, int count, UnitSystem system) {
    Object[] values = new Object[args.size()];
    for (int i = 0; i < values.length; i++) {
      ArgSpec arg = args.get(i);
      if (i >= count || given[i] == null) {
        if (!arg.isOptional()) {
          throw Refusal.wrongKind(arg.name() + " is missing.");
        }
        values[i] = arg.whenLeftOut(types[i], system);
      } else if (!arg.kind().isColumn()) {
        values[i] = arg.read(given[i], types[i], system);
      }
    }
    if (hasColumns) {
      readColumns(given, values, system);
    }
    return values;
  }

  /** Columns go row by row together: rows blank in all are skipped, blank in some is refused. */
  private void readColumns(Object[] given, Object[] values, UnitSystem system) {
    List<Integer> positions = new ArrayList<>();
    List<Object[]> columns = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      if (args.get(i).kind().isColumn()) {
        positions.add(i);
        columns.add(args.get(i).column(given[i]));
      }
    }
    int length = columns.get(0).length;
    for (int c = 1; c < columns.size(); c++) {
      if (columns.get(c).length != length) {
        throw Refusal.inconsistent(
            args.get(positions.get(0)).name()
                + " has "
                + length
                + " cells, "
                + args.get(positions.get(c)).name()
                + " has "
                + columns.get(c).length
                + "; they must go row by row together.");
      }
    }
    int[] rows = new int[length];
    int kept = 0;
    for (int row = 0; row < length; row++) {
      int blanks = 0;
      int blankColumn = 0;
      for (int c = 0; c < columns.size(); c++) {
        if (columns.get(c)[row] == null) {
          blanks++;
          blankColumn = c;
        }
      }
      if (blanks == 0) {
        rows[kept++] = row + 1;
      } else if (blanks < columns.size()) {
        throw Refusal.wrongKind(
            args.get(positions.get(blankColumn)).name() + " is blank in row " + (row + 1) + ".");
      }
    }
    if (kept == 0) {
      throw Refusal.wrongKind(args.get(positions.get(0)).name() + " has only blank cells.");
    }
    for (int c = 0; c < columns.size(); c++) {
      Object[] full = new Object[kept];
      for (int k = 0; k < kept; k++) {
        full[k] = columns.get(c)[rows[k] - 1];
      }
      values[positions.get(c)] = args.get(positions.get(c)).values(full, rows, system);
    }
  }

  private Object[] variadic(Object[] given, int count) {
    int fixed = args.size() - 1;
    Object[] values = new Object[fixed + 1];
    for (int i = 0; i < fixed; i++) {
      if (given[i] == null) {
        throw Refusal.wrongKind(args.get(i).name() + " is missing.");
      }
      values[i] = args.get(i).read(given[i], types[i], UnitSystem.METRIC);
    }
    values[fixed] = java.util.Arrays.copyOfRange(given, fixed, count);
    return values;
  }
}
