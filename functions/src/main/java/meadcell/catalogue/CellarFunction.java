package meadcell.catalogue;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Declares a static method as a spreadsheet function. The method's name is the function's name
 * after the dot; parameters are declared with {@link Arg}.
 *
 * <p>What it gives follows from the type that the method returns:
 *
 * <ul>
 *   <li>{@code double}, {@code int}, {@code boolean} (1 or 0), {@code String}: one cell;
 *   <li>a record of such values, each declared with {@link Gives}: a row of cells; an array of such
 *       records: rows of cells. What else the record holds stands in no cell;
 *   <li>{@code double[]}: a column of numbers;
 *   <li>{@code Object[][]}: rows of texts and {@code Double}s.
 * </ul>
 *
 * <p>An answer that is {@link Explained} says what it rests on when {@code CELLAR.WHY} is asked.
 *
 * <p>Everything a user or a host is told about the function comes from here.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
public @interface CellarFunction {
  /** {@return its purpose, one sentence in plain words} */
  String summary();

  /** {@return the quantity of a number or of every number in a column; the unit follows from it} */
  Quantity gives() default Quantity.NUMBER;

  /** {@return the formula or model in words or symbols} */
  String formula();

  /**
   * {@return what the function rests on: published source with table or section, or its honest
   * absence}
   */
  String source();

  /** {@return one call with literal arguments, for instance {@code BARREL.VOLUME(50;64;81)}} */
  String example();

  /** {@return what a careful user should know: limits of the model, worked numbers} */
  String note() default "";

  /** {@return a safety or legal caution, where the work can hurt someone} */
  String caution() default "";
}
