package meadcell.batch.book.ods;

import static meadcell.batch.book.ods.OdsNames.NUMBER;
import static meadcell.batch.book.ods.OdsNames.OFFICE;
import static meadcell.batch.book.ods.OdsNames.STYLE;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** The styles that cells and columns get beside their authors'. */
final class OdsStyles {
  /** A style that says nothing. */
  private static final String PLAIN = "Default";

  /** The number formats that can be written: decimals, with thousands apart or not, and days. */
  private static final Pattern DECIMALS = Pattern.compile("(#,##)?0(\\.(0+))?");

  private static final String DAY = "yyyy-mm-dd";
  private static final String OWN_STYLE = "meadcell";

  private record StyleKey(String style, String format) {}

  private final Document content;
  private final Map<StyleKey, String> cells = new HashMap<>();
  private final Set<String> columns = new HashSet<>();

  OdsStyles(Document content) {
    this.content = content;
  }

  private Element automatic() {
    return (Element) content.getElementsByTagNameNS(OFFICE, "automatic-styles").item(0);
  }

  /** A column style of such a width. */
  String column(int millimetres) {
    String name = OWN_STYLE + "column" + millimetres;
    if (columns.add(name)) {
      Element style = content.createElementNS(STYLE, "style:style");
      style.setAttributeNS(STYLE, "style:name", name);
      style.setAttributeNS(STYLE, "style:family", "table-column");
      Element width = content.createElementNS(STYLE, "style:table-column-properties");
      width.setAttributeNS(STYLE, "style:column-width", millimetres + "mm");
      style.appendChild(width);
      automatic().appendChild(style);
    }
    return name;
  }

  /** Whether a cell of this style looks as one to which nobody gave a style. */
  static boolean isPlain(String name) {
    return name.isEmpty() || name.equals(PLAIN);
  }

  /** Whether nobody chose how the numbers of a style's cells look. */
  boolean isGeneral(String name) {
    Element style = named(name);
    if (isPlain(name) || style == null) {
      return isPlain(name); // any other is one that the person made and named
    }
    String data = style.getAttributeNS(STYLE, "data-style-name");
    if (data.isEmpty()) {
      return isPlain(style.getAttributeNS(STYLE, "parent-style-name"));
    }
    Element format = named(data);
    if (format == null || !OdsNames.is(format, NUMBER, "number-style")) {
      return false;
    }
    NodeList parts = format.getChildNodes();
    return parts.getLength() == 1
        && OdsNames.is(parts.item(0), NUMBER, "number")
        && !((Element) parts.item(0)).hasAttributeNS(NUMBER, "decimal-places");
  }

  private Element named(String name) {
    for (Node node = automatic().getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element style && style.getAttributeNS(STYLE, "name").equals(name)) {
        return style;
      }
    }
    return null;
  }

  /** A style like another with a number format, if that can be written. */
  String cell(String like, String format) {
    if (!format.equals(DAY) && !DECIMALS.matcher(format).matches()) {
      return like;
    }
    return cells.computeIfAbsent(new StyleKey(like, format), this::create);
  }

  private String create(StyleKey key) {
    Element automatic = automatic();
    Element original = null;
    int number = 1;
    for (Node node = automatic.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element style) {
        String name = style.getAttributeNS(STYLE, "name");
        original = name.equals(key.style) && OdsNames.is(node, STYLE, "style") ? style : original;
        number += name.startsWith(OWN_STYLE) ? 1 : 0;
      }
    }
    String name = OWN_STYLE + number;
    Element data = key.format.equals(DAY) ? day() : decimals(key.format);
    data.setAttributeNS(STYLE, "style:name", name + "n");
    Element style;
    if (original == null) {
      style = content.createElementNS(STYLE, "style:style");
      style.setAttributeNS(STYLE, "style:family", "table-cell");
      style.setAttributeNS(
          STYLE, "style:parent-style-name", key.style.isEmpty() ? PLAIN : key.style);
    } else {
      style = (Element) original.cloneNode(true);
    }
    style.setAttributeNS(STYLE, "style:name", name);
    style.setAttributeNS(STYLE, "style:data-style-name", name + "n");
    automatic.appendChild(data);
    automatic.appendChild(style);
    return name;
  }

  private Element decimals(String format) {
    Matcher matcher = DECIMALS.matcher(format);
    matcher.matches();
    Element data = content.createElementNS(NUMBER, "number:number-style");
    Element digits = part(data, "number");
    int decimals = matcher.group(3) == null ? 0 : matcher.group(3).length();
    digits.setAttributeNS(NUMBER, "number:decimal-places", String.valueOf(decimals));
    digits.setAttributeNS(NUMBER, "number:min-integer-digits", "1");
    if (matcher.group(1) != null) {
      digits.setAttributeNS(NUMBER, "number:grouping", "true");
    }
    return data;
  }

  private Element day() {
    Element data = content.createElementNS(NUMBER, "number:date-style");
    part(data, "year").setAttributeNS(NUMBER, "number:style", "long");
    part(data, "text").setTextContent("-");
    part(data, "month").setAttributeNS(NUMBER, "number:style", "long");
    part(data, "text").setTextContent("-");
    part(data, "day").setAttributeNS(NUMBER, "number:style", "long");
    return data;
  }

  private Element part(Element data, String name) {
    Element part = content.createElementNS(NUMBER, "number:" + name);
    data.appendChild(part);
    return part;
  }
}
