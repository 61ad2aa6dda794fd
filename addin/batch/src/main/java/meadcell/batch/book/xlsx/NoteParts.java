package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import meadcell.batch.book.xlsx.Relations.Relation;
import meadcell.batch.book.zip.PackageParts;

/** The two parts that hold the notes of a sheet, and how it relates to them. */
final class NoteParts {
  private static final String LINK =
      "<legacyDrawing xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\""
          + " xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\""
          + " r:id=\"%s\"/>";
  private static final String TEXTS =
      "application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml";
  private static final String BOXES = "application/vnd.openxmlformats-officedocument.vmlDrawing";

  private final XlsxBook book;
  private final String sheetPart;
  private final int index;
  private final String boxesId;
  private Relations relations;
  private SheetNotes notes;
  private String textsPart;
  private String boxesPart;

  /** Id of the relation to a new drawing with the boxes of notes, or nothing. */
  private String newBoxes = "";

  /**
   * The notes of a sheet.
   *
   * @param boxesId id of its relation to the drawing with their boxes, or nothing
   */
  NoteParts(XlsxBook book, String sheetPart, int index, String boxesId) {
    this.book = book;
    this.sheetPart = sheetPart;
    this.index = index;
    this.boxesId = boxesId;
  }

  /** The notes, read when they are first asked for. */
  SheetNotes read() {
    if (notes == null) {
      try {
        notes = readNow();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
    return notes;
  }

  private SheetNotes readNow() throws IOException {
    PackageParts parts = book.parts();
    relations = new Relations(parts, sheetPart);
    textsPart = relations.first("comments").map(Relation::part).orElse(null);
    boxesPart = relations.withId(boxesId).map(Relation::part).orElse(null);
    byte[] xml =
        textsPart == null
            ? book.kind().of(NoteTexts.EMPTY).getBytes(StandardCharsets.UTF_8)
            : Encodings.inUtf8(parts.read(textsPart));
    NoteBoxes boxes =
        boxesPart == null ? NoteBoxes.ofSheet(index + 1) : NoteBoxes.of(parts.read(boxesPart));
    return new SheetNotes(new NoteTexts(xml), boxes);
  }

  /** The parts that are to be written. */
  Map<String, PackageParts.Content> changed() {
    Map<String, PackageParts.Content> parts = new HashMap<>();
    if (notes != null && notes.isChanged()) {
      relate();
      parts.put(textsPart, target -> target.write(notes.changedTexts()));
      parts.put(boxesPart, target -> target.write(notes.changedBoxes()));
      if (relations.isChanged()) {
        parts.put(relations.name(), target -> target.write(relations.changed()));
      }
    }
    return parts;
  }

  private void relate() {
    if (textsPart == null) {
      textsPart = book.newPart("xl/comments", ".xml", TEXTS);
      relations.add(book.kind().of(XlsxBook.RELATION + "comments"), textsPart);
    }
    if (boxesPart == null) {
      boxesPart = book.newPart("xl/drawings/vmlDrawing", ".vml", BOXES);
      newBoxes = relations.add(book.kind().of(XlsxBook.RELATION + "vmlDrawing"), boxesPart);
    }
  }

  /** The element of the sheet that links to a new drawing, or nothing. */
  String newLink() {
    return newBoxes.isEmpty() ? "" : book.kind().of(LINK.formatted(newBoxes));
  }
}
