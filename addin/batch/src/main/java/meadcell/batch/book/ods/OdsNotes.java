package meadcell.batch.book.ods;

import static meadcell.batch.book.ods.OdsNames.DC;
import static meadcell.batch.book.ods.OdsNames.OFFICE;

import java.util.Optional;
import meadcell.batch.book.BookSheet.Note;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** The notes of cells' elements. */
final class OdsNotes {
  private OdsNotes() {}

  private static Element annotation(Element cell) {
    for (Node node = cell.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (OdsNames.is(node, OFFICE, "annotation")) {
        return (Element) node;
      }
    }
    return null;
  }

  static Optional<Note> read(Element cell) {
    return Optional.ofNullable(annotation(cell))
        .map(annotation -> new Note(author(annotation), OdsValues.text(annotation)));
  }

  private static String author(Element annotation) {
    for (Node node = annotation.getFirstChild(); node != null; node = node.getNextSibling()) {
      if (OdsNames.is(node, DC, "creator")) {
        return node.getTextContent();
      }
    }
    return "";
  }

  static void put(Element cell, Note note) {
    remove(cell);
    Element annotation = cell.getOwnerDocument().createElementNS(OFFICE, "office:annotation");
    Element creator = cell.getOwnerDocument().createElementNS(DC, "dc:creator");
    creator.setTextContent(note.author());
    annotation.appendChild(creator);
    OdsValues.paragraph(annotation, note.text());
    cell.insertBefore(annotation, cell.getFirstChild());
  }

  static void remove(Element cell) {
    Element annotation = annotation(cell);
    if (annotation != null) {
      cell.removeChild(annotation);
    }
  }
}
