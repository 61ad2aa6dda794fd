package meadcell.batch.plan;

import meadcell.batch.book.Figures;
import meadcell.catalogue.Unit;
import meadcell.catalogue.Unit.Dimension;

/** Units turned into each other by the formula itself, so that its reader sees how. */
public final class Conversion {
  private Conversion() {}

  /** A formula that turns {@code operand} from one unit into another that fits it. */
  public static String of(String operand, Unit from, Unit to) {
    if (from == to) {
      return operand;
    }
    if (from.dimension() == Dimension.TEMPERATURE) {
      return from == Unit.FAHRENHEIT ? "((" + operand + "-32)/1.8)" : "(" + operand + "*1.8+32)";
    }
    if (from.dimension() == Dimension.GRAVITY) {
      return throughGravity("TO", to, throughGravity("FROM", from, operand));
    }
    double ratio = from.factor() / to.factor();
    return ratio >= 1
        ? operand + "*" + Figures.of(ratio)
        : operand + "/" + Figures.of(to.factor() / from.factor());
  }

  private static String throughGravity(String direction, Unit scale, String operand) {
    return scale == Unit.GRAVITY
        ? operand
        : "GRAVITY." + direction + scale.name() + "(" + operand + ")";
  }
}
