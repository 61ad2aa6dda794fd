package meadcell.batch.plan;

import meadcell.batch.book.Figures;
import meadcell.catalogue.Unit;

/** Conversions between units, written into formulas. */
public final class Conversion {
  private Conversion() {}

  /** A formula that turns {@code operand}, in one unit, into another unit that fits. */
  public static String of(String operand, Unit from, Unit to) {
    if (from == to) {
      return operand;
    }
    return switch (from.dimension()) {
      case TEMPERATURE ->
          from == Unit.FAHRENHEIT ? "((" + operand + "-32)/1.8)" : "(" + operand + "*1.8+32)";
      case GRAVITY -> throughGravity("TO", to, throughGravity("FROM", from, operand));
      default -> {
        double ratio = from.factor() / to.factor();
        yield ratio >= 1
            ? operand + "*" + Figures.of(ratio)
            : operand + "/" + Figures.of(to.factor() / from.factor());
      }
    };
  }

  private static String throughGravity(String direction, Unit scale, String operand) {
    return scale == Unit.GRAVITY
        ? operand
        : "GRAVITY." + direction + scale.name() + "(" + operand + ")";
  }
}
