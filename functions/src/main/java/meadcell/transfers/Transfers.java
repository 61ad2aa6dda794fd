package meadcell.transfers;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import meadcell.catalogue.Arg;

/** The log of transfers as an argument. */
@Arg(name = "transfers", help = "A row for each transfer")
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.PARAMETER)
public @interface Transfers {}
