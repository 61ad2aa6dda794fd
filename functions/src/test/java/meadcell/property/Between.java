package meadcell.property;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** The limits of a number, which are drawn often, and how fine the numbers between them are. */
@Target(ElementType.TYPE_USE)
@Retention(RetentionPolicy.RUNTIME)
public @interface Between {
  double min() default 0;

  double max();

  /** Digits behind the decimal point. */
  int decimals() default 6;
}
