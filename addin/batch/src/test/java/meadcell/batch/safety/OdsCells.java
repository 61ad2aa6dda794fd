package meadcell.batch.safety;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.poi.ss.util.CellReference;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** The {@code content.xml} of an OpenDocument spreadsheet, to compare without some cells. */
final class OdsCells {
  private static final String COLUMNS = "table:number-columns-repeated";
  private static final String ROWS = "table:number-rows-repeated";
  private static final int FEW = 200;
  private static final Pattern VALUE =
      Pattern.compile("table:formula|table:style-name|(office|calcext):.*");

  private final Document document;
  private final Map<String, Element> cells = new HashMap<>();

  OdsCells(byte[] content) throws Exception {
    document = parse(content);
    Element table = elements(document.getDocumentElement(), "table:table").get(0);
    expand(table, "table:table-column", COLUMNS, Integer.MAX_VALUE);
    expand(table, "table:table-row", ROWS, FEW);
    List<Element> rows = elements(table, "table:table-row");
    for (int r = 0; r < Math.min(rows.size(), FEW); r++) {
      expand(rows.get(r), "table:table-cell", COLUMNS, Integer.MAX_VALUE);
      List<Element> line = elements(rows.get(r), "table:table-cell|table:covered-table-cell");
      for (int c = 0; c < Math.min(line.size(), FEW); c++) {
        cells.put(new CellReference(r, c).formatAsString(), line.get(c));
      }
    }
  }

  static Document parse(byte[] xml) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(xml));
  }

  double number(String a1) {
    return Double.parseDouble(cells.get(a1).getAttribute("office:value"));
  }

  /** All but what these cells hold, their columns' widths, and styles of our own. */
  Document without(Set<String> changed) {
    Element table = elements(document.getDocumentElement(), "table:table").get(0);
    List<Element> columns = elements(table, "table:table-column");
    for (String a1 : changed) {
      Element cell = cells.get(a1);
      if (cell != null) {
        clear(cell);
      }
      int column = new CellReference(a1).getCol();
      if (column < columns.size()) {
        columns.get(column).removeAttribute("table:style-name");
      }
    }
    for (Element style : elements(document.getDocumentElement(), "style:style|number:.*-style")) {
      if (style.getAttribute("style:name").startsWith("meadcell")) {
        style.getParentNode().removeChild(style);
      }
    }
    for (Element other : elements(document.getDocumentElement(), "table:table")) {
      if (other.getAttribute("table:name").equals(GoldenCells.KEPT)) {
        other.getParentNode().removeChild(other);
      }
    }
    cells.values().forEach(cell -> merge(cell, COLUMNS));
    columns.forEach(column -> merge(column, COLUMNS));
    elements(table, "table:table-row").forEach(row -> merge(row, ROWS));
    document.normalizeDocument();
    return document;
  }

  private static void clear(Element cell) {
    List<String> names = new ArrayList<>();
    for (int i = 0; i < cell.getAttributes().getLength(); i++) {
      names.add(cell.getAttributes().item(i).getNodeName());
    }
    names.stream().filter(VALUE.asMatchPredicate()).forEach(cell::removeAttribute);
    for (Node node = cell.getFirstChild(); node != null; ) {
      Node next = node.getNextSibling();
      boolean ours =
          node.getNodeName().equals("office:annotation")
              && node.getTextContent().startsWith("Meadcell");
      if (ours || node.getNodeName().equals("text:p")) {
        cell.removeChild(node);
      }
      node = next;
    }
  }

  /** The elements of such names below one, in order. */
  static List<Element> elements(Element root, String names) {
    List<Element> found = new ArrayList<>();
    for (Node node = root.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (node instanceof Element element) {
        if (element.getTagName().matches(names)) {
          found.add(element);
        }
        found.addAll(elements(element, names));
      }
    }
    return found;
  }

  private static void expand(Element root, String name, String repeat, int most) {
    for (Element element : elements(root, name)) {
      int count = count(element, repeat);
      if (count > 1 && count <= most) {
        element.removeAttribute(repeat);
        for (int i = 1; i < count; i++) {
          element.getParentNode().insertBefore(element.cloneNode(true), element);
        }
      }
    }
  }

  private static int count(Element element, String repeat) {
    String count = element.getAttribute(repeat);
    return count.isEmpty() ? 1 : Integer.parseInt(count);
  }

  /** Joins an element with an equal one in front of it. */
  private static void merge(Element element, String repeat) {
    Node before = element.getPreviousSibling();
    int count = count(element, repeat);
    if (before instanceof Element other && other.getTagName().equals(element.getTagName())) {
      int others = count(other, repeat);
      element.setAttribute(repeat, "" + others);
      other.setAttribute(repeat, "" + others);
      boolean equal = element.isEqualNode(other);
      element.setAttribute(repeat, "" + (equal ? count + others : count));
      if (equal) {
        other.getParentNode().removeChild(other);
      }
    } else {
      element.setAttribute(repeat, "" + count);
    }
  }
}
