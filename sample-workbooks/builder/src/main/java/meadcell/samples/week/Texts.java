package meadcell.samples.week;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.UnitSystem;

/** The words of the exercises in one language. */
final class Texts {
  private static final Pattern PLACE = Pattern.compile("\\{(\\d)}");

  private static final Pattern PIECE = Pattern.compile("(?s).{0,240}\\S(?=\\s|$)|.{1,240}|^$");
  private static final Pattern MARK = Pattern.compile("(?<=\\d)[.,](?=\\d)");

  private final Locale language;
  private final Properties texts = new Properties();

  Texts(Locale language) {
    this.language = language;
    String file = language.getLanguage() + ".properties";
    try (Reader reader =
        new InputStreamReader(Texts.class.getResourceAsStream(file), StandardCharsets.UTF_8)) {
      texts.load(reader);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  Locale language() {
    return language;
  }

  /** Numbers as this language writes them; one with the other decimal mark stays one. */
  String numbers(String english) {
    return language.equals(Locale.GERMAN)
        ? MARK.matcher(english).replaceAll(mark -> mark.group().equals(".") ? "," : ".")
        : english;
  }

  String get(String key) {
    String text = texts.getProperty(key);
    if (text == null) {
      throw new IllegalArgumentException("no text for " + key);
    }
    return text;
  }

  /** The unit that goes with the switch, as a formula. */
  String unit(Quantity quantity) {
    return "IF(units=\"US\","
        + quoted(quantity.unit(UnitSystem.US))
        + ","
        + quoted(quantity.unit(UnitSystem.METRIC))
        + ")";
  }

  /** The text as a formula that puts these formulas into its places, such as {@code {0}}. */
  String formula(String key, String... formulas) {
    Matcher place = PLACE.matcher(quoted(get(key)));
    return place.replaceAll(
        found ->
            Matcher.quoteReplacement("\"&" + formulas[Integer.parseInt(found.group(1))] + "&\""));
  }

  /** A text as a formula, in pieces that the file format allows: 255 characters. */
  static String quoted(String text) {
    return PIECE
        .matcher(text)
        .results()
        .map(piece -> "\"" + piece.group().replace("\"", "\"\"") + "\"")
        .collect(Collectors.joining("&"));
  }
}
