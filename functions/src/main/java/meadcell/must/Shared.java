package meadcell.must;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;

/** Arguments and sources of more than one topic of the must. */
final class Shared {
  static final String MIXING =
      "Mass balance; sucrose density: ICUMSA SPS-4. That honey and fruit solids count as sucrose is"
          + " from memory: the usual approximation for musts.";
  static final String USDA =
      " Fruit: USDA National Nutrient Database for Standard Reference, release 26 (2013).";
  static final String JUICE = " Least °Brix of juice: 21 CFR 101.30(h)(1).";

  @Arg(name = "volume", help = "Must", is = Quantity.VOLUME, above = 0, to = 1e6)
  @Retention(RetentionPolicy.RUNTIME)
  @interface MustVolume {}

  private Shared() {}
}
