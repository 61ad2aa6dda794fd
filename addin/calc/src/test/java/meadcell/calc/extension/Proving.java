package meadcell.calc.extension;

import java.util.concurrent.atomic.AtomicInteger;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;

/** A family as a contributor would add it. */
@Family(name = "PROVING", about = "Only for tests.")
public final class Proving {
  private static final AtomicInteger CALLS = new AtomicInteger();

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

  /** How often this was called; whatever it is given, it is given it as CELLAR.MAP is. */
  @CellarFunction(
      summary = "How often it was called.",
      formula = "calls + 1",
      source = "None needed.",
      example = "PROVING.CALLS({1;2};3)")
  public static double calls(@Arg(name = "column", help = "Anything") Object... columns) {
    return CALLS.incrementAndGet();
  }
}
