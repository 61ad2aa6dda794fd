package meadcell.batch.safety;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.jar.JarFile;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.Source;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import javax.xml.validation.Validator;
import meadcell.batch.book.Packages;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.bootstrap.DOMImplementationRegistry;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSInput;
import org.xml.sax.ErrorHandler;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;

/**
 * The schemas of ECMA-376, as Apache POI packs them with its classes. They are read out of the jar,
 * which the build puts beside the classes and not among them: it would hide classes that the
 * lighter jar of the tool does not have.
 */
final class Schemas {
  private static final Path JAR = Path.of("target/validators/poi-ooxml-full.jar");
  private static final String FOLDER = "org/apache/poi/schemas/ooxml/src/";
  private static final String COMPATIBILITY =
      "http://schemas.openxmlformats.org/markup-compatibility/2006";
  private static final String XML = "http://www.w3.org/XML/1998/namespace";

  /** The schema of each kind of root element that is looked at. */
  private static final Map<String, String> BY_NAMESPACE =
      Map.of(
          "http://schemas.openxmlformats.org/spreadsheetml/2006/main", "sml.xsd",
          "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing",
              "dml-spreadsheetDrawing.xsd",
          "http://schemas.openxmlformats.org/drawingml/2006/chart", "dml-chart.xsd",
          "http://schemas.openxmlformats.org/officeDocument/2006/custom-properties",
              "shared-documentPropertiesCustom.xsd",
          "http://schemas.openxmlformats.org/officeDocument/2006/extended-properties",
              "shared-documentPropertiesExtended.xsd",
          "http://schemas.openxmlformats.org/package/2006/relationships", "opc-relationships.xsd");

  private final Map<String, Schema> schemas = new HashMap<>();
  private final DOMImplementationLS factory;

  Schemas() throws ReflectiveOperationException {
    factory =
        (DOMImplementationLS) DOMImplementationRegistry.newInstance().getDOMImplementation("LS");
  }

  /** All that is wrong in a package, each with its part. */
  List<String> errors(byte[] zip) throws Exception {
    List<String> errors = new ArrayList<>();
    for (Map.Entry<String, byte[]> part : new TreeMap<>(Packages.parts(zip)).entrySet()) {
      if (part.getKey().endsWith(".xml") || part.getKey().endsWith(".rels")) {
        for (String error : errorsOf(part.getValue())) {
          errors.add(part.getKey() + ": " + error);
        }
      }
    }
    return errors;
  }

  private List<String> errorsOf(byte[] xml) throws Exception {
    DocumentBuilderFactory builders = DocumentBuilderFactory.newDefaultNSInstance();
    Document document = builders.newDocumentBuilder().parse(new ByteArrayInputStream(xml));
    Element root = document.getDocumentElement();
    String namespace = root.getNamespaceURI();
    if (namespace == null || !BY_NAMESPACE.containsKey(namespace)) {
      return List.of();
    }
    String schema = BY_NAMESPACE.get(namespace);
    withoutExtensions(root, ignorable(root));
    List<String> errors = new ArrayList<>();
    Validator validator = schema(schema).newValidator();
    validator.setErrorHandler(
        new ErrorHandler() {
          @Override
          public void warning(SAXParseException e) {
            // not an error
          }

          @Override
          public void error(SAXParseException e) {
            errors.add(e.getMessage());
          }

          @Override
          public void fatalError(SAXParseException e) {
            errors.add(e.getMessage());
          }
        });
    validator.validate(new DOMSource(document));
    return errors;
  }

  private static Set<String> ignorable(Element root) {
    Set<String> namespaces = new java.util.HashSet<>(Set.of(COMPATIBILITY));
    for (String prefix : root.getAttributeNS(COMPATIBILITY, "Ignorable").split("\\s+")) {
      String namespace = prefix.isEmpty() ? null : root.lookupNamespaceURI(prefix);
      if (namespace != null) {
        namespaces.add(namespace);
      }
    }
    return namespaces;
  }

  /**
   * As part 3 of the standard has it: what may be ignored goes, of alternatives the fallback stays.
   */
  private static void withoutExtensions(Element element, Set<String> ignorable) {
    for (int i = element.getAttributes().getLength() - 1; i >= 0; i--) {
      Node attribute = element.getAttributes().item(i);
      String namespace = attribute.getNamespaceURI();
      if (namespace != null && ignorable.contains(namespace)) {
        element.getAttributes().removeNamedItemNS(namespace, attribute.getLocalName());
      } else if (XML.equals(namespace)) {
        element.getAttributes().removeNamedItemNS(namespace, attribute.getLocalName());
      }
    }
    for (Node node = element.getFirstChild(); node != null; ) {
      Node next = node.getNextSibling();
      if (node instanceof Element child) {
        boolean isAlternative =
            COMPATIBILITY.equals(child.getNamespaceURI())
                && child.getLocalName().equals("AlternateContent");
        if (isAlternative) {
          Element fallback =
              (Element) child.getElementsByTagNameNS(COMPATIBILITY, "Fallback").item(0);
          while (fallback != null && fallback.hasChildNodes()) {
            element.insertBefore(fallback.getFirstChild(), child);
          }
          next = child.getNextSibling();
          element.removeChild(child);
        } else if (ignorable.contains(child.getNamespaceURI())) {
          element.removeChild(child);
        } else {
          withoutExtensions(child, ignorable);
        }
      }
      node = next;
    }
  }

  private Schema schema(String name) throws SAXException, IOException {
    Schema known = schemas.get(name);
    if (known == null) {
      SchemaFactory schemaFactory = SchemaFactory.newDefaultInstance();
      schemaFactory.setResourceResolver(
          (type, namespace, publicId, systemId, base) -> systemId == null ? null : input(systemId));
      Source source = new StreamSource(new ByteArrayInputStream(file(name)), name);
      known = schemaFactory.newSchema(source);
      schemas.put(name, known);
    }
    return known;
  }

  private LSInput input(String systemId) {
    LSInput input = factory.createLSInput();
    try {
      String name = systemId.substring(systemId.lastIndexOf('/') + 1);
      input.setByteStream(new ByteArrayInputStream(file(name)));
      input.setSystemId(name);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return input;
  }

  private static byte[] file(String name) throws IOException {
    if (name.equals("xml.xsd")) {
      String xml =
          "<xsd:schema xmlns:xsd=\""
              + XMLConstants.W3C_XML_SCHEMA_NS_URI
              + "\" targetNamespace=\""
              + XML
              + "\"><xsd:attribute name=\"space\"/><xsd:attribute name=\"lang\"/>"
              + "<xsd:attribute name=\"base\"/></xsd:schema>";
      return xml.getBytes(java.nio.charset.StandardCharsets.UTF_8);
    }
    try (JarFile jar = new JarFile(JAR.toFile());
        InputStream in = jar.getInputStream(jar.getEntry(FOLDER + name))) {
      return in.readAllBytes();
    }
  }
}
