package meadcell.calc.menu;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.util.Locale;
import java.util.Properties;

/** What the menu says, in the office's language where we have it, else in English. */
public final class Texts {
  private static final String ENGLISH = "en";

  private final String language;
  private final Properties texts;

  /**
   * @param language language code such as {@code de}
   */
  public Texts(String language) {
    Properties own = read(language);
    this.language = own == null ? ENGLISH : language;
    texts = new Properties(read(ENGLISH));
    if (own != null) {
      texts.putAll(own);
    }
  }

  /** The language that is spoken: the one asked for if we have it. */
  public String language() {
    return language;
  }

  private static Properties read(String language) {
    try (InputStream in = Texts.class.getResourceAsStream("texts_" + language + ".properties")) {
      if (in == null) {
        return null;
      }
      Properties properties = new Properties();
      try (Reader reader = new InputStreamReader(in, StandardCharsets.UTF_8)) {
        properties.load(reader);
      }
      return properties;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A text with its values filled in. */
  public String say(String key, Object... values) {
    String text = texts.getProperty(key);
    if (text == null) {
      throw new IllegalArgumentException("no text " + key);
    }
    return new MessageFormat(text, Locale.ROOT).format(values);
  }
}
