package meadcell.batch.book.ods;

import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** OpenDocument's namespaces, and the few things done with its elements everywhere. */
final class OdsNames {
  private static final String OASIS = "urn:oasis:names:tc:opendocument:xmlns:";
  static final String TABLE = OASIS + "table:1.0";
  static final String OFFICE = OASIS + "office:1.0";
  static final String TEXT = OASIS + "text:1.0";
  static final String STYLE = OASIS + "style:1.0";
  static final String NUMBER = OASIS + "datastyle:1.0";
  static final String META = OASIS + "meta:1.0";
  static final String DC = "http://purl.org/dc/elements/1.1/";
  static final String CALC = "urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0";

  private OdsNames() {}

  static boolean is(Node node, String namespace, String name) {
    return node instanceof Element
        && name.equals(node.getLocalName())
        && namespace.equals(node.getNamespaceURI());
  }

  static int number(Element element, String namespace, String name) {
    String value = element.getAttributeNS(namespace, name);
    return value.isEmpty() ? 1 : Integer.parseInt(value);
  }

  static void setRepeat(Element element, String name, int count) {
    if (count == 1) {
      element.removeAttributeNS(TABLE, name);
    } else {
      element.setAttributeNS(TABLE, "table:" + name, String.valueOf(count));
    }
  }
}
