package meadcell.batch.calculation;

/** Argument separators: Calc users type {@code ;}, Excel files and POI use {@code ,}. */
public final class Separators {
  /** Both separators in one formula. */
  public static final class Mixed extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    Mixed() {
      super(
          "The arguments are separated by ; and by , in one formula. Use one of them, and a point"
              + " as the decimal mark.");
    }
  }

  private Separators() {}

  /**
   * The formula with {@code ,} between arguments and an empty text in each empty place of an array
   * constant, which POI cannot read; texts and other array constants stay as they are.
   *
   * @throws Mixed when both separators are used, since then a comma may be meant as a decimal mark
   */
  public static String toCommas(String formula) {
    StringBuilder out = new StringBuilder(formula);
    boolean text = false;
    int braces = 0;
    int semicolons = 0;
    int commas = 0;
    char before = 0; // the last sign that was not a blank
    for (int i = 0; i < out.length(); i++) {
      char c = out.charAt(i);
      if (!text && braces > 0 && "{,;".indexOf(before) >= 0 && ",;}".indexOf(c) >= 0) {
        out.insert(i, "\"\"");
        i += 2;
      }
      before = c == ' ' ? before : c;
      if (c == '"') {
        text = !text;
      } else if (!text) {
        switch (c) {
          case '{' -> braces++;
          case '}' -> braces--;
          case ',' -> commas += braces == 0 ? 1 : 0;
          case ';' -> {
            if (braces == 0) {
              semicolons++;
              out.setCharAt(i, ',');
            }
          }
          default -> {}
        }
      }
    }
    if (semicolons > 0 && commas > 0) {
      throw new Mixed();
    }
    return out.toString();
  }
}
