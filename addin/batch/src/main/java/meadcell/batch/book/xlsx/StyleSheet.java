package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Pattern;
import meadcell.batch.book.CellContent;
import org.apache.poi.ss.usermodel.DateUtil;

/**
 * The styles of cells (ECMA-376 part 1, 18.8): what their number formats say, and new ones behind
 * the others. A new style is another one's own words with another number format, so that nothing
 * else of it changes, least of all the named style that it may rest on.
 */
final class StyleSheet {
  /** A style as it is written, and where. */
  private record Format(int start, int tagEnd, int end, int numberFormat) {}

  private record Key(int style, String format) {
    @Override
    public boolean equals(Object object) {
      return object instanceof Key other
          && style == other.style
          && Objects.equals(format, other.format);
    }

    @Override
    public int hashCode() {
      return 31 * style + Objects.hashCode(format);
    }
  }

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

  private static final Pattern NUMBER_FORMAT =
      Pattern.compile("\\s(numFmtId|applyNumberFormat)\\s*=\\s*(\"[^\"]*\"|'[^']*')");

  private final XmlPart xml;
  private final List<Format> styles = new ArrayList<>();
  private final NumberFormats formats;
  private final Map<Key, Integer> created = new HashMap<>();
  private final List<Key> newStyles = new ArrayList<>();
  private CellContent.Look[] looks = new CellContent.Look[16];

  StyleSheet(XmlPart xml) throws IOException {
    this.xml = xml;
    this.formats = new NumberFormats(xml);
    TagScanner tags = xml.tags();
    while (tags.next()) {
      if (tags.is("cellXfs") && !tags.isEnd() && !tags.isEmpty()) {
        read(tags);
      }
    }
  }

  private void read(TagScanner tags) throws IOException {
    while (tags.next() && !tags.is("cellXfs")) {
      if (tags.is("xf") && !tags.isEnd()) {
        int start = tags.start();
        int tagEnd = tags.end();
        int format = NumberFormats.number(tags);
        tags.toEnd("xf");
        styles.add(new Format(start, tagEnd, tags.end(), format));
      }
    }
  }

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
      int number = isNew ? NumberFormats.FIRST_OWN : styles.get(style).numberFormat;
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
        || style > 0
            && style < styles.size() + newStyles.size()
            && format(style).equals(NumberFormats.GENERAL);
  }

  private String format(int style) {
    return style < styles.size()
        ? formats.written(styles.get(style).numberFormat)
        : newStyles.get(style - styles.size()).format;
  }

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
            + formats.numberOf(key.format)
            + "\" applyNumberFormat=\"1\""
            + tag.substring(close)
            + xml.text(like.tagEnd, like.end);
    newStyles.add(key);
    int count = styles.size() + newStyles.size();
    xml.appendCounted("cellXfs", style, count);
    return count - 1;
  }

  boolean isChanged() {
    return xml.isChanged();
  }

  byte[] changed() {
    return xml.changed();
  }
}
