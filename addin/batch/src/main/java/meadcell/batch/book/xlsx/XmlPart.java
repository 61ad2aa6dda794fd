package meadcell.batch.book.xlsx;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.batch.book.Sax;
import org.xml.sax.helpers.DefaultHandler;

/** An XML part in which pieces are put in, replaced or taken out; every other byte stays. */
final class XmlPart {
  private static final Pattern COUNT = Pattern.compile("\\scount\\s*=\\s*[\"'](\\d+)[\"']");

  /** What comes in place of the bytes up to an end. */
  private record Edit(int end, String text) {}

  private final byte[] xml;
  private final Map<Integer, Edit> edits = new TreeMap<>();

  /** Takes XML as it is. */
  XmlPart(byte[] xml) {
    this.xml = xml;
  }

  /** Reads a part, in any encoding; it must be well-formed. */
  static XmlPart of(byte[] part) throws IOException {
    byte[] utf8 = Encodings.inUtf8(part);
    Sax.parse(new ByteArrayInputStream(utf8), new DefaultHandler());
    return new XmlPart(utf8);
  }

  static XmlPart of(String text) {
    return new XmlPart(text.getBytes(StandardCharsets.UTF_8));
  }

  TagScanner tags() {
    return new TagScanner(xml);
  }

  String text(int start, int end) {
    return new String(xml, start, end - start, StandardCharsets.UTF_8);
  }

  boolean isChanged() {
    return !edits.isEmpty();
  }

  /** Puts a text in front of a place; behind what was put there before. */
  void insert(int at, String text) {
    edits.merge(at, new Edit(at, text), (a, b) -> new Edit(a.end, a.text + b.text));
  }

  /** Puts a text in place of others. */
  void replace(int start, int end, String text) {
    edits.put(start, new Edit(end, text));
  }

  /** Puts a text at the end of an element's content, at whose start tag the scanner is. */
  void append(TagScanner tags, String name, String text) {
    if (tags.isEmpty()) {
      int slash = tags.end() - 2;
      String close = "</" + tags.prefix() + name + ">";
      Edit before = edits.get(slash);
      String content =
          before == null ? ">" : before.text.substring(0, before.text.length() - close.length());
      replace(slash, tags.end(), content + text + close);
      return;
    }
    tags.toEnd(name);
    insert(tags.start(), text);
  }

  /**
   * Puts an element at the end of a list, which may say how many it has.
   *
   * @return whether there is such a list
   */
  boolean appendCounted(String list, String element, int count) {
    TagScanner tags = tags();
    while (tags.next()) {
      if (tags.is(list) && !tags.isEnd()) {
        Matcher written = COUNT.matcher(text(tags.start(), tags.end()));
        if (written.find()) {
          int at = tags.start() + written.start(1);
          replace(at, at + written.group(1).length(), String.valueOf(count));
        }
        append(tags, list, element);
        return true;
      }
    }
    return false;
  }

  /** The part with all changes. */
  byte[] changed() {
    ByteArrayOutputStream out = new ByteArrayOutputStream(xml.length + 1024);
    int copied = 0;
    for (Map.Entry<Integer, Edit> edit : edits.entrySet()) {
      out.write(xml, copied, edit.getKey() - copied);
      out.writeBytes(edit.getValue().text.getBytes(StandardCharsets.UTF_8));
      copied = edit.getValue().end;
    }
    out.write(xml, copied, xml.length - copied);
    return out.toByteArray();
  }
}
