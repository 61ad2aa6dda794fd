package meadcell.batch.book.xlsx;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.batch.book.Sax;
import meadcell.batch.book.Value;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** The texts that the cells of an {@code .xlsx} workbook share (ECMA-376 part 1, 18.4.9). */
final class SharedTexts extends DefaultHandler {
  private static final Pattern ESCAPED = Pattern.compile("_x([0-9A-Fa-f]{4})_");

  private final List<Value> texts = new ArrayList<>();
  private final StringBuilder text = new StringBuilder();
  private boolean isText;
  private boolean isSpoken;

  private SharedTexts() {}

  static List<Value> read(byte[] xml) throws IOException {
    SharedTexts reader = new SharedTexts();
    Sax.parse(new ByteArrayInputStream(xml), reader);
    return reader.texts;
  }

  @Override
  public void startElement(String uri, String name, String qualified, Attributes attributes) {
    switch (name) {
      case "si" -> text.setLength(0);
      case "t" -> isText = !isSpoken;
      case "rPh" -> isSpoken = true; // how to say it, not what it says
      default -> {}
    }
  }

  @Override
  public void characters(char[] chars, int start, int length) {
    if (isText) {
      text.append(chars, start, length);
    }
  }

  @Override
  public void endElement(String uri, String name, String qualified) {
    switch (name) {
      case "si" -> texts.add(Value.of(unescaped(text.toString())));
      case "t" -> isText = false;
      case "rPh" -> isSpoken = false;
      default -> {}
    }
  }

  /** Control characters are written as {@code _x000D_}. */
  static String unescaped(String text) {
    return text.contains("_x")
        ? ESCAPED
            .matcher(text)
            .replaceAll(
                found -> Matcher.quoteReplacement("" + (char) Integer.parseInt(found.group(1), 16)))
        : text;
  }
}
