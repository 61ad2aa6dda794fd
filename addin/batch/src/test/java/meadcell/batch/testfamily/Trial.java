package meadcell.batch.testfamily;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;

/** A family that only the tests have: one class and one line in the list of families. */
@Family(name = "TRIAL", about = "Shows that a declaration is all it takes.")
public final class Trial {
  private Trial() {}

  /** Twice a number. */
  @CellarFunction(
      summary = "Twice a number.",
      formula = "2 · value",
      source = "None needed.",
      example = "TRIAL.TWICE(21)")
  public static double twice(
      @Arg(name = "value", help = "Any number up to a thousand", from = 0, to = 1000)
          double value) {
    return 2 * value;
  }
}
