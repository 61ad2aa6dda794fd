package meadcell.catalogue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** A message with the values that it names: text in no language yet, numbers in no unit yet. */
public final class Statement {

  /**
   * A value that a message names.
   *
   * @param name its place in the template
   * @param value a Double in the metric unit, an Integer, a String, an enum's constant, a {@link
   *     Range}, a {@link Message}, a {@link Statement}, or a list of them
   * @param quantity what a number or range measures
   * @param digits significant digits of a number in sentences
   */
  public record Parameter(String name, Object value, Quantity quantity, int digits) {}

  private final Message message;
  private final List<Parameter> parameters = new ArrayList<>(4);

  private Statement(Message message) {
    this.message = message;
  }

  /**
   * {@return a message, to which {@code with} adds the values it names}
   *
   * @param message what is said
   */
  public static Statement of(Message message) {
    return new Statement(message);
  }

  /**
   * Adds a number in its metric unit.
   *
   * @param name the place in the template
   * @param metric the number, in its metric unit
   * @param quantity what it measures
   * @return itself
   */
  public Statement with(String name, double metric, Quantity quantity) {
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
  public Statement with(String name, double metric, Quantity quantity, int digits) {
    parameters.add(new Parameter(name, metric, quantity, digits));
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
  public Statement with(String name, Range range, Quantity quantity) {
    parameters.add(new Parameter(name, range, quantity, Numbers.DIGITS));
    return this;
  }

  /**
   * Adds a text, a count, an enum's constant, a message, a statement, or a list of them.
   *
   * @param name the place in the template
   * @param value what stands there
   * @return itself
   */
  public Statement with(String name, Object value) {
    parameters.add(new Parameter(name, value, Quantity.NUMBER, Numbers.DIGITS));
    return this;
  }

  Statement withAll(Statement other) {
    parameters.addAll(other.parameters);
    return this;
  }

  /** {@return what is said} */
  public Message message() {
    return message;
  }

  /** {@return the values that the message names} */
  public List<Parameter> parameters() {
    return Collections.unmodifiableList(parameters);
  }

  /**
   * {@return the value at a place of the template}
   *
   * @param name the place in the template
   */
  public Optional<Parameter> parameter(String name) {
    return parameters.stream().filter(parameter -> parameter.name().equals(name)).findFirst();
  }

  /**
   * {@return the text in a language and in units}
   *
   * @param system the units of the caller
   * @param words the language
   */
  public String text(UnitSystem system, Words words) {
    return words.filled(message, name -> text(name, system, words).orElse(null));
  }

  /** The value at a place of the template, in a language and in units. */
  Optional<String> text(String name, UnitSystem system, Words words) {
    return parameter(name).map(found -> text(found, found.value(), system, words));
  }

  private static String text(Parameter parameter, Object value, UnitSystem system, Words words) {
    if (value instanceof Double metric) {
      Quantity quantity = parameter.quantity();
      return words.measured(
          quantity.fromMetric(metric, system), quantity, system, parameter.digits());
    }
    if (value instanceof Range range) {
      return range.text(parameter.quantity(), system, words);
    }
    if (value instanceof Statement statement) {
      return statement.text(system, words);
    }
    if (value instanceof Message message) {
      return words.say(message);
    }
    if (value instanceof Enum<?> constant) {
      return word(constant);
    }
    if (value instanceof List<?> several) {
      boolean clauses = several.stream().anyMatch(Statement.class::isInstance);
      return several.stream()
          .map(one -> text(parameter, one, system, words))
          .collect(
              Collectors.joining(
                  (clauses ? words.say(Phrase.BETWEEN_CLAUSES) : words.betweenCells()) + " "));
    }
    return String.valueOf(value);
  }

  /** {@return a word of a choice as users type it} */
  static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace("_", "");
  }
}
