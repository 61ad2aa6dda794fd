package meadcell.batch.book.ods;

import static meadcell.batch.book.ods.OdsNames.META;
import static meadcell.batch.book.ods.OdsNames.OFFICE;
import static meadcell.batch.book.ods.OdsNames.TABLE;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.DefinedName;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Limits;
import meadcell.batch.book.NamedTable;
import meadcell.batch.book.Sax;
import meadcell.batch.book.Setting;
import meadcell.batch.book.zip.PackageParts;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/**
 * An OpenDocument spreadsheet: the cells of {@code content.xml} are changed, every other part is
 * copied byte for byte.
 */
final class OdsBook implements Book {
  private static final String CONTENT = "content.xml";
  private static final String META_XML = "meta.xml";
  private static final String BUILT_IN = "_xlnm."; // print areas and the like

  private static final LocalDate USUAL_DAY = LocalDate.of(1899, 12, 30);

  private final PackageParts parts;
  private final Document content;
  private final Document meta;
  private final List<OdsSheet> sheets = new ArrayList<>();
  private final OdsStyles styles;
  private final LocalDate nullDate;
  private final Set<Setting> settings = EnumSet.noneOf(Setting.class);
  private boolean metaChanged;

  /** Null until they are asked for; this tool changes none. */
  private List<DefinedName> names;

  OdsBook(byte[] bytes, Limits limits) throws IOException {
    parts = new PackageParts(bytes, limits);
    if (parts.text("META-INF/manifest.xml").contains("encryption-data")) {
      throw new FileRefused(
          "An .ods with a password cannot be read here; save it without one first.");
    }
    content = parse(parts.read(CONTENT));
    styles = new OdsStyles(content);
    meta = parts.has(META_XML) ? parse(parts.read(META_XML)) : null;
    NodeList tables = content.getElementsByTagNameNS(TABLE, "table");
    for (int i = 0; i < tables.getLength(); i++) {
      if (OdsNames.is(tables.item(i).getParentNode(), OFFICE, "spreadsheet")) {
        sheets.add(new OdsSheet(this, (Element) tables.item(i)));
      }
    }
    NodeList dates = content.getElementsByTagNameNS(TABLE, "null-date");
    String start =
        dates.getLength() == 0 ? "" : ((Element) dates.item(0)).getAttributeNS(TABLE, "date-value");
    nullDate = start.isEmpty() ? USUAL_DAY : LocalDate.parse(start);
    readSettings();
  }

  /** OpenDocument 1.3 part 3, 9.4.1; where the element is missing, its defaults hold. */
  private void readSettings() {
    NodeList found = content.getElementsByTagNameNS(TABLE, "calculation-settings");
    Element given =
        found.getLength() == 0
            ? content.createElementNS(TABLE, "table:calculation-settings")
            : (Element) found.item(0);
    if (!nullDate.equals(USUAL_DAY)) {
      settings.add(Setting.OTHER_DAYS);
    }
    if (is(given, "precision-as-shown", false)) {
      settings.add(Setting.AS_SHOWN);
    }
    if (is(given, "case-sensitive", true)) {
      settings.add(Setting.CAPITALS);
    }
    if (!is(given, "use-wildcards", false) // which stand above regular expressions
        || !is(given, "search-criteria-must-apply-to-whole-cell", true)) {
      settings.add(Setting.PATTERNS);
    }
  }

  private static boolean is(Element settings, String name, boolean otherwise) {
    String value = settings.getAttributeNS(TABLE, name);
    return value.isEmpty() ? otherwise : value.equals("true");
  }

  private static Document parse(byte[] xml) throws IOException {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
      Sax.LIMITS.forEach(factory::setAttribute);
      var builder = factory.newDocumentBuilder();
      builder.setErrorHandler(null);
      return builder.parse(new ByteArrayInputStream(xml));
    } catch (SAXException e) {
      throw FileRefused.damaged(e.getMessage(), e);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException(e);
    }
  }

  LocalDate nullDate() {
    return nullDate;
  }

  OdsStyles styles() {
    return styles;
  }

  @Override
  public Set<Setting> settings() {
    return settings;
  }

  @Override
  public List<OdsSheet> sheets() {
    return sheets;
  }

  @Override
  public boolean isStructureProtected() {
    return spreadsheet().getAttributeNS(TABLE, "structure-protected").equals("true");
  }

  private Element spreadsheet() {
    return (Element) content.getElementsByTagNameNS(OFFICE, "spreadsheet").item(0);
  }

  @Override
  public BookSheet addSheet(String name) {
    Element table = content.createElementNS(TABLE, "table:table");
    table.setAttributeNS(TABLE, "table:name", name);
    Node spreadsheet = spreadsheet();
    Node last = sheets.isEmpty() ? null : sheets.get(sheets.size() - 1).table();
    spreadsheet.insertBefore(
        table, last == null ? spreadsheet.getFirstChild() : last.getNextSibling());
    sheets.add(new OdsSheet(this, table));
    return sheets.get(sheets.size() - 1);
  }

  @Override
  public List<String> caveats() {
    return parts.has("META-INF/documentsignatures.xml")
        ? List.of("The file is signed; the change makes the signature invalid.")
        : List.of();
  }

  private Element userDefined(String name) {
    NodeList all = meta.getElementsByTagNameNS(META, "user-defined");
    for (int i = 0; i < all.getLength(); i++) {
      Element property = (Element) all.item(i);
      if (property.getAttributeNS(META, "name").equals(name)) {
        return property;
      }
    }
    return null;
  }

  @Override
  public Optional<String> property(String name) {
    return Optional.ofNullable(meta == null ? null : userDefined(name)).map(Node::getTextContent);
  }

  @Override
  public void property(String name, String value) {
    if (meta == null) {
      return; // without this part nothing can be remembered; a refresh then keeps what it finds
    }
    Element property = userDefined(name);
    if (property == null) {
      property = meta.createElementNS(META, "meta:user-defined");
      property.setAttributeNS(META, "meta:name", name);
      meta.getElementsByTagNameNS(OFFICE, "meta").item(0).appendChild(property);
    }
    property.setTextContent(value);
    metaChanged = true;
  }

  @Override
  public List<DefinedName> names() {
    if (names == null) {
      names = new ArrayList<>();
      addNames("named-range");
      addNames("named-expression");
    }
    return names;
  }

  private void addNames(String kind) {
    NodeList elements = content.getElementsByTagNameNS(TABLE, kind);
    for (int i = 0; i < elements.getLength(); i++) {
      Element element = (Element) elements.item(i);
      String name = element.getAttributeNS(TABLE, "name");
      if (!name.startsWith(BUILT_IN)) {
        String expression = element.getAttributeNS(TABLE, "expression");
        String address = element.getAttributeNS(TABLE, "cell-range-address");
        String stored = expression.isEmpty() ? "=[" + address + "]" : "=" + expression;
        names.add(new DefinedName(name, sheetOf(element), OpenFormula.toA1(stored), false));
      }
    }
  }

  /** The position of the sheet that a name belongs to. */
  private int sheetOf(Element range) {
    Node owner = range.getParentNode().getParentNode();
    for (int i = 0; i < sheets.size(); i++) {
      if (sheets.get(i).table() == owner) {
        return i;
      }
    }
    return DefinedName.ANYWHERE;
  }

  @Override
  public List<NamedTable> tables() {
    return List.of(); // formulas are stored with plain addresses
  }

  @Override
  public int mostRows() {
    return 1 << 20;
  }

  @Override
  public void write(OutputStream out) throws IOException {
    Map<String, PackageParts.Content> changed = new HashMap<>();
    byte[] cells = serialized(content);
    changed.put(CONTENT, target -> target.write(cells));
    if (metaChanged) {
      byte[] marks = serialized(meta);
      changed.put(META_XML, target -> target.write(marks));
    }
    parts.write(changed, out);
  }

  private static byte[] serialized(Document document) throws IOException {
    try {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      TransformerFactory.newInstance()
          .newTransformer()
          .transform(new DOMSource(document), new StreamResult(bytes));
      return bytes.toByteArray();
    } catch (TransformerException e) {
      throw new IOException(e);
    }
  }

  @Override
  public void close() {
    // everything is in memory
  }
}
