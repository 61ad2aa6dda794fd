package meadcell.panel;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Quantity;

/** Arguments and notes of more than one topic of tasting panels. */
final class Shared {
  static final String SIX_TASTERS =
      "Six tasters see little: a triangle test of six needs five right, and notices a difference"
          + " that half of all people notice only 35 times in 100. Not significant does not mean"
          + " alike; see PANEL.SIMILAR and PANEL.TASTERSNEEDED.";

  @Arg(name = "tasters", help = "Answers given", is = Quantity.COUNT, from = 2, to = 1000)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Answers {}

  @Arg(
      name = "alpha",
      help = "Risk of seeing a difference that is not there",
      is = Quantity.PROBABILITY,
      from = 0.0001,
      to = 0.5,
      byDefault = 0.05)
  @Retention(RetentionPolicy.RUNTIME)
  @interface Alpha {}

  @Arg(name = "test", help = "Kind of test", byDefaultWord = "triangle")
  @Retention(RetentionPolicy.RUNTIME)
  @interface Test {}

  private Shared() {}
}
