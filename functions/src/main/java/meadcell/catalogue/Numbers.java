package meadcell.catalogue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** Numbers as texts and back, the same in every locale. */
public final class Numbers {
  private static final Pattern PLAIN =
      Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?");

  /** Significant digits of a number in a sentence. */
  static final int DIGITS = 6;

  private Numbers() {}

  /**
   * {@return six significant digits, no exponent, no trailing zeros: for sentences}
   *
   * @param value the number
   */
  public static String text(double value) {
    return text(value, DIGITS);
  }

  /**
   * {@return the number in plain digits, rounded to so many significant ones}
   *
   * @param value the number
   * @param significantDigits how many significant digits
   */
  public static String text(double value, int significantDigits) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      return Double.toString(value);
    }
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(significantDigits));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /**
   * {@return the number of a text that is nothing else, written with a decimal point; no comma, no
   * unit, no date}
   *
   * @param text what a cell holds
   */
  public static OptionalDouble plain(String text) {
    String trimmed = text.trim();
    return PLAIN.matcher(trimmed).matches()
        ? OptionalDouble.of(Double.parseDouble(trimmed))
        : OptionalDouble.empty();
  }
}
