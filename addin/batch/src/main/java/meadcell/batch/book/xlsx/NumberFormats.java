package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import meadcell.batch.book.FileRefused;
import org.apache.poi.ss.usermodel.BuiltinFormats;

/**
 * The number formats of a style sheet (ECMA-376 part 1, 18.8.30), and new ones behind the others.
 */
final class NumberFormats {
  /** Lower numbers are built in. */
  static final int FIRST_OWN = 164;

  /** The one that nobody chose. */
  static final String GENERAL = "General";

  private final XmlPart xml;
  private final Map<Integer, String> formats = new HashMap<>();
  private final StringBuilder added = new StringBuilder();

  NumberFormats(XmlPart xml) throws IOException {
    this.xml = xml;
    TagScanner tags = xml.tags();
    while (tags.next()) {
      if (tags.is("numFmt") && !tags.isEnd()) {
        formats.put(number(tags), XmlText.unescaped(tags.attribute("formatCode")));
      }
    }
  }

  /** The number that an element says. */
  static int number(TagScanner tags) throws IOException {
    String value = tags.attribute("numFmtId");
    try {
      return value == null ? 0 : Integer.parseInt(value.strip());
    } catch (NumberFormatException e) {
      throw FileRefused.damaged("a number format has no number", e);
    }
  }

  String written(int numberFormat) {
    String own = formats.get(numberFormat);
    String builtIn = own == null ? BuiltinFormats.getBuiltinFormat(numberFormat) : own;
    return builtIn == null ? GENERAL : builtIn;
  }

  /** The number of a format, which is added where it is a new one. */
  int numberOf(String format) {
    int builtIn = BuiltinFormats.getBuiltinFormat(format);
    if (builtIn >= 0) {
      return builtIn;
    }
    int next = FIRST_OWN;
    for (Map.Entry<Integer, String> known : formats.entrySet()) {
      if (known.getValue().equals(format)) {
        return known.getKey();
      }
      next = Math.max(next, known.getKey() + 1);
    }
    formats.put(next, format);
    add(next, format);
    return next;
  }

  private void add(int number, String format) {
    TagScanner tags = xml.tags();
    tags.next(); // the style sheet itself; number formats come first in it
    String prefix = tags.prefix();
    String element =
        "<"
            + prefix
            + "numFmt numFmtId=\""
            + number
            + "\" formatCode=\""
            + XmlText.escaped(format)
            + "\"/>";
    if (!xml.appendCounted("numFmts", element, formats.size())) {
      added.append(element);
      String list = prefix + "numFmts";
      String start = "<" + list + " count=\"" + formats.size() + "\">";
      xml.replace(tags.end(), tags.end(), start + added + "</" + list + ">");
    }
  }
}
