package meadcell.batch.book;

import java.math.BigDecimal;

/** Numbers as they are written into formulas. */
public final class Figures {
  private Figures() {}

  /** All digits that tell this number from its neighbours, without an exponent. */
  public static String of(double value) {
    BigDecimal exact = BigDecimal.valueOf(value);
    return exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
  }
}
