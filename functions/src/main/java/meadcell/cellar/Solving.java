package meadcell.cellar;

import java.util.List;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Cell;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Refusal;

/** What must go into another function for a wanted result. */
@Family(name = "CELLAR")
public final class Solving {
  private Solving() {}

  /**
   * {@return the value of one argument with which a function gives a wanted result, in the unit of
   * that argument}
   *
   * @param function name of a function that gives one number from single values
   * @param result the wanted result, in the unit that the function gives
   * @param place which argument is looked for, from 1
   * @param arguments the function's arguments, a column or a row
   */
  @CellarFunction(
      summary = "The value of one argument with which a function gives a wanted result.",
      formula =
          "The range of the argument is looked through at 400 values, evenly and, where it begins at 0 or"
              + " above, also by ratio; each change of sign of function − result is closed in by Brent's"
              + " method, each near miss by Brent's search for a minimum.",
      source =
          "Brent 1973, Algorithms for Minimization without Derivatives, as in Apache Commons Math.",
      example = "CELLAR.SOLVE(\"BOTTLE.PRESSURE\";300;1;{\"\";20;12;10})",
      note =
          "What stands at place is ignored; it may be blank. Refused if no value in the argument's range"
              + " gives the result, if several do, or if the result jumps past it; CELLAR.WHY with the"
              + " same arguments says which. Two solutions that lie closer than a four-hundredth of the"
              + " range can be taken for none.\n"
              + "Whole numbers, words and texts are not looked for. A function that takes a range is"
              + " refused.")
  public static double solve(
      @Arg(name = "function", help = "Name of a function that gives one number from single values")
          String function,
      @Arg(name = "result", help = "The wanted result", from = -1e9, to = 1e9) double result,
      @Arg(name = "place", help = "Which argument is looked for, from 1", from = 1, to = 30)
          int place,
      @Arg(
              name = "arguments",
              help = "Its arguments, one in each cell; blank: left out, or looked for")
          Cell[][] arguments) {
    List<Cell> given = ScalarCall.line("arguments", arguments);
    if (place > given.size()) {
      throw new Refusal(CellarReason.NO_PLACE)
          .with("value", Integer.toString(place))
          .with("most", given.size());
    }
    Object[] contents = ScalarCall.contents(given);
    contents[place - 1] = 0.0; // whatever stood there
    ScalarCall call = new ScalarCall(Cellar.catalogue().get(function), contents);
    return new Search(call, place - 1, result).only();
  }
}
