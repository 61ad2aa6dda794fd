package meadcell.barrel;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;

/** Arguments of more than one topic of the barrel. */
final class Shared {
  /** The largest vessel of wood that is looked at. */
  static final double LARGEST_L = 80000;

  @Arg(
      name = "headspace",
      help = "Volume of the headspace",
      is = Quantity.VOLUME,
      above = 0,
      to = LARGEST_L)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Headspace {}

  @Arg(
      name = "density",
      help = "Density of the mead",
      is = Quantity.DENSITY,
      from = 0.95,
      to = 1.25)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Density {}

  @Arg(name = "days", help = "Days in the barrel", is = Quantity.DAYS, above = 0, to = 20000)
  @Retention(RetentionPolicy.RUNTIME)
  @interface DaysInBarrel {}

  private Shared() {}
}
