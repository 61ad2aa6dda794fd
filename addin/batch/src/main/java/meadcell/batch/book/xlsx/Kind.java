package meadcell.batch.book.xlsx;

/** The two kinds of the format: the usual one, and the strict one of ISO 29500 (its annex A). */
enum Kind {
  USUAL,
  STRICT;

  private static final String OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/";
  private static final String STRICT_OFFICE = "http://purl.oclc.org/ooxml/officeDocument/";
  private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  private static final String STRICT_MAIN = "http://purl.oclc.org/ooxml/spreadsheetml/main";

  /** The kind of a workbook by the type of the relation that leads to it. */
  static Kind byRelation(String type) {
    return type.startsWith(STRICT_OFFICE) ? STRICT : USUAL;
  }

  /** XML of the usual kind in this one. */
  String of(String xml) {
    return this == USUAL
        ? xml
        : xml.replace("/custom-properties", "/customProperties")
            .replace(OFFICE, STRICT_OFFICE)
            .replace(MAIN, STRICT_MAIN);
  }

  /** XML of this kind in the usual one. */
  String inUsual(String xml) {
    return this == USUAL ? xml : xml.replace(STRICT_OFFICE, OFFICE).replace(STRICT_MAIN, MAIN);
  }
}
