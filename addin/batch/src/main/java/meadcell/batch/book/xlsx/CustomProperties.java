package meadcell.batch.book.xlsx;

import java.util.Optional;

/** The properties that a workbook may have beside the usual ones (ECMA-376 part 1, 22.3). */
final class CustomProperties {
  static final String EMPTY =
      "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n"
          + "<Properties"
          + " xmlns=\"http://schemas.openxmlformats.org/officeDocument/2006/custom-properties\"/>";
  private static final String TEXT =
      "vt:lpwstr xmlns:vt=\"http://schemas.openxmlformats.org/officeDocument/2006/docPropsVTypes\"";

  /** The set of such properties as a whole; the same in every file. */
  private static final String SET = "{D5CDD505-2E9C-101B-9397-08002B2CF9AE}";

  private XmlPart xml;
  private boolean isChanged;
  private final Kind kind;

  CustomProperties(XmlPart xml, Kind kind) {
    this.xml = xml;
    this.kind = kind;
  }

  /** Moves to the text of a property; false where there is none of the name. */
  private static boolean find(TagScanner tags, String name) {
    while (tags.next()) {
      if (tags.is("property") && name.equals(XmlText.unescaped(tags.attribute("name")))) {
        return tags.next() && tags.is("lpwstr");
      }
    }
    return false;
  }

  Optional<String> get(String name) {
    TagScanner tags = xml.tags();
    if (!find(tags, name)) {
      return Optional.empty();
    }
    if (tags.isEmpty()) {
      return Optional.of("");
    }
    int start = tags.end();
    tags.next();
    return Optional.of(XmlText.unescaped(xml.text(start, tags.start())));
  }

  void put(String name, String value) {
    edit(name, value);
    xml = new XmlPart(xml.changed()); // what was put can be read, and put again
    isChanged = true;
  }

  private void edit(String name, String value) {
    TagScanner tags = xml.tags();
    if (find(tags, name) && !tags.isEmpty()) {
      int start = tags.end();
      tags.next();
      xml.replace(start, tags.start(), XmlText.escaped(value));
      return;
    }
    int number = 1; // the first that a property may have is 2
    for (TagScanner each = xml.tags(); each.next(); ) {
      String id = each.is("property") ? each.attribute("pid") : null;
      number = id == null ? number : Math.max(number, Integer.parseInt(id.strip()));
    }
    TagScanner list = xml.tags();
    while (list.next() && !list.is("Properties")) {
      // to the list itself
    }
    String text =
        "<"
            + list.prefix()
            + "property fmtid=\""
            + SET
            + "\" pid=\""
            + (number + 1)
            + "\" name=\""
            + XmlText.escaped(name)
            + "\"><"
            + kind.of(TEXT)
            + ">"
            + XmlText.escaped(value)
            + "</vt:lpwstr></"
            + list.prefix()
            + "property>";
    xml.append(list, "Properties", text);
  }

  boolean isChanged() {
    return isChanged;
  }

  byte[] changed() {
    return xml.changed();
  }
}
