package meadcell.catalogue;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Marks a class whose annotated static methods are the functions of one family. */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
public @interface Family {
  /** Prefix of the functions' names, four letters or more: {@code BARREL}. */
  String name();

  /** What the family is about, in one sentence. */
  String about();
}
