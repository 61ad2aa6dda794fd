package meadcell.ferment;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;

/** Arguments and sources of more than one topic of the ferment. */
final class Shared {
  static final String BALANCE =
      "Balling's mass balance (Nielsen et al., Balling's Formula – scrutiny of a brewing dogma) with"
          + " Tabarié's rule (OIV-MA-AS2-03B), as in ALCOHOL.ABV.";

  @Arg(
      name = "original",
      help = "Gravity of the must before fermentation",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 1,
      to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Original {
    double from() default Double.NaN;
  }

  @Arg(
      name = "present",
      help = "Gravity now, as GRAVITY.CORRECT gives it",
      is = Quantity.SPECIFIC_GRAVITY,
      from = 0.98,
      to = 1.3)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Present {
    String help() default "";
  }

  @Arg(name = "volume", help = "Mead in the tank", is = Quantity.VOLUME, above = 0, to = 1e6)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Volume {
    String help() default "";
  }

  private Shared() {}
}
