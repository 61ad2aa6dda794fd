package meadcell.batch.book.ods;

import static meadcell.batch.book.ods.OdsNames.NUMBER;
import static meadcell.batch.book.ods.OdsNames.OFFICE;
import static meadcell.batch.book.ods.OdsNames.STYLE;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** The styles that cells and columns get beside their authors'. */
final class OdsStyles {
  private static final Pattern DECIMALS = Pattern.compile("0(\\.0+)?");
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

  /** A style like another with a number format; only plain decimals are known. */
  String cell(String like, String format) {
    if (!DECIMALS.matcher(format).matches()) {
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
    Element data = content.createElementNS(NUMBER, "number:number-style");
    data.setAttributeNS(STYLE, "style:name", name + "n");
    Element digits = content.createElementNS(NUMBER, "number:number");
    int decimals = Math.max(0, key.format.length() - 2);
    digits.setAttributeNS(NUMBER, "number:decimal-places", String.valueOf(decimals));
    digits.setAttributeNS(NUMBER, "number:min-integer-digits", "1");
    data.appendChild(digits);
    Element style;
    if (original == null) {
      style = content.createElementNS(STYLE, "style:style");
      style.setAttributeNS(STYLE, "style:family", "table-cell");
      style.setAttributeNS(
          STYLE, "style:parent-style-name", key.style.isEmpty() ? "Default" : key.style);
    } else {
      style = (Element) original.cloneNode(true);
    }
    style.setAttributeNS(STYLE, "style:name", name);
    style.setAttributeNS(STYLE, "style:data-style-name", name + "n");
    automatic.appendChild(data);
    automatic.appendChild(style);
    return name;
  }
}
