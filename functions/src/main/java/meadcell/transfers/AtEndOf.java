package meadcell.transfers;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;

/** The day up to which a log is replayed, as an argument. */
@Arg(
    name = "day",
    help = "State at the end of this day; left out: after the last transfer",
    is = Quantity.DATE,
    above = 0,
    to = 300000)
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.PARAMETER)
public @interface AtEndOf {}
