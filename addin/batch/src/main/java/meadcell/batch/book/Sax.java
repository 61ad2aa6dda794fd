package meadcell.batch.book;

import java.io.CharConversionException;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.util.Map;
import javax.xml.XMLConstants;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParser;
import javax.xml.parsers.SAXParserFactory;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.ext.DefaultHandler2;
import org.xml.sax.helpers.DefaultHandler;

/** The JDK's XML parser, which opens nothing but what it is given. */
public final class Sax {
  private static final String FEATURES = "http://apache.org/xml/features/";
  private static final String ENTITIES = "http://xml.org/sax/features/external-";

  /** As in Java 17: from Java 24 on a text of 100,000 letters is too long by default. */
  public static final Map<String, String> LIMITS =
      Map.of("jdk.xml.maxGeneralEntitySizeLimit", "0", "jdk.xml.totalEntitySizeLimit", "50000000");

  private Sax() {}

  /** Whether a part of a package is XML, by its name. */
  public static boolean isXml(String part) {
    return part.endsWith(".xml") || part.endsWith(".rels");
  }

  /** Parses a part that is to be understood; one with a document type is refused. */
  public static void parse(InputStream xml, DefaultHandler handler) throws IOException {
    SAXParserFactory factory = SAXParserFactory.newDefaultNSInstance();
    try {
      SAXParser parser = opensNothing(factory);
      parser.setProperty("http://xml.org/sax/properties/lexical-handler", new NoDocumentType());
      parser.parse(xml, handler);
    } catch (DocumentType e) {
      throw FileRefused.damaged("a part of it has a document type, which is not read", e);
    } catch (SAXException e) {
      throw FileRefused.damaged(e.getMessage().replaceFirst("\\.$", ""), e);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * A part is well-formed, or refused; a document type is passed over, and nothing of it opened.
   */
  static boolean isWellFormed(InputStream xml) throws IOException, SAXException {
    SAXParserFactory factory = SAXParserFactory.newDefaultInstance();
    try {
      opensNothing(factory).parse(xml, new Deaf());
      return true;
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException(e);
    } catch (CharConversionException e) {
      throw new SAXException(e.getMessage(), e);
    }
  }

  private static SAXParser opensNothing(SAXParserFactory factory)
      throws ParserConfigurationException, SAXException {
    factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
    factory.setFeature(FEATURES + "nonvalidating/load-external-dtd", false);
    factory.setFeature(ENTITIES + "general-entities", false);
    factory.setFeature(ENTITIES + "parameter-entities", false);
    SAXParser parser = factory.newSAXParser();
    parser.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
    parser.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
    for (Map.Entry<String, String> limit : LIMITS.entrySet()) {
      parser.setProperty(limit.getKey(), limit.getValue());
    }
    return parser;
  }

  private static final class DocumentType extends SAXException {
    private static final long serialVersionUID = 1;
  }

  /** Stops where a document type begins, before anything in it is read. */
  private static final class NoDocumentType extends DefaultHandler2 {
    @Override
    public void startDTD(String name, String publicId, String systemId) throws DocumentType {
      throw new DocumentType();
    }
  }

  private static final class Deaf extends DefaultHandler {
    @Override
    public InputSource resolveEntity(String publicId, String systemId) {
      return new InputSource(new StringReader(""));
    }

    @Override
    public void fatalError(org.xml.sax.SAXParseException e) throws SAXException {
      throw e;
    }
  }
}
