package meadcell.calc.extension;

import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;

/** A family as a contributor would add it. */
@Family(name = "PROVING", about = "Only for tests.")
public final class Proving {
  private Proving() {}

  /** Half of it. */
  @CellarFunction(
      summary = "Half of a number.",
      formula = "whole / 2",
      source = "None needed.",
      example = "PROVING.HALF(84)")
  public static double half(
      @Arg(name = "whole", help = "The number", from = 0, to = 100) double whole) {
    return whole / 2;
  }
}
