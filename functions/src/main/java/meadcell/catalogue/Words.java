package meadcell.catalogue;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;

/**
 * A language: what the library says in it.
 *
 * <p>English stands in the declarations. Every other language has a folder {@code
 * /meadcell/words/<tag>/} with a file per family and one for what is common, UTF-8 properties keyed
 * by function and part: {@code BARREL.HEADSPACE.summary}, {@code BARREL.HEADSPACE.arg.drop}, {@code
 * BARREL.reason.SURFACE_IN_BUNG}. A value {@code @KEY} is the text of that other key. What a file
 * lacks stays English. A new language is one folder and its tag in {@link #TAGS}.
 */
public final class Words {
  private static final List<String> TAGS = List.of("en", "de");
  private static final Map<String, Words> ALL = new ConcurrentHashMap<>();

  /** The language of the declarations. */
  public static final Words ENGLISH = in("en");

  private final String tag;

  /** Files by their section, read when first asked for. */
  private final Map<String, Properties> files;

  private final String decimalSign;

  Words(String tag) {
    this.tag = tag;
    this.files = new ConcurrentHashMap<>();
    this.decimalSign = say(Phrase.DECIMAL_POINT);
  }

  private Words(Words language, String decimalSign) {
    this.tag = language.tag;
    this.files = language.files;
    this.decimalSign = decimalSign;
  }

  /**
   * {@return the language of a tag such as {@code de} or {@code de-AT}; English where we do not
   * have it}
   *
   * @param tag the tag
   */
  public static Words in(String tag) {
    String language = tag.toLowerCase(Locale.ROOT).split("[-_]", 2)[0];
    return ALL.computeIfAbsent(TAGS.contains(language) ? language : TAGS.get(0), Words::new);
  }

  /**
   * {@return the same language, its numbers as another place writes them}
   *
   * @param decimalSign what stands before the decimals
   */
  public Words withDecimalSign(String decimalSign) {
    return new Words(this, decimalSign);
  }

  /** {@return all languages, English first} */
  public static List<Words> all() {
    return TAGS.stream().map(Words::in).toList();
  }

  /** {@return the language's tag} */
  public String tag() {
    return tag;
  }

  /**
   * {@return the first part of a key for what a class declares: its package's last name, in
   * capitals}
   */
  static String section(Class<?> declaring) {
    String name = declaring.getPackageName();
    return name.substring(name.lastIndexOf('.') + 1).toUpperCase(Locale.ROOT);
  }

  /**
   * {@return the text of a key; the English one where the language has none}
   *
   * @param key the key
   * @param english the English text
   */
  public String text(String key, String english) {
    String found = translation(key);
    return found == null ? english : found;
  }

  /** The language's own text of a key, or null. */
  String translation(String key) {
    if (tag.equals(TAGS.get(0))) {
      return null;
    }
    String section = key.substring(0, key.indexOf('.'));
    String text = files.computeIfAbsent(section, this::read).getProperty(key);
    return text != null && text.startsWith("@") ? translation(text.substring(1)) : text;
  }

  /** All keys of a section that the language translates. */
  Iterable<String> keys(String section) {
    return files.computeIfAbsent(section, this::read).stringPropertyNames();
  }

  private Properties read(String section) {
    String path = "/meadcell/words/" + tag + "/" + section.toLowerCase(Locale.ROOT) + ".properties";
    Properties texts = new Properties();
    try (InputStream in = Words.class.getResourceAsStream(path)) {
      if (in != null) {
        texts.load(new InputStreamReader(in, StandardCharsets.UTF_8));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(path, e);
    }
    return texts;
  }

  /**
   * {@return a message with its values: names and texts by turns}
   *
   * @param message what is said
   * @param values the place of each value and, after it, its text
   */
  public String say(Message message, String... values) {
    return filled(
        message,
        name -> {
          for (int i = 0; i < values.length; i += 2) {
            if (values[i].equals(name)) {
              return values[i + 1];
            }
          }
          return null;
        });
  }

  /** Puts values in the places {@code {name}} of a message; a place without a value stays. */
  String filled(Message message, UnaryOperator<String> values) {
    String template = text(message.key(), message.english());
    StringBuilder out = new StringBuilder();
    int at = 0;
    while (true) {
      int open = template.indexOf('{', at);
      int close = open < 0 ? -1 : template.indexOf('}', open);
      if (close < 0) {
        return out.append(template, at, template.length()).toString();
      }
      String value = values.apply(template.substring(open + 1, close));
      assert value != null : message.key() + " says what it was not given: " + template;
      out.append(template, at, open)
          .append(value == null ? template.substring(open, close + 1) : value);
      at = close + 1;
    }
  }

  /**
   * {@return a number in plain digits, rounded to so many significant ones, with the decimal sign}
   *
   * @param value the number
   * @param significantDigits how many significant digits
   */
  public String number(double value, int significantDigits) {
    return Numbers.text(value, significantDigits).replace(".", decimalSign);
  }

  /** What stands between cells; never a decimal sign. */
  String betweenCells() {
    String sign = say(Phrase.BETWEEN_CELLS);
    return sign.equals(decimalSign) ? ";" : sign;
  }

  private String betweenRows() {
    String sign = say(Phrase.BETWEEN_ROWS);
    return sign.equals(betweenCells()) ? "|" : sign;
  }

  /**
   * {@return the unit of a quantity, in words where it is one}
   *
   * @param quantity what it measures
   * @param system the units of the caller
   */
  public String unit(Quantity quantity, UnitSystem system) {
    String unit = quantity.unit(system);
    return unit.isEmpty() ? unit : text(quantity.key(system), unit);
  }

  /** A number in a system's unit, with it; a day as a date. */
  String measured(double value, Quantity quantity, UnitSystem system) {
    return measured(value, quantity, system, Numbers.DIGITS);
  }

  /** A number in a system's unit, with so many significant digits; a day as a date. */
  String measured(double value, Quantity quantity, UnitSystem system, int digits) {
    if (quantity == Quantity.DATE && Day.isDated(value)) {
      return Day.text(value);
    }
    String unit = unit(quantity, system);
    String number = number(value, digits);
    return unit.isEmpty()
        ? number
        : quantity == Quantity.DATE ? unit + " " + number : number + " " + unit;
  }

  /** The metric unit, and the US one where it differs: {@code L (US gal)}; empty without unit. */
  String units(Quantity quantity) {
    String metric = unit(quantity, UnitSystem.METRIC);
    return quantity.isDimensional() ? metric + " (" + unit(quantity, UnitSystem.US) + ")" : metric;
  }

  /**
   * {@return a result in one line: cells and rows apart by the language's separators}
   *
   * @param result what a function gives
   */
  public String shown(Object result) {
    if (result instanceof Double number) {
      return number(number, Numbers.DIGITS);
    }
    if (result instanceof Object[][] rows) {
      StringBuilder out = new StringBuilder();
      for (Object[] row : rows) {
        out.append(out.isEmpty() ? "" : betweenRows() + " ");
        for (int i = 0; i < row.length; i++) {
          out.append(i == 0 ? "" : betweenCells() + " ");
          out.append(row[i] == null ? "" : shown(row[i]));
        }
      }
      return out.toString();
    }
    return result instanceof Refusal refusal ? refusal.sentence(this) : String.valueOf(result);
  }
}
