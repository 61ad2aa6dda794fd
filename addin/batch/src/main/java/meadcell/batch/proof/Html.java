package meadcell.batch.proof;

import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Writes a page element by element; texts are escaped. */
final class Html {
  private final StringWriter page = new StringWriter();
  private final XMLStreamWriter out;

  Html() {
    try {
      out = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(page);
      out.writeDTD("<!DOCTYPE html>\n");
    } catch (XMLStreamException e) {
      throw new IllegalStateException(e);
    }
  }

  /** An element with a content; attributes are pairs of name and value. */
  Html in(String tag, Runnable content, Object... attributes) {
    try {
      out.writeStartElement(tag);
      for (int i = 0; i < attributes.length; i += 2) {
        out.writeAttribute((String) attributes[i], attributes[i + 1].toString());
      }
      content.run();
      out.writeEndElement();
    } catch (XMLStreamException e) {
      throw new IllegalStateException(e); // the page is kept in memory
    }
    return this;
  }

  /** An element with a text, on a line of its own. */
  Html put(String tag, String text, Object... attributes) {
    return in(tag, () -> text(text), attributes).text("\n");
  }

  Html text(String text) {
    try {
      out.writeCharacters(text);
    } catch (XMLStreamException e) {
      throw new IllegalStateException(e);
    }
    return this;
  }

  @Override
  public String toString() {
    return page.toString();
  }
}
