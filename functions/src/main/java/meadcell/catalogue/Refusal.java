package meadcell.catalogue;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;

/**
 * Input that a function does not answer, as data: a {@link Reason} and the values it names. Each
 * host maps the {@link Kind} to its own error; the sentence, in the caller's units and any of the
 * languages, is made only when it is asked for, and is what {@code CELLAR.WHY} gives.
 *
 * <pre>{@code
 * throw new Refusal(GROSS_NOT_ABOVE_EMPTY)
 *     .with("gross", grossKg, Quantity.MASS)
 *     .with("wetEmpty", wetEmptyKg, Quantity.MASS);
 * }</pre>
 */
public final class Refusal extends RuntimeException implements Said {
  private static final long serialVersionUID = 2;

  /** The causes, told apart because hosts show different errors for them. */
  public enum Kind {
    /** A value outside the stated range. */
    OUT_OF_RANGE,
    /** A text where a number is due, several cells where one is due, and the like. */
    WRONG_KIND,
    /** Values that are each in range but cannot be true together. */
    INCONSISTENT,
    /** Nothing satisfies what was asked for. */
    NO_SOLUTION,
    /** The search for the answer did not settle. */
    NOT_CONVERGED,
    /** Too few or too many arguments. */
    WRONG_COUNT,
    /** A function, ingredient or other name that is not known. */
    UNKNOWN_NAME
  }

  private final transient Reason reason;
  private final transient Statement statement;
  private transient String argument = "";
  private transient Place place;
  private transient Slip slip;
  private transient String suggestion;
  private transient UnitSystem system;

  /**
   * A refusal for a reason; what it names is added by {@code with}.
   *
   * @param reason why it is refused
   */
  public Refusal(Reason reason) {
    super(null, null, false, false); // no stack trace: refusals are answers, and frequent
    this.reason = reason;
    this.statement = Statement.of(reason);
  }

  /**
   * {@return an unknown name, given at the place {@code given}, with the nearest known one if one
   * is}
   *
   * @param reason why it is refused
   * @param given the name that was given
   * @param known the names that there are
   */
  public static Refusal unknownName(Reason reason, String given, Iterable<String> known) {
    Refusal refusal = new Refusal(reason).with("given", given);
    refusal.suggestion = Nearest.to(given, known).orElse(null);
    return refusal;
  }

  /**
   * Adds a number in its metric unit.
   *
   * @param name the place in the template
   * @param metric the number, in its metric unit
   * @param quantity what it measures
   * @return itself
   */
  public Refusal with(String name, double metric, Quantity quantity) {
    return with(name, metric, quantity, Numbers.DIGITS);
  }

  /**
   * Adds a number in its metric unit, to be said with so many significant digits.
   *
   * @param name the place in the template
   * @param metric the number, in its metric unit
   * @param quantity what it measures
   * @param digits how many significant digits
   * @return itself
   */
  public Refusal with(String name, double metric, Quantity quantity, int digits) {
    statement.with(name, metric, quantity, digits);
    return this;
  }

  /**
   * Adds a text, a count, an enum's constant, a message, a statement, or a list of them.
   *
   * @param name the place in the template
   * @param value what stands there
   * @return itself
   */
  public Refusal with(String name, Object value) {
    statement.with(name, value);
    return this;
  }

  /**
   * Adds the numbers that are allowed, in their metric unit.
   *
   * @param name the place in the template
   * @param range the numbers that are allowed
   * @param quantity what it measures
   * @return itself
   */
  public Refusal with(String name, Range range, Quantity quantity) {
    statement.with(name, range, quantity);
    return this;
  }

  /**
   * Adds the argument that the reason is about, at the place {@code argument}.
   *
   * @param argument the name of the argument
   * @return itself
   */
  public Refusal about(String argument) {
    return about(argument, null);
  }

  /**
   * Adds the argument that the reason is about and where in it. A function counts the rows of a
   * column or a table of numbers as it gets them; the catalogue makes that the row of the range,
   * where blank rows count.
   *
   * @param argument the name of the argument
   * @param place where in it
   * @return itself
   */
  public Refusal about(String argument, Place place) {
    this.argument = argument;
    this.place = place;
    return this;
  }

  Refusal withSlip(Optional<Slip> slip) {
    this.slip = slip.orElse(null);
    return this;
  }

  Refusal withSuggestion(Optional<String> name) {
    this.suggestion = name.orElse(null);
    return this;
  }

  /** Makes a place among what the function got one of the range, unless an inner call has. */
  Refusal placed(BiFunction<String, Place, Place> inRange) {
    if (system == null && place != null) {
      place = inRange.apply(argument, place);
    }
    return this;
  }

  /** Sets the caller's units, unless an inner call has set them. */
  Refusal in(UnitSystem system) {
    if (this.system == null) {
      this.system = system;
    }
    return this;
  }

  /** {@return why it is refused} */
  public Reason reason() {
    return reason;
  }

  /** {@return the kind of the reason} */
  public Kind kind() {
    return reason.kind();
  }

  /** {@return the values that the reason names} */
  public List<Statement.Parameter> parameters() {
    return statement.parameters();
  }

  /**
   * {@return what stands at a place of the reason's template, in the caller's units}
   *
   * @param name the place in the template
   * @param words the language
   */
  public Optional<String> text(String name, Words words) {
    return statement.text(name, system(), words);
  }

  /** {@return the argument that the reason is about; empty where it is about several} */
  public String argument() {
    return argument;
  }

  /** {@return where in the argument's range} */
  public Optional<Place> place() {
    return Optional.ofNullable(place);
  }

  /** {@return what the caller most likely did} */
  public Optional<Slip> slip() {
    return Optional.ofNullable(slip);
  }

  /** {@return the name that the caller most likely meant} */
  public Optional<String> suggestion() {
    return Optional.ofNullable(suggestion);
  }

  /** {@return the units of the call that was refused} */
  public UnitSystem system() {
    return system == null ? UnitSystem.METRIC : system;
  }

  /**
   * {@return the sentence in a language, in the caller's units, with the likely slip if there is
   * one}
   *
   * @param words the language
   */
  @Override
  public String sentence(Words words) {
    StringBuilder said = new StringBuilder(withoutHints(words));
    if (slip != null) {
      said.append(' ')
          .append(words.say(slip.what(), "meant", words.number(slip.meant(), Numbers.DIGITS)));
    }
    if (suggestion != null) {
      said.append(' ').append(words.say(Phrase.DID_YOU_MEAN, "suggestion", suggestion));
    }
    return said.toString();
  }

  private String withoutHints(Words words) {
    if (argument.isEmpty()) {
      return statement.text(system(), words);
    }
    return Statement.of(reason)
        .withAll(statement)
        .with("argument", place == null ? argument : place.of(argument, words))
        .text(system(), words);
  }

  /** {@return the English sentence} */
  @Override
  public String getMessage() {
    return sentence(Words.ENGLISH);
  }
}
