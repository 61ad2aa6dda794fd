package meadcell.cellar;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.Cell;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.General;
import meadcell.catalogue.Kind;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.ResultSpec;
import meadcell.catalogue.UnitSystem;

/** A call of a function that makes one number of single values; its arguments lie in cells. */
final class ScalarCall {
  private final FunctionSpec function;
  private final Object[] arguments;
  private final UnitSystem system;

  /**
   * @param arguments as {@link FunctionSpec#call} takes them, null for one that is left out
   */
  ScalarCall(FunctionSpec function, Object... arguments) {
    if (function.result().shape() != ResultSpec.Shape.NUMBER) {
      throw new Refusal(CellarReason.NOT_ONE_NUMBER).with("function", function.name());
    }
    for (ArgSpec arg : function.args()) {
      if (!arg.kind().isScalar()) {
        throw new Refusal(CellarReason.TAKES_RANGES)
            .with("function", function.name())
            .with("name", arg.name());
      }
    }
    this.function = function;
    this.arguments = arguments;
    this.system = function.system(arguments);
  }

  /** The cells of one column or one row. */
  static List<Cell> line(String name, Cell[][] range) {
    if (range.length > 1 && range[0].length > 1) {
      throw new Refusal(General.ONE_COLUMN_DUE).about(name);
    }
    List<Cell> cells = new ArrayList<>();
    for (Cell[] row : range) {
      cells.addAll(List.of(row));
    }
    return cells;
  }

  static Object[] contents(List<Cell> cells) {
    return cells.stream().map(Cell::content).toArray();
  }

  int count() {
    return arguments.length;
  }

  FunctionSpec function() {
    return function;
  }

  UnitSystem system() {
    return system;
  }

  /** The argument at a place, from 0, which must be a number that may have decimals. */
  ArgSpec number(int place) {
    ArgSpec arg = place < function.args().size() ? function.args().get(place) : null;
    if (arg == null || arg.kind() != Kind.NUMBER || arg.isWhole() || arg.isTruth()) {
      throw new Refusal(CellarReason.NOT_CONTINUOUS).with("place", place + 1);
    }
    return arg;
  }

  Object argument(int place) {
    return arguments[place];
  }

  /** What the function gives; a refusal is its own. */
  double answer(Object... given) {
    return (Double) function.call(given);
  }

  /** The arguments, to be changed. */
  Object[] copy() {
    return Arrays.copyOf(arguments, arguments.length);
  }
}
