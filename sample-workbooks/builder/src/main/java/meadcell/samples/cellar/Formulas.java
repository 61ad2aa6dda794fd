package meadcell.samples.cellar;

/** Parts of formulas that several pages have in common. */
final class Formulas {
  private Formulas() {}

  /** Blank where the formula has no answer. */
  static String orBlank(String formula) {
    return "IFERROR(" + formula + ",\"\")";
  }

  /** Blank while one of these cells is. */
  static String given(String cells, String formula) {
    String[] names = cells.split(" ");
    String blank = String.join("=\"\",", names) + "=\"\"";
    return "IF(" + (names.length > 1 ? "OR(" + blank + ")" : blank) + ",\"\"," + formula + ")";
  }

  /** What Analyses say of the vessel in a cell, carried to the day of the book. */
  static String carried(String vessel, String property) {
    return carried(vessel, property, "today");
  }

  static String carried(String vessel, String property, String day) {
    return "BLEND.CARRIED(" + carriedBy(vessel, property, day) + ")";
  }

  /** Why nothing is carried. */
  static String notCarried(String vessel, String property) {
    return "CELLAR.WHY(\"BLEND.CARRIED\"," + carriedBy(vessel, property, "today") + ")";
  }

  private static String carriedBy(String vessel, String property, String day) {
    return "moves,analyses,%s,%s,%s,house_humidity,changes,kept".formatted(vessel, property, day);
  }

  /** One cell of a row that a function gives. */
  static String cell(String row, int place) {
    return "INDEX(" + row + ",1," + place + ")";
  }

  static String quoted(String text) {
    return "\"" + text + "\"";
  }

  /** The last day on which this was measured in the vessel, from a day on; 0 if never. */
  static String lastDay(String vessel, String property, String from) {
    return "MAXIFS(an_day,an_lot,%s,an_what,\"%s\",an_day,\">=\"&%s,an_day,\"<=\"&today)"
        .formatted(vessel, property, from);
  }

  /** What was found on that day; blank if it never was. */
  static String latest(String vessel, String property, String from) {
    return orBlank(
        "AVERAGEIFS(an_value,an_lot,%s,an_what,\"%s\",an_day,%s)"
            .formatted(vessel, property, lastDay(vessel, property, from)));
  }

  /** The last day up to one on which sulfite was added, however it is spelt; 0 if never. */
  static String lastSulfite(String vessel, String day) {
    return "MAXIFS(ad_sulfite,ad_vessel,%s,ad_sulfite,\"<=\"&%s)".formatted(vessel, day);
  }
}
