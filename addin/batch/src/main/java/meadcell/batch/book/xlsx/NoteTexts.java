package meadcell.batch.book.xlsx;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import meadcell.batch.book.BookSheet.Note;
import meadcell.batch.book.Place;
import meadcell.batch.book.Sax;
import org.xml.sax.Attributes;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/** The texts of a sheet's notes (ECMA-376 part 1, 18.7). What is not of a changed note stays. */
final class NoteTexts {
  static final String EMPTY =
      "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n"
          + "<comments xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">"
          + "<authors/><commentList/></comments>";

  private final byte[] part;
  private final Map<Place, Note> notes = new HashMap<>();
  private final List<String> authors = new ArrayList<>();

  /**
   * Reads them.
   *
   * @param part in UTF-8
   */
  NoteTexts(byte[] part) throws IOException {
    this.part = part;
    Sax.parse(new ByteArrayInputStream(part), new Reader());
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

  Map<Place, Note> read() {
    return notes;
  }

  /**
   * The part with other notes.
   *
   * @param notes all that there are now
   * @param changed the cells whose notes are other ones, or gone
   */
  byte[] changed(Map<Place, Note> notes, Set<Place> changed) {
    XmlPart xml = new XmlPart(part);
    List<Place> added = changed.stream().filter(notes::containsKey).sorted(Place.DOWN).toList();
    Map<String, Integer> numbers = new HashMap<>();
    TagScanner tags = xml.tags();
    while (tags.next()) {
      if (tags.is("authors") && !tags.isEnd()) {
        numbers.putAll(addAuthors(xml, added, notes));
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
        xml.append(tags, "commentList", elements(tags.prefix(), numbers, added, notes));
        break;
      }
    }
    return xml.changed();
  }

  /** Every author's number, new ones behind the others. */
  private Map<String, Integer> addAuthors(XmlPart xml, List<Place> added, Map<Place, Note> notes) {
    List<String> all = new ArrayList<>(authors);
    for (Place place : added) {
      String author = notes.get(place).author();
      if (!all.contains(author)) {
        all.add(author);
        TagScanner list = xml.tags();
        while (list.next() && !list.is("authors")) {
          // to the list
        }
        String name = list.prefix() + "author";
        xml.append(list, "authors", "<" + name + ">" + XmlText.escaped(author) + "</" + name + ">");
      }
    }
    Map<String, Integer> numbers = new HashMap<>();
    all.forEach(author -> numbers.putIfAbsent(author, all.indexOf(author)));
    return numbers;
  }

  private static String elements(
      String prefix, Map<String, Integer> numbers, List<Place> added, Map<Place, Note> notes) {
    StringBuilder text = new StringBuilder();
    for (Place place : added) {
      Note note = notes.get(place);
      String t = prefix + "t";
      text.append("<" + prefix + "comment ref=\"" + place.a1() + "\" authorId=\"")
          .append(numbers.get(note.author()))
          .append("\"><" + prefix + "text><" + t + " xml:space=\"preserve\">")
          .append(XmlText.escaped(note.text()))
          .append("</" + t + "></" + prefix + "text></" + prefix + "comment>");
    }
    return text.toString();
  }
}
