package meadcell.calc.extension;

import static meadcell.calc.extension.Xml.with;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import meadcell.calc.menu.Menu;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.SAXException;

/**
 * Where a package will lie, so that offices name the publisher's page and look there for newer
 * ones.
 */
record Site(String address) {
  /** The file beside the package that tells offices which version lies there. */
  static final String UPDATES = "meadcell.update.xml";

  private static final String DESCRIPTION = "http://openoffice.org/extensions/description/2006";
  private static final String XLINK = "http://www.w3.org/1999/xlink";

  /** The description of a package, with the links to this site. */
  byte[] described(byte[] description) throws IOException {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      Document xml = factory.newDocumentBuilder().parse(new ByteArrayInputStream(description));
      Element publisher = first(xml.getDocumentElement(), "publisher");
      link(first(publisher, "name"), address);
      Element updates = xml.createElementNS(DESCRIPTION, "update-information");
      Element source = xml.createElementNS(DESCRIPTION, "src");
      link(source, address + "/" + UPDATES);
      updates.appendChild(source);
      publisher.getParentNode().insertBefore(updates, publisher);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      TransformerFactory.newInstance()
          .newTransformer()
          .transform(new DOMSource(xml), new StreamResult(bytes));
      return bytes.toByteArray();
    } catch (ParserConfigurationException | SAXException | TransformerException e) {
      throw new IllegalStateException("the description cannot be read or written", e);
    }
  }

  private static Element first(Element in, String name) {
    return (Element) in.getElementsByTagNameNS(DESCRIPTION, name).item(0);
  }

  private static void link(Element from, String to) {
    from.setAttributeNS(XLINK, "xlink:href", to);
  }

  /** The file with the version, in which a package of this name lies beside it. */
  byte[] updates(String version, String packed) {
    return Xml.document(
        xml ->
            xml.element(
                "description",
                with("xmlns", "http://openoffice.org/extensions/update/2006", "xmlns:xlink", XLINK),
                () -> {
                  xml.empty("identifier", "value", Menu.PACKAGE);
                  xml.empty("version", "value", version);
                  xml.element(
                      "update-download",
                      with(),
                      () -> xml.empty("src", "xlink:href", address + "/" + packed));
                }));
  }
}
