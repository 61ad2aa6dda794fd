package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.FileRefused;
import org.apache.poi.ss.usermodel.BuiltinFormats;
import org.apache.poi.ss.usermodel.DateUtil;

/**
 * The styles of cells (ECMA-376 part 1, 18.8): what their number formats say, and new ones behind
 * the others. A new style is another one's own words with another number format, so that nothing
 * else of it changes, least of all the named style that it may rest on.
 */
final class StyleSheet {
  /** A style as it is written, and where. */
  private record Format(int start, int tagEnd, int end, int numberFormat) {}

  private record Key(int style, String format) {}

  static final String EMPTY =
      "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n"
          + "<styleSheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">"
          + "<fonts count=\"1\"><font/></fonts>"
          + "<fills count=\"2\"><fill><patternFill patternType=\"none\"/></fill>"
          + "<fill><patternFill patternType=\"gray125\"/></fill></fills>"
          + "<borders count=\"1\"><border/></borders>"
          + "<cellStyleXfs count=\"1\"><xf/></cellStyleXfs>"
          + "<cellXfs count=\"1\"><xf/></cellXfs></styleSheet>";

  /** Excel takes no more than 65,490 (its specifications; from memory). */
  private static final int MOST_STYLES = 64_000;

  /** Lower numbers are built in. */
  private static final int FIRST_OWN_FORMAT = 164;

  private static final String GENERAL = "General";

  private static final Pattern COUNT = Pattern.compile("\\scount\\s*=\\s*[\"'](\\d+)[\"']");
  private static final Pattern NUMBER_FORMAT =
      Pattern.compile("\\s(numFmtId|applyNumberFormat)\\s*=\\s*(\"[^\"]*\"|'[^']*')");

  private final XmlPart xml;
  private final List<Format> styles = new ArrayList<>();
  private final Map<Integer, String> formats = new HashMap<>();
  private final Map<Key, Integer> created = new HashMap<>();
  private final List<Key> newStyles = new ArrayList<>();
  private final StringBuilder newFormats = new StringBuilder();
  private CellContent.Look[] looks = new CellContent.Look[16];

  StyleSheet(XmlPart xml) throws IOException {
    this.xml = xml;
    TagScanner tags = xml.tags();
    while (tags.next()) {
      if (tags.is("numFmt") && !tags.isEnd()) {
        formats.put(number(tags, "numFmtId"), XmlText.unescaped(tags.attribute("formatCode")));
      } else if (tags.is("cellXfs") && !tags.isEnd() && !tags.isEmpty()) {
        read(tags);
      }
    }
  }

  private void read(TagScanner tags) throws IOException {
    while (tags.next() && !tags.is("cellXfs")) {
      if (tags.is("xf") && !tags.isEnd()) {
        int start = tags.start();
        int tagEnd = tags.end();
        int format = number(tags, "numFmtId");
        tags.toEnd("xf");
        styles.add(new Format(start, tagEnd, tags.end(), format));
      }
    }
  }

  private static int number(TagScanner tags, String name) throws IOException {
    String value = tags.attribute(name);
    try {
      return value == null ? 0 : Integer.parseInt(value.strip());
    } catch (NumberFormatException e) {
      throw FileRefused.damaged("a number format has no number", e);
    }
  }

  // ---- reading ----------------------------------------------------------------------------

  /** What a style says of the meaning of a number. */
  CellContent.Look look(int style) {
    if (style < 0 || style >= styles.size() + newStyles.size()) {
      return CellContent.Look.PLAIN;
    }
    if (style >= looks.length) {
      looks = Arrays.copyOf(looks, style + 16);
    }
    if (looks[style] == null) {
      String format = format(style);
      boolean isNew = style >= styles.size();
      int number = isNew ? FIRST_OWN_FORMAT : styles.get(style).numberFormat;
      looks[style] =
          DateUtil.isADateFormat(number, format)
              ? CellContent.Look.DATE
              : format.contains("%") ? CellContent.Look.PERCENT : CellContent.Look.PLAIN;
    }
    return looks[style];
  }

  /** Whether nobody chose how its numbers look. */
  boolean isGeneral(int style) {
    return style == XlsxCell.PLAIN_STYLE
        || style > 0 && style < styles.size() + newStyles.size() && format(style).equals(GENERAL);
  }

  private String format(int style) {
    return style < styles.size()
        ? written(styles.get(style).numberFormat)
        : newStyles.get(style - styles.size()).format;
  }

  private String written(int numberFormat) {
    String own = formats.get(numberFormat);
    String builtIn = own == null ? BuiltinFormats.getBuiltinFormat(numberFormat) : own;
    return builtIn == null ? GENERAL : builtIn;
  }

  // ---- writing ----------------------------------------------------------------------------

  /** The style like another with a number format: one for each pair, never one for each cell. */
  int style(int like, String format) {
    int count = styles.size() + newStyles.size();
    if (like < 0
        || like >= count
        || count >= MOST_STYLES
        || format.isEmpty()
        || format.equals(format(like))) {
      return like;
    }
    int written = like < styles.size() ? like : newStyles.get(like - styles.size()).style;
    return format.equals(format(written))
        ? written
        : created.computeIfAbsent(new Key(written, format), this::create);
  }

  private int create(Key key) {
    Format like = styles.get(key.style);
    String tag = NUMBER_FORMAT.matcher(xml.text(like.start, like.tagEnd)).replaceAll("");
    int close = tag.endsWith("/>") ? tag.length() - 2 : tag.length() - 1;
    String style =
        tag.substring(0, close).stripTrailing()
            + " numFmtId=\""
            + numberOf(key.format)
            + "\" applyNumberFormat=\"1\""
            + tag.substring(close)
            + xml.text(like.tagEnd, like.end);
    newStyles.add(key);
    int count = styles.size() + newStyles.size();
    append("cellXfs", style, count);
    return count - 1;
  }

  private int numberOf(String format) {
    int builtIn = BuiltinFormats.getBuiltinFormat(format);
    if (builtIn >= 0) {
      return builtIn;
    }
    int next = FIRST_OWN_FORMAT;
    for (Map.Entry<Integer, String> known : formats.entrySet()) {
      if (known.getValue().equals(format)) {
        return known.getKey();
      }
      next = Math.max(next, known.getKey() + 1);
    }
    formats.put(next, format);
    TagScanner root = xml.tags();
    root.next();
    append(
        "numFmts",
        "<"
            + root.prefix()
            + "numFmt numFmtId=\""
            + next
            + "\" formatCode=\""
            + XmlText.escaped(format)
            + "\"/>",
        formats.size());
    return next;
  }

  /** Puts an element behind those of a list, which says how many it has. */
  private void append(String list, String element, int count) {
    TagScanner tags = xml.tags();
    while (tags.next()) {
      if (tags.is(list) && !tags.isEnd()) {
        count(tags, count);
        xml.append(tags, list, element);
        return;
      }
    }
    tags = xml.tags();
    tags.next(); // the style sheet itself; number formats come first in it
    newFormats.append(element);
    String name = tags.prefix() + list;
    xml.replace(
        tags.end(),
        tags.end(),
        "<" + name + " count=\"" + count + "\">" + newFormats + "</" + name + ">");
  }

  private void count(TagScanner tags, int count) {
    Matcher written = COUNT.matcher(xml.text(tags.start(), tags.end()));
    if (written.find()) {
      int at = tags.start() + written.start(1);
      xml.replace(at, at + written.group(1).length(), String.valueOf(count));
    }
  }

  boolean isChanged() {
    return xml.isChanged();
  }

  byte[] changed() {
    return xml.changed();
  }
}
