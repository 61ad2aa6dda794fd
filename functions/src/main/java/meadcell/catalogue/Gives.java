package meadcell.catalogue;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Declares one number of a record result; a record comes out as a row of cells. */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Gives {
  /** {@return what the number is, in a few words} */
  String value();

  /** {@return its quantity, from which the unit follows} */
  Quantity is() default Quantity.NUMBER;
}
