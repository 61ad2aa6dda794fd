package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.Place;

/**
 * The drawing in which a sheet's notes have their boxes (ECMA-376 part 4, 19). Programs write it in
 * XML of their own kinds, and other things beside the boxes; so it is taken as text.
 */
final class NoteBoxes {
  static final String TYPE_ID = "_x0000_t202";

  private static final String NAMESPACES =
      " xmlns:v=\"urn:schemas-microsoft-com:vml\""
          + " xmlns:o=\"urn:schemas-microsoft-com:office:office\""
          + " xmlns:x=\"urn:schemas-microsoft-com:office:excel\"";

  private static final String TYPE =
      "<v:shapetype"
          + NAMESPACES
          + " id=\""
          + TYPE_ID
          + "\" coordsize=\"21600,21600\" o:spt=\"202\""
          + " path=\"m,l,21600r21600,l21600,xe\"><v:stroke joinstyle=\"miter\"/>"
          + "<v:path gradientshapeok=\"t\" o:connecttype=\"rect\"/></v:shapetype>";

  private static final Pattern NUMBER = Pattern.compile("_x0000_[si](\\d+)");
  private static final Pattern BOX =
      Pattern.compile("<(\\w+:)?shape\\b.*?</\\1shape\\s*>", Pattern.DOTALL);
  private static final Pattern ROW = Pattern.compile("Row\\s*>\\s*(\\d+)\\s*<");
  private static final Pattern COLUMN = Pattern.compile("Column\\s*>\\s*(\\d+)\\s*<");
  private static final String IS_NOTE = "ObjectType=\"Note\"";

  /** Shapes are numbered in blocks of so many, which a drawing lists. */
  private static final int BLOCK = 1024;

  private static final int WIDTH = 3;
  private static final int HEIGHT = 4;
  private static final int LAST_ROW = 1_048_575;
  private static final int LAST_COLUMN = 16_383;

  private final String xml;
  private final int last;

  private NoteBoxes(String xml, int last) {
    this.xml = xml;
    this.last = last;
  }

  /** A drawing that is there. */
  static NoteBoxes of(byte[] xml) throws IOException {
    String text = new String(Encodings.inUtf8(xml), StandardCharsets.UTF_8);
    if (text.lastIndexOf("</") < 0) {
      throw FileRefused.damaged("the drawing of a sheet's notes cannot be understood", null);
    }
    int last = BLOCK;
    for (Matcher number = NUMBER.matcher(text); number.find(); ) {
      last = Math.max(last, Integer.parseInt(number.group(1)));
    }
    return new NoteBoxes(text, last);
  }

  /** A new drawing, for the sheet of a number. */
  static NoteBoxes ofSheet(int number) {
    String text =
        "<xml"
            + NAMESPACES
            + "><o:shapelayout v:ext=\"edit\"><o:idmap v:ext=\"edit\" data=\""
            + number
            + "\"/></o:shapelayout></xml>";
    return new NoteBoxes(text, number * BLOCK);
  }

  /** The drawing with boxes for more cells, and without those of others. */
  byte[] changed(List<Place> added, Set<Place> removed) {
    String kept =
        removed.isEmpty()
            ? xml
            : BOX.matcher(xml)
                .replaceAll(box -> Matcher.quoteReplacement(without(removed, box.group())));
    int end = kept.lastIndexOf("</");
    StringBuilder all = new StringBuilder(kept.substring(0, end));
    if (!kept.contains("\"" + TYPE_ID + "\"")) {
      all.append(TYPE);
    }
    int number = last;
    for (Place place : added) {
      number++;
      all.append(box(number, place));
    }
    return all.append(kept.substring(end)).toString().getBytes(StandardCharsets.UTF_8);
  }

  /** Hidden until the pointer is on the cell; as large as a sentence or two. */
  private static String box(int number, Place place) {
    return "<v:shape"
        + NAMESPACES
        + " id=\"_x0000_s"
        + number
        + "\" type=\"#"
        + TYPE_ID
        + "\" style=\"position:absolute;visibility:hidden\" fillcolor=\"#ffffe1\""
        + " o:insetmode=\"auto\"><v:fill color2=\"#ffffe1\"/>"
        + "<v:shadow on=\"t\" color=\"black\" obscured=\"t\"/><v:path o:connecttype=\"none\"/>"
        + "<v:textbox style=\"mso-direction-alt:auto\"/><x:ClientData ObjectType=\"Note\">"
        + "<x:MoveWithCells/><x:SizeWithCells/><x:Anchor>"
        + anchor(place.row(), place.column())
        + "</x:Anchor><x:AutoFill>False</x:AutoFill><x:Row>"
        + place.row()
        + "</x:Row><x:Column>"
        + place.column()
        + "</x:Column></x:ClientData></v:shape>";
  }

  /** Right of the cell, and inside of the sheet. */
  private static String anchor(int row, int column) {
    int top = Math.min(row, LAST_ROW - HEIGHT);
    int left = Math.min(column + 1, LAST_COLUMN - WIDTH);
    return left + ",0," + top + ",0," + (left + WIDTH) + ",0," + (top + HEIGHT) + ",0";
  }

  private static int number(Pattern pattern, String text) {
    Matcher found = pattern.matcher(text);
    return found.find() ? Integer.parseInt(found.group(1)) : -1;
  }

  /** The box, or nothing if it is to go. */
  private static String without(Set<Place> removed, String box) {
    boolean goes =
        box.contains(IS_NOTE) && removed.contains(new Place(number(ROW, box), number(COLUMN, box)));
    return goes ? "" : box;
  }
}
