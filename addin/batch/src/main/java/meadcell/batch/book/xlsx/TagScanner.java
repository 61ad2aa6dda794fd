package meadcell.batch.book.xlsx;

import java.nio.charset.StandardCharsets;

/** The tags of a well-formed XML part in UTF-8, and where their bytes are. */
final class TagScanner {
  private final byte[] xml;
  private int next;
  private int start;
  private int end;
  private int nameStart;
  private int nameEnd;

  TagScanner(byte[] xml) {
    this.xml = xml;
  }

  /** Moves to the next tag; false where there is none. */
  boolean next() {
    for (start = find('<', next); start < xml.length; start = find('<', next)) {
      byte kind = xml[start + 1];
      if (kind == '?') {
        next = findAll("?>", start);
      } else if (kind != '!') {
        readTag();
        return true;
      } else if (startsWith("<!--", start)) {
        next = findAll("-->", start + 4);
      } else if (startsWith("<![CDATA[", start)) {
        next = findAll("]]>", start);
      } else {
        throw new IllegalStateException("a document type in a part of a workbook");
      }
    }
    return false;
  }

  private void readTag() {
    nameStart = start + (xml[start + 1] == '/' ? 2 : 1);
    nameEnd = nameStart;
    int at = nameStart;
    for (byte b = xml[at]; b != '>'; b = xml[++at]) {
      if (b == '"' || b == '\'') {
        at = find(b, at + 1);
      }
      boolean nameGoesOn = nameEnd == at && b != '/' && b > ' ';
      if (nameGoesOn && b == ':') {
        nameStart = at + 1;
      }
      nameEnd += nameGoesOn ? 1 : 0;
    }
    end = at + 1;
    next = end;
  }

  private int find(int wanted, int from) {
    int at = from;
    while (at < xml.length && xml[at] != wanted) {
      at++;
    }
    return at;
  }

  /** The place behind the next such text. */
  private int findAll(String text, int from) {
    int at = from;
    while (!startsWith(text, at)) {
      at++;
    }
    return at + text.length();
  }

  private boolean startsWith(String text, int from) {
    for (int i = 0; i < text.length(); i++) {
      if (xml[from + i] != text.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  int start() {
    return start;
  }

  int end() {
    return end;
  }

  /** The tag's name without its prefix. */
  boolean is(String name) {
    return nameEnd - nameStart == name.length() && startsWith(name, nameStart);
  }

  /** The prefix with its colon, or nothing. */
  String prefix() {
    int first = start + (isEnd() ? 2 : 1);
    return new String(xml, first, nameStart - first, StandardCharsets.UTF_8);
  }

  boolean isEnd() {
    return xml[start + 1] == '/';
  }

  /** Whether it is a start and an end in one. */
  boolean isEmpty() {
    return xml[end - 2] == '/';
  }

  /** Moves from an element's start tag to its end, which may be the same tag. */
  void toEnd(String name) {
    if (!isEmpty()) {
      for (int depth = 1; depth > 0 && next(); ) {
        depth += !is(name) || isEmpty() ? 0 : isEnd() ? -1 : 1;
      }
    }
  }

  /** The value of an attribute as it is written, or null. */
  String attribute(String name) {
    int at = nameEnd;
    while (true) {
      while (xml[at] <= ' ') {
        at++;
      }
      if (xml[at] == '/' || xml[at] == '>') {
        return null;
      }
      int equals = find('=', at);
      int quote = equals + 1;
      while (xml[quote] <= ' ') {
        quote++;
      }
      int close = find(xml[quote], quote + 1);
      if (new String(xml, at, equals - at, StandardCharsets.UTF_8).strip().equals(name)) {
        return new String(xml, quote + 1, close - quote - 1, StandardCharsets.UTF_8);
      }
      at = close + 1;
    }
  }
}
