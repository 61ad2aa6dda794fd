package meadcell.batch.book.xlsx;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import meadcell.batch.book.BookSheet.Note;
import meadcell.batch.book.Place;
import meadcell.batch.book.Sax;
import org.xml.sax.Attributes;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * The notes of one sheet: their texts (ECMA-376 part 1, 18.7) and the boxes that show them (part 4,
 * 19.1). New ones are put behind the others; whatever else the two parts hold stays.
 */
final class SheetNotes {
  static final String NO_TEXTS =
      "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n"
          + "<comments xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">"
          + "<authors/><commentList/></comments>";

  private final byte[] texts;
  private final NoteBoxes boxes;
  private final Map<Place, Note> notes = new HashMap<>();
  private final Set<Place> changed = new HashSet<>();
  private final Set<Place> before;
  private final List<String> authors = new ArrayList<>();

  /**
   * Reads the notes of a sheet.
   *
   * @param texts the part with their texts, in UTF-8
   */
  SheetNotes(byte[] texts, NoteBoxes boxes) throws IOException {
    this.texts = texts;
    this.boxes = boxes;
    Sax.parse(new ByteArrayInputStream(texts), new Reader());
    before = Set.copyOf(notes.keySet());
  }

  private final class Reader extends DefaultHandler {
    private final StringBuilder text = new StringBuilder();
    private Place place;
    private int author;
    private boolean isText;
    private boolean isSpoken;

    @Override
    public void startElement(String uri, String name, String qualified, Attributes attributes)
        throws SAXException {
      switch (name) {
        case "author" -> text.setLength(0);
        case "comment" -> {
          if (attributes.getValue("ref") == null) {
            throw new SAXException("a note has no cell");
          }
          place = Place.of(attributes.getValue("ref"));
          String index = attributes.getValue("authorId");
          author = index == null ? -1 : Integer.parseInt(index.strip());
          text.setLength(0);
        }
        case "rPh" -> isSpoken = true;
        default -> {}
      }
      isText = (name.equals("t") || name.equals("author")) && !isSpoken;
    }

    @Override
    public void characters(char[] chars, int start, int length) {
      if (isText) {
        text.append(chars, start, length);
      }
    }

    @Override
    public void endElement(String uri, String name, String qualified) {
      isText = false;
      switch (name) {
        case "author" -> authors.add(text.toString());
        case "rPh" -> isSpoken = false;
        case "comment" -> {
          String by = author < 0 || author >= authors.size() ? "" : authors.get(author);
          notes.put(place, new Note(by, SharedTexts.unescaped(text.toString())));
        }
        default -> {}
      }
    }
  }

  Optional<Note> get(Place place) {
    return Optional.ofNullable(notes.get(place));
  }

  void put(Place place, Note note) {
    notes.put(place, note);
    changed.add(place);
  }

  void remove(Place place) {
    if (notes.remove(place) != null) {
      changed.add(place);
    }
  }

  boolean isChanged() {
    return !changed.isEmpty();
  }

  // ---- writing ----------------------------------------------------------------------------

  /** The part with the texts. */
  byte[] changedTexts() {
    XmlPart xml = new XmlPart(texts);
    Map<String, Integer> numbers = new HashMap<>();
    TagScanner tags = xml.tags();
    while (tags.next()) {
      if (tags.is("authors") && !tags.isEnd()) {
        addAuthors(xml, numbers);
      } else if (tags.is("comment") && !tags.isEnd()) {
        Place place = Place.of(tags.attribute("ref"));
        int start = tags.start();
        tags.toEnd("comment");
        if (changed.contains(place)) {
          xml.replace(start, tags.end(), "");
        }
      }
    }
    for (tags = xml.tags(); tags.next(); ) {
      if (tags.is("commentList") && !tags.isEnd()) {
        xml.append(tags, "commentList", added(tags.prefix(), numbers));
        break;
      }
    }
    return xml.changed();
  }

  private void addAuthors(XmlPart xml, Map<String, Integer> numbers) {
    List<String> all = new ArrayList<>(authors);
    for (Place place : changed) {
      Note note = notes.get(place);
      if (note != null && !all.contains(note.author())) {
        all.add(note.author());
        TagScanner list = xml.tags();
        while (list.next() && !list.is("authors")) {
          // to the list
        }
        String name = list.prefix() + "author";
        xml.append(
            list, "authors", "<" + name + ">" + XmlText.escaped(note.author()) + "</" + name + ">");
      }
    }
    all.forEach(author -> numbers.putIfAbsent(author, all.indexOf(author)));
  }

  private String added(String prefix, Map<String, Integer> numbers) {
    StringBuilder text = new StringBuilder();
    for (Place place : changed.stream().sorted(Place.DOWN).toList()) {
      Note note = notes.get(place);
      if (note == null) {
        continue;
      }
      String t = prefix + "t";
      text.append("<" + prefix + "comment ref=\"" + place.a1() + "\" authorId=\"")
          .append(numbers.get(note.author()))
          .append("\"><" + prefix + "text><" + t + " xml:space=\"preserve\">")
          .append(XmlText.escaped(note.text()))
          .append("</" + t + "></" + prefix + "text></" + prefix + "comment>");
    }
    return text.toString();
  }

  /** The part with the boxes. */
  byte[] changedBoxes() {
    List<Place> added = new ArrayList<>();
    Set<Place> removed = new HashSet<>();
    for (Place place : changed.stream().sorted(Place.DOWN).toList()) {
      boolean isThere = notes.containsKey(place);
      if (isThere && !before.contains(place)) {
        added.add(place);
      } else if (!isThere && before.contains(place)) {
        removed.add(place);
      }
    }
    return boxes.changed(added, removed);
  }
}
