package meadcell.catalogue;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Declares one argument of a function. Its kind follows from the parameter's Java type:
 *
 * <ul>
 *   <li>{@code double}, {@code String}, an enum (a choice of words): one value;
 *   <li>{@code OptionalDouble}: one number that may be left out and has no default;
 *   <li>{@code double[]}, {@code String[]}: a column or row; several of them go row by row
 *       together, rows blank in all of them are skipped;
 *   <li>{@code double[][]}: a table of numbers; {@code Object[][]}: a table of numbers, texts and
 *       blanks ({@code null});
 *   <li>{@code Object...}: whatever follows, as it comes.
 * </ul>
 *
 * Bounds are in the metric unit and hold for every number of a column or table of numbers.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.PARAMETER)
public @interface Arg {
  /** Name shown to the user; letters only. */
  String name();

  /** What it is, in a few words, without unit and range (they are added). */
  String help();

  /** What kind of quantity it is. */
  Quantity is() default Quantity.NUMBER;

  /** Smallest value allowed. */
  double from() default Double.NEGATIVE_INFINITY;

  /** Largest value allowed. */
  double to() default Double.POSITIVE_INFINITY;

  /** Values must be larger than this. */
  double above() default Double.NEGATIVE_INFINITY;

  /** Values must be smaller than this. */
  double below() default Double.POSITIVE_INFINITY;

  /** Refuse exactly 0, because a blank cell is likelier than a true zero. */
  boolean zeroIsBlank() default false;

  /** The value when left out, in the metric unit; makes the argument optional. */
  String byDefault() default "";

  /**
   * The value when left out and units are "US", in the US unit; empty: the metric one, converted.
   */
  String byDefaultUs() default "";

  /** Quantities of the columns of an {@code Object[][]} table; the last one repeats. */
  Quantity[] columns() default {};
}
