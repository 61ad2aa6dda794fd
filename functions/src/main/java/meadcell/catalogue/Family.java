package meadcell.catalogue;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks a class whose annotated static methods are functions of a family. A family may span several
 * classes of the same name, each about one topic; the first one says what the family is about.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
public @interface Family {
  /** {@return the prefix of the functions' names, four letters or more: {@code BARREL}} */
  String name();

  /** {@return what the family is about, in one sentence; empty in its further classes} */
  String about() default "";

  /**
   * {@return the enums of the reasons and messages that its classes use beside the general ones}
   */
  Class<? extends Message>[] says() default {};
}
