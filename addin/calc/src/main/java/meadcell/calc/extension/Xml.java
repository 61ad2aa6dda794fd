package meadcell.calc.extension;

import java.io.ByteArrayOutputStream;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** A small XML document, indented: elements nest by lambdas, attributes are name and value. */
final class Xml {
  private final XMLStreamWriter out;
  private int depth;

  private Xml(XMLStreamWriter out) {
    this.out = out;
  }

  /** What to write inside an element. */
  interface Content {
    void write() throws XMLStreamException;
  }

  /** What to write as a document. */
  interface Document {
    void write(Xml xml) throws XMLStreamException;
  }

  static byte[] document(Document document) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      XMLStreamWriter out = XMLOutputFactory.newFactory().createXMLStreamWriter(bytes, "UTF-8");
      out.writeStartDocument("UTF-8", "1.0");
      document.write(new Xml(out));
      out.writeCharacters("\n");
      out.writeEndDocument();
      out.close();
    } catch (XMLStreamException e) {
      throw new IllegalStateException("XML cannot be written", e);
    }
    return bytes.toByteArray();
  }

  void element(String name, String[] attributes, Content content) throws XMLStreamException {
    start(name, attributes);
    depth++;
    content.write();
    depth--;
    line();
    out.writeEndElement();
  }

  void text(String name, String[] attributes, String text) throws XMLStreamException {
    start(name, attributes);
    out.writeCharacters(text);
    out.writeEndElement();
  }

  /** A text in an element that is the whole of another, without space around it. */
  void text(String outer, String name, String[] attributes, String text) throws XMLStreamException {
    start(outer);
    out.writeStartElement(name);
    attributes(attributes);
    out.writeCharacters(text);
    out.writeEndElement();
    out.writeEndElement();
  }

  void empty(String name, String... attributes) throws XMLStreamException {
    line();
    out.writeEmptyElement(name);
    attributes(attributes);
  }

  /** Attributes of an element. */
  static String[] with(String... attributes) {
    return attributes;
  }

  private void start(String name, String... attributes) throws XMLStreamException {
    line();
    out.writeStartElement(name);
    attributes(attributes);
  }

  private void attributes(String... attributes) throws XMLStreamException {
    for (int i = 0; i < attributes.length; i += 2) {
      out.writeAttribute(attributes[i], attributes[i + 1]);
    }
  }

  private void line() throws XMLStreamException {
    out.writeCharacters("\n" + "  ".repeat(depth));
  }
}
