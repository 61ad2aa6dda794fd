package meadcell.samples.week;

/** What is often typed instead of an answer, whatever the question. */
final class Slips {
  /** The office's own number of an error; the file format knows it by this name. */
  private static final String CODE = "_xlfn.ORG.OPENOFFICE.ERRORTYPE(";

  private Slips() {}

  /** What the error in this cell means to someone who typed a formula. */
  static String error(Texts texts, String typed) {
    String code = CODE + typed + ")";
    String unfinished = "AND(" + code + "<>502," + code + "<>503," + code + "<512)";
    return choice(
        code + "=504",
        texts.formula("error.count"),
        choice(
            code + "=525",
            texts.formula("error.name"),
            choice(
                code + "=519",
                texts.formula("error.value"),
                choice(
                    code + "=522",
                    texts.formula("error.circle"),
                    choice(
                        unfinished,
                        texts.formula("error.unfinished"),
                        choice(
                            "OR(" + code + "=502," + code + "=503)",
                            texts.formula("error.refused"),
                            texts.formula("error.other")))))));
  }

  /** A whole number like the days of this century: 1/2 or 1.10. was typed, and became a date. */
  static String isDate(String typed) {
    return "AND(" + typed + "=INT(" + typed + ")," + typed + ">36525," + typed + "<73051)";
  }

  static String choice(String condition, String then, String otherwise) {
    return "IF(" + condition + "," + then + "," + otherwise + ")";
  }
}
