package meadcell.property;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * A test that holds for all arguments: it runs for many, drawn from their types and limits. The
 * draws are the same in every run; {@code -Dproperty.seed=2} makes others. A failure names the seed
 * and the arguments.
 */
@Test
@ExtendWith(Draws.class)
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface Property {
  /** How many. */
  int tries() default 1000;
}
