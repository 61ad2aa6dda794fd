package meadcell.catalogue;

import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import java.util.stream.Collectors;

/** One function as declared: its texts, its arguments, and the one way to call it. */
public final class FunctionSpec {
  /** The last optional argument of every function that depends on the system of units. */
  public static final String UNITS = "units";

  private final String family;
  private final String member;
  private final CellarFunction declaration;
  private final List<ArgSpec> args;
  private final ResultSpec result;
  private final boolean takesUnits;
  private final Columns columns;
  private final int required;
  private final Signature signature;

  private FunctionSpec(String family, Method method) {
    this.family = family;
    this.member = method.getName();
    this.declaration = method.getAnnotation(CellarFunction.class);
    this.signature = Signature.of(name(), method);
    this.args = signature.args();
    this.result = ResultSpec.of(method, declaration.gives(), name());
    if (args.stream().anyMatch(arg -> arg.name().equals(UNITS))) {
      throw new IllegalStateException(name() + ": an argument has the name " + UNITS);
    }
    this.takesUnits = result.isDimensional() || args.stream().anyMatch(ArgSpec::isDimensional);
    this.columns = new Columns(args);
    this.required = (int) args.stream().filter(arg -> !arg.isOptional()).count();
    for (int i = 0; i < required; i++) {
      if (args.get(i).isOptional()) {
        throw new IllegalStateException(name() + ": an optional argument before a required one");
      }
    }
  }

  static FunctionSpec of(String family, Method method) {
    return new FunctionSpec(family, method);
  }

  /** {@return {@code BARREL.VOLUME}} */
  public String name() {
    return name(family, member);
  }

  static String name(String family, String member) {
    return family + "." + member.toUpperCase(Locale.ROOT);
  }

  /** {@return the family, {@code BARREL}} */
  public String family() {
    return family;
  }

  /** {@return the method's name, {@code volume}} */
  public String member() {
    return member;
  }

  /** {@return the annotation that declares it} */
  public CellarFunction declaration() {
    return declaration;
  }

  /** {@return the declared arguments, without {@code units}} */
  public List<ArgSpec> args() {
    return args;
  }

  /** {@return what it gives} */
  public ResultSpec result() {
    return result;
  }

  /** {@return whether a last optional {@code units} is taken} */
  public boolean takesUnits() {
    return takesUnits;
  }

  /** {@return how many arguments must be given} */
  public int required() {
    return required;
  }

  /** {@return how many arguments may be given} */
  public int most() {
    return isVariadic() ? Integer.MAX_VALUE : args.size() + (takesUnits ? 1 : 0);
  }

  /** {@return whether the last argument takes whatever follows} */
  public boolean isVariadic() {
    return !args.isEmpty() && args.get(args.size() - 1).kind() == Kind.REST;
  }

  /** {@return {@code BARREL.VOLUME(head; bilge; length; [shape="ellipse"]; [units="metric"])}} */
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

  /** {@return the caution in brief, purpose and result, as a function wizard shows them} */
  public String description() {
    return description(Words.ENGLISH);
  }

  /**
   * {@return the same in another language}
   *
   * @param words the language
   */
  public String description(Words words) {
    String description =
        summary(words) + " " + words.say(Phrase.GIVES, "result", result.description(words));
    String caution = firstSentence(caution(words));
    return caution.isEmpty()
        ? description
        : words.say(Phrase.BEWARE, "text", caution) + " " + description;
  }

  /** The rest stands on the function's page; a wizard cuts what is long. */
  static String firstSentence(String text) {
    int end = text.indexOf(". ");
    return end < 0 ? text : text.substring(0, end + 1);
  }

  /**
   * {@return purpose, one sentence}
   *
   * @param words the language
   */
  public String summary(Words words) {
    return part(words, "summary", declaration.summary());
  }

  /**
   * {@return the formula or model in words or symbols}
   *
   * @param words the language
   */
  public String formula(Words words) {
    return part(words, "formula", declaration.formula());
  }

  /**
   * {@return what the function rests on}
   *
   * @param words the language
   */
  public String source(Words words) {
    return part(words, "source", declaration.source());
  }

  /**
   * {@return what a careful user should know; may be empty}
   *
   * @param words the language
   */
  public String note(Words words) {
    return part(words, "note", declaration.note());
  }

  /**
   * {@return safety or legal caution; may be empty}
   *
   * @param words the language
   */
  public String caution(Words words) {
    return part(words, "caution", declaration.caution());
  }

  private String part(Words words, String part, String english) {
    return english.isEmpty() ? english : words.text(name() + "." + part, english);
  }

  /**
   * {@return what {@value #UNITS} takes}
   *
   * @param words the language
   */
  public static String unitsHelp(Words words) {
    return words.say(Phrase.UNITS);
  }

  /** Every text of the declaration with its key. */
  void texts(BiConsumer<String, String> each) {
    Map.of(
            "summary", declaration.summary(),
            "formula", declaration.formula(),
            "source", declaration.source(),
            "note", declaration.note(),
            "caution", declaration.caution())
        .forEach(
            (part, english) -> {
              if (!english.isEmpty()) {
                each.accept(name() + "." + part, english);
              }
            });
    args.forEach(arg -> arg.texts(each));
    result.texts(each);
  }

  /**
   * Calls the function with what cells hold: {@code Double}, {@code String}, {@code Object[][]} for
   * a range (blank cells as null or empty text), null for an argument left out.
   *
   * @param given what the cells hold, an argument each
   * @return {@code Double}, {@code String}, or rows of them
   * @throws Refusal when the input is not answered
   */
  public Object call(Object... given) {
    return callIn(Words.ENGLISH, given);
  }

  /**
   * {@return the same; sentences among the results are in a language}
   *
   * @param words the language
   * @param given what the cells hold, an argument each
   */
  public Object callIn(Words words, Object... given) {
    return answered(
        given,
        (answer, system) -> {
          Object cells = result.toCells(answer, system, words);
          return result.shape() == ResultSpec.Shape.COLUMN && !columns.isEmpty()
              ? columns.beside(given, (Object[][]) cells)
              : cells;
        });
  }

  /**
   * {@return why the call is refused, or what its verdict rests on; nothing for other answers}
   *
   * @param given what the cells hold, an argument each
   */
  public Optional<Said> why(Object... given) {
    try {
      return answered(
          given,
          (answer, system) ->
              answer instanceof Explained explained
                  ? Optional.of(words -> explained.because().text(system, words))
                  : Optional.empty());
    } catch (Refusal refusal) {
      return Optional.of(refusal);
    }
  }

  /**
   * How a call ends.
   *
   * @param system the units it is asked in
   * @param isNamed whether an argument names them
   * @param before how many arguments stand before that
   */
  record Units(UnitSystem system, boolean isNamed, int before) {}

  /**
   * {@return the units that a call is asked in}
   *
   * @param given what the cells hold, an argument each
   */
  public UnitSystem system(Object... given) {
    return units(given).system();
  }

  Units units(Object... given) {
    int count = given.length;
    while (count > 0 && given[count - 1] == null) {
      count--;
    }
    if (!takesUnits || count == 0) {
      return new Units(UnitSystem.METRIC, false, count);
    }
    Object last = CellReader.unwrapped(given[count - 1]);
    Optional<UnitSystem> named = UnitSystem.named(last);
    boolean isBlank = count == most() && CellReader.isNothing(last);
    boolean isNamed = named.isPresent() || isBlank;
    return new Units(named.orElse(UnitSystem.METRIC), isNamed, isNamed ? count - 1 : count);
  }

  private <T> T answered(Object[] given, BiFunction<Object, UnitSystem, T> use) {
    Units units = units(given);
    UnitSystem system = units.system();
    int count = units.before();
    try {
      if (!units.isNamed() && takesUnits && count == most()) {
        throw new Refusal(General.UNITS);
      }
      if (count < required || count > most()) {
        throw new Refusal(count == 1 ? General.GIVEN_ONE : General.GIVEN_SEVERAL)
            .with("function", name())
            .with("count", count)
            .with("use", signature());
      }
      Object[] values = isVariadic() ? variadic(given, count, system) : read(given, count, system);
      return use.apply(invoke(values, given), system);
    } catch (Refusal refusal) {
      throw refusal.in(system);
    } catch (Error e) {
      throw e;
    } catch (Throwable e) {
      throw new IllegalStateException(name() + " failed", e);
    }
  }

  private Object invoke(Object[] values, Object[] given) throws Throwable {
    try {
      return signature.call(values);
    } catch (Refusal refusal) {
      throw refusal.placed((argument, place) -> inRange(argument, place, given));
    }
  }

  private Place inRange(String argument, Place place, Object[] given) {
    for (int i = 0; i < args.size(); i++) {
      if (args.get(i).name().equals(argument)) {
        return switch (args.get(i).kind()) {
          case NUMBERS, TEXTS -> columns.place(given, i, place.row());
          case NUMBER_TABLE -> CellReader.place(given[i], place);
          default -> place; // the rows of other tables know theirs
        };
      }
    }
    return place;
  }

  private Object[] read(Object[] given, int count, UnitSystem system) {
    Object[] values = new Object[args.size()];
    for (int i = 0; i < values.length; i++) {
      ArgSpec arg = args.get(i);
      if (i >= count || arg.isLeftOutBy(given[i], system)) {
        if (!arg.isOptional()) {
          throw new Refusal(General.MISSING).about(arg.name());
        }
        values[i] = arg.whenLeftOut(system);
      } else if (!arg.kind().isColumn()) {
        values[i] = arg.reader.argument(given[i], system);
      }
    }
    if (!columns.isEmpty()) {
      columns.read(given, values, system);
    }
    return values;
  }

  private Object[] variadic(Object[] given, int count, UnitSystem system) {
    int fixed = args.size() - 1;
    Object[] values = new Object[fixed + 1];
    for (int i = 0; i < fixed; i++) {
      if (given[i] == null) {
        throw new Refusal(General.MISSING).about(args.get(i).name());
      }
      values[i] = args.get(i).reader.argument(given[i], system);
    }
    values[fixed] = Arrays.copyOfRange(given, fixed, count);
    return values;
  }
}
