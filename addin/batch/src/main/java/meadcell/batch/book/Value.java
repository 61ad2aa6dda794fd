package meadcell.batch.book;

/** What a cell holds, typed or as the stored result of its formula. */
public sealed interface Value {
  /** Nothing; also the result of a formula that has none yet. */
  @SuppressWarnings("ClassInitializationDeadlock") // a record does not initialise its interface
  Value BLANK = new Blank();

  /** A number; dates and times are numbers of days. */
  @SuppressWarnings("JavaLangClash") // always called Value.Number
  record Number(double number) implements Value {
    @Override
    public boolean equals(Object object) {
      return object instanceof Number other && Double.compare(number, other.number) == 0;
    }

    @Override
    public int hashCode() {
      return Double.hashCode(number);
    }

    @Override
    public String toString() {
      return Double.toString(number);
    }
  }

  record Text(String text) implements Value {
    @Override
    public String toString() {
      return text;
    }
  }

  record Truth(boolean isTrue) implements Value {
    @Override
    public String toString() {
      return isTrue ? "TRUE" : "FALSE";
    }
  }

  /**
   * An error.
   *
   * @param code as spreadsheets show it, such as {@code #NUM!}
   */
  @SuppressWarnings("JavaLangClash") // always called Value.Error
  record Error(String code) implements Value {
    @Override
    public String toString() {
      return code;
    }
  }

  /** The only one is {@link #BLANK}. */
  record Blank() implements Value {
    @Override
    public String toString() {
      return "";
    }
  }

  static Value of(double number) {
    return new Number(number);
  }

  static Value of(String text) {
    return new Text(text);
  }

  static Value of(boolean truth) {
    return new Truth(truth);
  }

  default boolean isBlank() {
    return this == BLANK;
  }

  default boolean isError() {
    return this instanceof Error;
  }
}
