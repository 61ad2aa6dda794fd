package meadcell.calc;

import meadcell.catalogue.Refusal;

/**
 * The error that a cell shows for a refusal. Calc takes a NaN whose low bits hold one of its error
 * numbers for that very error, in a plain cell and inside an array alike; an exception would cost
 * more and could not mark one element of an array.
 */
public enum CellError {
  /** Shown as {@code Err:502}. */
  ILLEGAL_ARGUMENT(502),
  /** Shown as {@code #VALUE!}. */
  NO_VALUE(519),
  /** Shown as {@code Err:523}. */
  NO_CONVERGENCE(523),
  /** Shown as {@code #N/A}. */
  NOT_AVAILABLE(32767);

  private static final long NAN = 0x7FF8000000000000L;

  private final int code;
  private final Double value;

  CellError(int code) {
    this.code = code;
    this.value = Double.longBitsToDouble(NAN | code);
  }

  /** The one table from causes to errors. */
  public static CellError of(Refusal refusal) {
    return switch (refusal.kind()) {
      case OUT_OF_RANGE, INCONSISTENT, WRONG_COUNT, UNKNOWN_NAME -> ILLEGAL_ARGUMENT;
      case WRONG_KIND -> NO_VALUE;
      case NO_SOLUTION -> NOT_AVAILABLE;
      case NOT_CONVERGED -> NO_CONVERGENCE;
    };
  }

  /** Calc's number of the error, as {@code ERRORTYPE} gives it. */
  public int code() {
    return code;
  }

  /** The coded NaN. */
  Double value() {
    return value;
  }
}
