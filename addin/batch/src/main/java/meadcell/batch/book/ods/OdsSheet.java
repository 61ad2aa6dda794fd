package meadcell.batch.book.ods;

import static meadcell.batch.book.ods.OdsNames.CALC;
import static meadcell.batch.book.ods.OdsNames.DC;
import static meadcell.batch.book.ods.OdsNames.OFFICE;
import static meadcell.batch.book.ods.OdsNames.TABLE;
import static meadcell.batch.book.ods.OdsNames.TEXT;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.CellError;
import meadcell.batch.book.Figures;
import meadcell.batch.book.Place;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** A sheet of an OpenDocument spreadsheet. */
final class OdsSheet implements BookSheet {
  private static final double SECONDS_PER_DAY = 86400;
  private static final int MILLIMETRES_A_CHARACTER = 2;
  private static final String ARRAY_ROWS = "number-matrix-rows-spanned";
  private static final String ARRAY_COLUMNS = "number-matrix-columns-spanned";

  private final OdsBook book;
  private final Element table;
  private final OdsGrid grid;
  private final Map<Element, CellContent> known = new IdentityHashMap<>();
  private List<Span> arrays;

  OdsSheet(OdsBook book, Element table) {
    this.book = book;
    this.table = table;
    this.grid = new OdsGrid(table);
  }

  Element table() {
    return table;
  }

  @Override
  public String name() {
    return table.getAttributeNS(TABLE, "name");
  }

  @Override
  public boolean isProtected() {
    return table.getAttributeNS(TABLE, "protected").equals("true");
  }

  @Override
  public int lastRow() {
    return grid.lastRow();
  }

  @Override
  public int lastColumn(int row) {
    return grid.lastColumn(row);
  }

  // ---- reading ----------------------------------------------------------------------------

  @Override
  public CellContent content(Place place) {
    Element cell = grid.cell(place.row(), place.column());
    if (cell == null || !cell.hasAttributes() && !cell.hasChildNodes()) {
      return CellContent.BLANK;
    }
    return known.computeIfAbsent(cell, this::read);
  }

  private CellContent read(Element cell) {
    String formula = cell.getAttributeNS(TABLE, "formula");
    String type = cell.getAttributeNS(OFFICE, "value-type");
    CellContent.Look look =
        switch (type) {
          case "percentage" -> CellContent.Look.PERCENT;
          case "date", "time" -> CellContent.Look.DATE;
          default -> CellContent.Look.PLAIN;
        };
    return new CellContent(
        value(cell, type), formula.isEmpty() ? null : OpenFormula.toA1(formula), look);
  }

  private Object value(Element cell, String type) {
    if (cell.getAttributeNS(CALC, "value-type").equals("error")) {
      return new CellError(text(cell));
    }
    return switch (type) {
      case "float", "percentage", "currency" ->
          Double.valueOf(cell.getAttributeNS(OFFICE, "value"));
      case "date" -> dayNumber(cell.getAttributeNS(OFFICE, "date-value"));
      case "time" ->
          java.time.Duration.parse(cell.getAttributeNS(OFFICE, "time-value")).toSeconds()
              / SECONDS_PER_DAY;
      case "boolean" -> cell.getAttributeNS(OFFICE, "boolean-value").equals("true");
      case "string" ->
          cell.hasAttributeNS(OFFICE, "string-value")
              ? cell.getAttributeNS(OFFICE, "string-value")
              : text(cell);
      default -> cell.getLastChild() == null ? null : text(cell); // a formula that gave no text
    };
  }

  private Double dayNumber(String date) {
    LocalDateTime time =
        date.contains("T") ? LocalDateTime.parse(date) : LocalDate.parse(date).atStartOfDay();
    LocalDateTime start = book.nullDate().atStartOfDay();
    return ChronoUnit.SECONDS.between(start, time) / SECONDS_PER_DAY;
  }

  /** The paragraphs of a cell, without those of its note. */
  private static String text(Element cell) {
    List<String> paragraphs = new ArrayList<>();
    for (Node node = cell.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (OdsNames.is(node, TEXT, "p")) {
        paragraphs.add(node.getTextContent());
      }
    }
    return String.join("\n", paragraphs);
  }

  @Override
  public Place mergedEnd(Place place) {
    Element cell = grid.cell(place.row(), place.column());
    return cell == null
        ? place
        : new Place(
            place.row() + OdsNames.number(cell, TABLE, "number-rows-spanned") - 1,
            place.column() + OdsNames.number(cell, TABLE, "number-columns-spanned") - 1);
  }

  @Override
  public boolean isCovered(Place place) {
    Element cell = grid.cell(place.row(), place.column());
    return cell != null && OdsNames.is(cell, TABLE, "covered-table-cell");
  }

  @Override
  public boolean isHidden(int row) {
    Element line = grid.row(row);
    String visibility = line == null ? "" : line.getAttributeNS(TABLE, "visibility");
    return visibility.equals("collapse") || visibility.equals("filter");
  }

  @Override
  public Span array(Place place) {
    if (arrays == null) {
      arrays = findArrays();
    }
    return arrays.stream().filter(span -> span.contains(place)).findFirst().orElse(null);
  }

  private List<Span> findArrays() {
    List<Span> found = new ArrayList<>();
    for (int row = 0; row <= lastRow(); row++) {
      for (int column = 0; column <= lastColumn(row); column++) {
        Element cell = grid.cell(row, column);
        if (cell != null && cell.hasAttributeNS(TABLE, ARRAY_ROWS)) {
          int lastRow = row + OdsNames.number(cell, TABLE, ARRAY_ROWS) - 1;
          int lastColumn = column + OdsNames.number(cell, TABLE, ARRAY_COLUMNS) - 1;
          found.add(new Span(new Place(row, column), new Place(lastRow, lastColumn)));
        }
      }
    }
    return found;
  }

  // ---- writing ----------------------------------------------------------------------------

  private Element cellToWrite(Place place) {
    Element cell = grid.ownCell(place.row(), place.column());
    known.remove(cell);
    return cell;
  }

  @Override
  public void putFormula(Place place, String formula) {
    clear(place);
    cellToWrite(place).setAttributeNS(TABLE, "table:formula", OpenFormula.fromA1(formula));
  }

  @Override
  public void putValue(Place place, Object value) {
    Element cell = cellToWrite(place);
    removeValue(cell);
    if (value instanceof Double number) {
      type(cell, "float", "float");
      cell.setAttributeNS(OFFICE, "office:value", Figures.of(number));
      paragraph(cell, Figures.of(number));
    } else if (value instanceof Boolean truth) {
      type(cell, "boolean", "boolean");
      cell.setAttributeNS(OFFICE, "office:boolean-value", truth.toString());
      paragraph(cell, truth ? "TRUE" : "FALSE");
    } else if (value instanceof CellError error) {
      type(cell, "string", "error");
      cell.setAttributeNS(OFFICE, "office:string-value", "");
      paragraph(cell, error.text());
    } else {
      type(cell, "string", "string");
      paragraph(cell, (String) value);
    }
  }

  private static void type(Element cell, String office, String calc) {
    cell.setAttributeNS(OFFICE, "office:value-type", office);
    cell.setAttributeNS(CALC, "calcext:value-type", calc);
  }

  private static void paragraph(Element cell, String text) {
    Element paragraph = cell.getOwnerDocument().createElementNS(TEXT, "text:p");
    paragraph.setTextContent(text);
    cell.appendChild(paragraph);
  }

  private static void removeValue(Element cell) {
    for (String name :
        new String[] {
          "value-type", "value", "date-value", "time-value", "boolean-value", "string-value"
        }) {
      cell.removeAttributeNS(OFFICE, name);
    }
    cell.removeAttributeNS(CALC, "value-type");
    for (Node node = cell.getFirstChild(); node != null; ) {
      Node next = node.getNextSibling();
      if (OdsNames.is(node, TEXT, "p")) {
        cell.removeChild(node);
      }
      node = next;
    }
  }

  @Override
  public void freeze(Place place) {
    Element cell = cellToWrite(place);
    cell.removeAttributeNS(TABLE, "formula");
    cell.removeAttributeNS(TABLE, ARRAY_ROWS);
    cell.removeAttributeNS(TABLE, ARRAY_COLUMNS);
    arrays = null;
  }

  @Override
  public void clear(Place place) {
    Element cell = cellToWrite(place);
    cell.removeAttributeNS(TABLE, "formula");
    removeValue(cell);
  }

  @Override
  public void copyStyle(Place from, Place to, String format) {
    Element target = cellToWrite(to);
    Element source = grid.cell(from.row(), from.column());
    String style = source == null ? "" : source.getAttributeNS(TABLE, "style-name");
    String own = target.getAttributeNS(TABLE, "style-name");
    if (own.isEmpty() || own.equals("Default")) {
      String wanted = book.style(style, format);
      if (!wanted.isEmpty()) {
        target.setAttributeNS(TABLE, "table:style-name", wanted);
      }
    }
  }

  @Override
  public void widen(int column, int characters) {
    grid.ownColumn(column)
        .setAttributeNS(
            TABLE, "table:style-name", book.columnStyle(characters * MILLIMETRES_A_CHARACTER));
  }

  // ---- notes ------------------------------------------------------------------------------

  private Element annotation(Place place) {
    Element cell = grid.cell(place.row(), place.column());
    for (Node node = cell == null ? null : cell.getFirstChild();
        node != null;
        node = node.getNextSibling()) {
      if (OdsNames.is(node, OFFICE, "annotation")) {
        return (Element) node;
      }
    }
    return null;
  }

  @Override
  public Optional<Note> note(Place place) {
    Element annotation = annotation(place);
    if (annotation == null) {
      return Optional.empty();
    }
    String author = "";
    for (Node node = annotation.getFirstChild(); node != null; node = node.getNextSibling()) {
      author = OdsNames.is(node, DC, "creator") ? node.getTextContent() : author;
    }
    return Optional.of(new Note(author, text(annotation)));
  }

  @Override
  public void putNote(Place place, Note note) {
    Element cell = cellToWrite(place);
    removeNote(place);
    Element annotation = cell.getOwnerDocument().createElementNS(OFFICE, "office:annotation");
    Element creator = cell.getOwnerDocument().createElementNS(DC, "dc:creator");
    creator.setTextContent(note.author());
    annotation.appendChild(creator);
    paragraph(annotation, note.text());
    cell.insertBefore(annotation, cell.getFirstChild());
  }

  @Override
  public void removeNote(Place place) {
    Element annotation = annotation(place);
    if (annotation != null) {
      Element cell = cellToWrite(place);
      cell.removeChild(annotation(place));
    }
  }
}
