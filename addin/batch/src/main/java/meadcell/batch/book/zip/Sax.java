package meadcell.batch.book.zip;

import java.io.IOException;
import java.io.InputStream;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import meadcell.batch.book.FileRefused;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/** The JDK's XML parser, which is to open nothing but what it is given. */
public final class Sax {
  private Sax() {}

  public static void parse(InputStream xml, DefaultHandler handler) throws IOException {
    try {
      SAXParserFactory factory = SAXParserFactory.newDefaultNSInstance();
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      factory.newSAXParser().parse(xml, handler);
    } catch (SAXException e) {
      throw FileRefused.damaged(e.getMessage(), e);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException(e);
    }
  }
}
