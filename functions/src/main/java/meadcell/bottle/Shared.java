package meadcell.bottle;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;

/** Arguments and cautions of more than one topic of bottling. */
final class Shared {
  static final String CHECK_LAW =
      "Not legal advice. Laws change: check the current text, and ask the authority.";

  static final String BURST =
      "Glass under pressure can burst and blind. Only bottles, closures and vessels whose maker"
          + " rates them for the pressure; goggles and gloves; chill before opening.";

  static final String FERMENTABLE =
      "Fermentable sugar left, the high one of ALCOHOL.SUGARLEFTLIMITS";

  @Arg(name = "abv", help = "Strength", is = Quantity.PERCENT_VOL, from = 1, to = 96)
  @Retention(RetentionPolicy.RUNTIME)
  @interface AnyStrength {}

  @Arg(name = "abv", help = "Strength", is = Quantity.PERCENT_VOL, from = 1, to = 25)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Strength {}

  @Arg(
      name = "co2",
      help = "Carbon dioxide already dissolved",
      is = Quantity.GRAM_PER_LITRE,
      from = 0,
      to = 15,
      byDefault = 1.2)
  @Retention(RetentionPolicy.RUNTIME)
  @interface GasBefore {}

  @Arg(
      name = "temperature",
      help = "Warmest store",
      is = Quantity.TEMPERATURE,
      from = 0,
      to = 40,
      zeroIsBlank = true,
      byDefault = 35)
  @Retention(RetentionPolicy.RUNTIME)
  @interface WarmestStore {}

  @Arg(
      name = "from",
      help = "First temperature",
      is = Quantity.TEMPERATURE,
      from = 0,
      to = 40,
      zeroIsBlank = true)
  @Retention(RetentionPolicy.RUNTIME)
  @interface FirstWarmth {}

  @Arg(
      name = "to",
      help = "Second temperature",
      is = Quantity.TEMPERATURE,
      from = 0,
      to = 40,
      zeroIsBlank = true)
  @Retention(RetentionPolicy.RUNTIME)
  @interface SecondWarmth {}

  private Shared() {}
}
