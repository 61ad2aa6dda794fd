package meadcell.formula;

/** The tokens of a formula, one after another. Together they are the whole text. */
public final class FormulaScanner {
  /** What a token is. */
  public enum Kind {
    /** Blanks and line ends. */
    SPACE,
    /** A text in double quotes; one within is doubled. */
    TEXT,
    /** A number without its sign. */
    NUMBER,
    /** A name, a truth value, or a sheet in front of its {@code !}. */
    NAME,
    /** The name of a function, in front of its bracket. */
    FUNCTION,
    /** A cell such as {@code $C14}; of a range, each of its corners. */
    CELL,
    /** A row of a range of whole rows, {@code 3} or {@code $3}. */
    ROW,
    /** A name in single quotes, such as that of a sheet. */
    QUOTED,
    /** What stands in square brackets, with them. */
    BRACKETED,
    /** What stands in curly brackets, with them, where that is no array constant. */
    LABEL,
    /** An opening bracket. */
    OPEN,
    /** A closing bracket. */
    CLOSE,
    /** Between two arguments. */
    SEPARATOR,
    /** The opening brace of an array constant. */
    ARRAY_OPEN,
    /** A closing brace. */
    ARRAY_CLOSE,
    /** Between two cells of an array constant. */
    ARRAY_CELL,
    /** Between two rows of an array constant. */
    ARRAY_ROW,
    /** Any other sign, by itself. */
    OPERATOR,
    /** A quote or bracket with all that follows, because it has no end. */
    UNCLOSED
  }

  private static final int MOST_LETTERS = 3;
  private static final int MOST_DIGITS = 7;
  private static final String STARTS_ARRAY = "0123456789+-.\",;";

  private final String formula;
  private final Dialect dialect;
  private Kind kind;
  private int start;
  private int end;
  private int braces;
  private int row;
  private int column;
  private boolean isRowFixed;
  private boolean isColumnFixed;

  /**
   * Before the first token of a formula, which is given without its {@code =}.
   *
   * @param formula the formula
   * @param dialect what it is written in
   */
  public FormulaScanner(String formula, Dialect dialect) {
    this.formula = formula;
    this.dialect = dialect;
  }

  /**
   * Moves to the next token; false where there is none.
   *
   * @return false where there is none
   */
  public boolean next() {
    start = end;
    if (start == formula.length()) {
      return false;
    }
    kind = read(formula.charAt(start));
    return true;
  }

  /** {@return what the token is} */
  public Kind kind() {
    return kind;
  }

  /** {@return where the token begins in the formula} */
  public int start() {
    return start;
  }

  /** {@return where the token ends in the formula, after its last sign} */
  public int end() {
    return end;
  }

  /** {@return the token as it is written} */
  public String text() {
    return formula.substring(start, end);
  }

  /** {@return what a token holds between its quotes or brackets} */
  public String inside() {
    return formula.substring(start + 1, end - 1);
  }

  /**
   * {@return whether the token is this sign}
   *
   * @param sign the sign
   */
  public boolean is(char sign) {
    return end == start + 1 && formula.charAt(start) == sign;
  }

  /**
   * {@return whether the sign comes directly behind this token}
   *
   * @param sign the sign
   */
  public boolean isBefore(char sign) {
    return end < formula.length() && formula.charAt(end) == sign;
  }

  /** {@return whether this token stands in an array constant} */
  public boolean isInArray() {
    return braces > 0;
  }

  /** {@return the row of a {@link Kind#CELL} or {@link Kind#ROW}, from 0} */
  public int row() {
    return row;
  }

  /** {@return the column of a {@link Kind#CELL}, from 0} */
  public int column() {
    return column;
  }

  /** {@return whether a {@code $} stands before the row} */
  public boolean isRowFixed() {
    return isRowFixed;
  }

  /** {@return whether a {@code $} stands before the column} */
  public boolean isColumnFixed() {
    return isColumnFixed;
  }

  private Kind read(char c) {
    end = start + 1;
    switch (c) {
      case '"':
        return quoted(c, Kind.TEXT);
      case '\'':
        return quoted(c, Kind.QUOTED);
      case '[':
        return bracketed();
      case '{':
        return brace();
      case '}':
        braces = Math.max(0, braces - 1);
        return Kind.ARRAY_CLOSE;
      case '(':
        return Kind.OPEN;
      case ')':
        return Kind.CLOSE;
      default:
        break;
    }
    if (braces > 0 && c == dialect.cell()) {
      return Kind.ARRAY_CELL;
    }
    if (braces > 0 && c == dialect.row()) {
      return Kind.ARRAY_ROW;
    }
    if (dialect.separates(c)) {
      return Kind.SEPARATOR;
    }
    if (Character.isWhitespace(c)) {
      end = afterSpace(end);
      return Kind.SPACE;
    }
    return isWordPart(c) ? word() : Kind.OPERATOR;
  }

  private int afterSpace(int from) {
    int at = from;
    while (at < formula.length() && Character.isWhitespace(formula.charAt(at))) {
      at++;
    }
    return at;
  }

  private Kind quoted(char quote, Kind kind) {
    int close = formula.indexOf(quote, end);
    while (close >= 0 && close + 1 < formula.length() && formula.charAt(close + 1) == quote) {
      close = formula.indexOf(quote, close + 2);
    }
    return upTo(close, kind);
  }

  private Kind upTo(int close, Kind kind) {
    end = close < 0 ? formula.length() : close + 1;
    return close < 0 ? Kind.UNCLOSED : kind;
  }

  private Kind bracketed() {
    return upTo(
        switch (dialect) {
          case PLAN -> formula.indexOf(']', end);
          case CALC, EXCEL -> closeOfNested();
          case OPEN_FORMULA -> closeOutsideQuotes();
        },
        Kind.BRACKETED);
  }

  /** Names of tables' columns nest; in them an apostrophe takes the next sign's meaning away. */
  private int closeOfNested() {
    int depth = 0;
    for (int at = start; at < formula.length(); at++) {
      switch (formula.charAt(at)) {
        case '\'' -> at++;
        case '[' -> depth++;
        case ']' -> depth--;
        default -> {}
      }
      if (depth == 0) {
        return at;
      }
    }
    return -1;
  }

  /** Sheet names in quotes may hold brackets themselves. */
  private int closeOutsideQuotes() {
    boolean isQuoted = false;
    for (int at = end; at < formula.length(); at++) {
      char c = formula.charAt(at);
      isQuoted ^= c == '\'';
      if (c == ']' && !isQuoted) {
        return at;
      }
    }
    return -1;
  }

  private Kind brace() {
    int next = afterSpace(end);
    boolean isArray =
        dialect != Dialect.PLAN
            || next < formula.length() && STARTS_ARRAY.indexOf(formula.charAt(next)) >= 0;
    if (!isArray) {
      return upTo(formula.indexOf('}', end), Kind.LABEL);
    }
    braces++;
    return Kind.ARRAY_OPEN;
  }

  private static boolean isWordPart(char c) {
    return c >= 'A' && c <= 'Z'
        || c >= 'a' && c <= 'z'
        || isDigit(c)
        || c == '$'
        || c == '_'
        || c == '.'
        || c == '\\'
        || c > 127 && Character.isLetterOrDigit(c);
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private Kind word() {
    while (end < formula.length() && isWordPart(formula.charAt(end))) {
      end++;
    }
    if (isCall()) {
      return Kind.FUNCTION;
    }
    if (isBefore('!')) {
      return Kind.NAME;
    }
    if (isCell()) {
      return Kind.CELL;
    }
    if (isWholeRow()) {
      return Kind.ROW;
    }
    char first = formula.charAt(start);
    if (!isDigit(first) && (first != '.' || end == start + 1)) {
      return Kind.NAME;
    }
    exponent();
    return Kind.NUMBER;
  }

  /** People may put a blank before the bracket; to a program that is an intersection. */
  private boolean isCall() {
    int next = dialect == Dialect.PLAN ? afterSpace(end) : end;
    return next < formula.length() && formula.charAt(next) == '(';
  }

  /** A number such as {@code 1.5E+3} goes on behind the sign of its exponent. */
  private void exponent() {
    char last = formula.charAt(end - 1);
    boolean goesOn =
        (last == 'E' || last == 'e')
            && (isBefore('+') || isBefore('-'))
            && end + 1 < formula.length()
            && isDigit(formula.charAt(end + 1));
    if (goesOn) {
      end++;
      while (end < formula.length() && isDigit(formula.charAt(end))) {
        end++;
      }
    }
  }

  /** Reads {@code $}, one to three letters, {@code $}, up to seven digits, and nothing more. */
  private boolean isCell() {
    int at = start;
    isColumnFixed = formula.charAt(at) == '$';
    at += isColumnFixed ? 1 : 0;
    int letters = at;
    int number = 0;
    while (at < end && at - letters < MOST_LETTERS && isLetter(formula.charAt(at))) {
      number = 26 * number + (formula.charAt(at++) & 31);
    }
    column = number - 1;
    return at > letters && at < end && isRow(at);
  }

  private static boolean isLetter(char c) {
    return c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z';
  }

  private boolean isRow(int from) {
    isRowFixed = formula.charAt(from) == '$';
    int digits = from + (isRowFixed ? 1 : 0);
    if (digits == end || end - digits > MOST_DIGITS || formula.charAt(digits) == '0') {
      return false;
    }
    int number = 0;
    for (int at = digits; at < end; at++) {
      if (!isDigit(formula.charAt(at))) {
        return false;
      }
      number = 10 * number + formula.charAt(at) - '0';
    }
    row = number - 1;
    return true;
  }

  private boolean isWholeRow() {
    boolean isCorner = isBefore(':') || start > 0 && formula.charAt(start - 1) == ':';
    return isCorner && isRow(start);
  }
}
