package meadcell.batch.book.xlsx;

/** The part that says of what a workbook consists (ECMA-376 part 1, 18.2). */
record MainPart(XmlPart xml, Kind kind) {
  /**
   * Puts a sheet behind the others.
   *
   * @param id of the relation to its part
   */
  void addSheet(String name, String id) {
    int number = 1;
    TagScanner tags = xml.tags();
    while (tags.next()) {
      String used = tags.is("sheet") ? tags.attribute("sheetId") : null;
      number = used == null ? number : Math.max(number, Integer.parseInt(used.strip()) + 1);
    }
    tags = xml.tags();
    while (tags.next() && !tags.is("sheets")) {
      // to the list of sheets
    }
    String relations = XlsxBook.RELATION.substring(0, XlsxBook.RELATION.length() - 1);
    xml.append(
        tags,
        "sheets",
        "<"
            + tags.prefix()
            + "sheet"
            + kind.of(" xmlns:r=\"" + relations + "\"")
            + " name=\""
            + XmlText.escaped(name)
            + "\" sheetId=\""
            + number
            + "\" r:id=\""
            + id
            + "\"/>");
  }

  boolean isChanged() {
    return xml.isChanged();
  }

  byte[] changed() {
    return xml.changed();
  }
}
