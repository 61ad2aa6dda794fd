package meadcell.batch.book.xlsx;

/** Texts as XML writes them. */
final class XmlText {
  private XmlText() {}

  /** A text as the content of an element or a quoted attribute. */
  static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  /** What an attribute says, or nothing where it is missing. */
  static String unescaped(String attribute) {
    if (attribute == null || attribute.indexOf('&') < 0) {
      return attribute == null ? "" : attribute;
    }
    StringBuilder text = new StringBuilder();
    for (int at = 0; at < attribute.length(); at++) {
      int end = attribute.charAt(at) == '&' ? attribute.indexOf(';', at) : -1;
      if (end < 0) {
        text.append(attribute.charAt(at));
        continue;
      }
      String name = attribute.substring(at + 1, end);
      switch (name) {
        case "amp" -> text.append('&');
        case "lt" -> text.append('<');
        case "gt" -> text.append('>');
        case "quot" -> text.append('"');
        case "apos" -> text.append('\'');
        default -> text.appendCodePoint(code(name));
      }
      at = end;
    }
    return text.toString();
  }

  private static int code(String reference) {
    return reference.startsWith("#x")
        ? Integer.parseInt(reference.substring(2), 16)
        : Integer.parseInt(reference.substring(1));
  }
}
