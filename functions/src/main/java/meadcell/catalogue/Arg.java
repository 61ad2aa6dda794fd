package meadcell.catalogue;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Declares one argument of a function. Its kind follows from the Java type:
 *
 * <ul>
 *   <li>{@code double}, {@code int} (a whole number), {@code boolean} (1 or 0), {@code String}, an
 *       enum (a choice of words): one value;
 *   <li>{@code OptionalDouble}: one number that may be left out and has no default;
 *   <li>{@code double[]}, {@code String[]}: a column or row; several of them go row by row
 *       together, rows blank in all of them are skipped;
 *   <li>{@code double[][]}: a table of numbers without gaps;
 *   <li>{@link Rows} of a record: a table, a record for each row that is not blank, a component for
 *       each column; {@code OptionalDouble}s and what has a default may be blank; a {@link Cell} is
 *       read only when it is asked, and a last component of type {@code Cell[]} takes all columns
 *       that follow; {@link RowNumber} marks one that is no column;
 *   <li>{@code Optional} of them: a table that may be left out or blank throughout;
 *   <li>{@code Cell[][]}: a table whose columns differ from call to call;
 *   <li>a record: several arguments that belong together, such as a cask's size. Its components
 *       stand in its place, one after another; those that may be left out go to the end of the
 *       call. The parameter itself carries no annotation;
 *   <li>{@code Object...}: whatever follows, as it comes.
 * </ul>
 *
 * Bounds are in the metric unit and hold for every number of a column or table of numbers.
 *
 * <p>An argument that several functions share is declared once: as an annotation that carries this
 * one. If that annotation has members of the names used here (usually {@code name} and {@code
 * help}), what they hold overrides, unless it is empty or not a number.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.PARAMETER, ElementType.RECORD_COMPONENT, ElementType.ANNOTATION_TYPE})
public @interface Arg {
  /** {@return the name shown to the user; letters only} */
  String name();

  /** {@return what it is, in a few words, without unit and range (they are added)} */
  String help();

  /** {@return what kind of quantity it is} */
  Quantity is() default Quantity.NUMBER;

  /** {@return the smallest value allowed} */
  double from() default Double.NEGATIVE_INFINITY;

  /** {@return the largest value allowed} */
  double to() default Double.POSITIVE_INFINITY;

  /** {@return what values must be larger than} */
  double above() default Double.NEGATIVE_INFINITY;

  /** {@return what values must be smaller than} */
  double below() default Double.POSITIVE_INFINITY;

  /**
   * {@return whether exactly 0 is refused, because a blank cell is likelier than a true zero; in a
   * table's column that may be blank, it is taken for one}
   */
  boolean zeroIsBlank() default false;

  /** {@return the number when left out, in the metric unit; makes the argument optional} */
  double byDefault() default Double.NaN;

  /**
   * {@return the number when left out and units are "US", in the US unit; without it, the metric
   * one converted}
   */
  double byDefaultUs() default Double.NaN;

  /** {@return the text or word when left out; makes the argument optional} */
  String byDefaultWord() default "";
}
