package meadcell.cellar;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Cell;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.General;
import meadcell.catalogue.Refusal;

/** How sure the result of another function is. */
@Family(name = "CELLAR")
public final class Uncertainty {
  private static final String GUM =
      "JCGM 100:2008 (GUM), 5.1.2 with its note on higher-order terms, 5.2.2 for what is fully"
          + " correlated (from memory: the sections; its examples H.1 to H.3 are tested). Step of √3:"
          + " Nørgaard, Poulsen, Ravn 2000, Automatica 36:1627 (from memory).";

  @Arg(name = "function", help = "Name of a function that gives one number from single values")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface ScalarFunction {}

  @Arg(name = "arguments", help = "Its arguments, one in each cell; blank: left out")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Arguments {}

  @Arg(
      name = "uncertainties",
      help = "Their standard uncertainties, in the same units; blank: exact",
      from = 0)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Uncertainties {}

  @Arg(
      name = "shared",
      help = "The places, from 1, that one instrument read; a range for each instrument")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface SharedPlaces {}

  private Uncertainty() {}

  /**
   * {@return standard uncertainty of a function's value, in the unit of that value}
   *
   * @param function name of a function that gives one number from single values
   * @param arguments its arguments, a column or a row
   * @param uncertainties their standard uncertainties, in the same units
   * @param shared places that one instrument read, a range for each
   */
  @CellarFunction(
      summary = "Standard uncertainty of what a function gives, from those of its arguments.",
      formula =
          "u² = Σ (c u)² with c from central differences over ± 1.732 u, and the second-order terms ½ Σ of the"
              + " squared bends and of the squared mixed differences. Arguments that one instrument read"
              + " step together.",
      source = GUM,
      example = "CELLAR.UNCERTAINTY(\"ALCOHOL.ABV\";{1.1;0.995};{0.001;0.001};{1;2})",
      note =
          "Standard uncertainty: of limits ±a without more knowledge a / 1.732, of a 95 % statement half"
              + " of it. Twice the result covers about 95 %.\n"
              + "shared is for what an instrument does wrong each time, such as its offset: it adds up"
              + " or cancels. What differs from reading to reading is not shared. If there is both, call"
              + " twice and add the squares.\n"
              + "It is the uncertainty that comes in by the arguments. The function's own, of its model,"
              + " is not in it: for alcohol see ALCOHOL.UNCERTAINTY.\n"
              + "Within 5 % of a simulation by JCGM 101 for 22 functions of labels and safety. Where a"
              + " value lies at the end of its range, the difference is taken on the side that is left;"
              + " where the function has a corner, the result is rather too large.\n"
              + "A function that takes a range is refused.")
  public static double uncertainty(
      @ScalarFunction String function,
      @Arguments Cell[][] arguments,
      @Uncertainties Cell[][] uncertainties,
      @SharedPlaces Object... shared) {
    return propagation(function, arguments, uncertainties, shared).uncertainty();
  }

  /**
   * {@return what each argument adds to the variance of a function's value, %, in the arguments'
   * places}
   *
   * @param function name of a function that gives one number from single values
   * @param arguments its arguments, a column or a row
   * @param uncertainties their standard uncertainties, in the same units
   * @param shared places that one instrument read, a range for each
   */
  @CellarFunction(
      summary = "How many per cent each argument adds to the uncertainty of what a function gives.",
      formula =
          "Per cent of u² as CELLAR.UNCERTAINTY has it: (c u)² of the argument with its second-order"
              + " terms; what two add only together is halved between them. Of what one instrument read,"
              + " c u times the sum of all its c u.",
      source = GUM,
      example = "CELLAR.SHARES(\"BOTTLE.NETCONTENT\";{1247.5;500;0.996};{0.5;2;0.0003};{1;2})",
      note =
          "They add up to 100 and stand as the arguments do, in a column or a row. The largest says which"
              + " instrument to better first. Below 0: what this argument shares with another cancels.")
  public static Object[][] shares(
      @ScalarFunction String function,
      @Arguments Cell[][] arguments,
      @Uncertainties Cell[][] uncertainties,
      @SharedPlaces Object... shared) {
    double[] shares = propagation(function, arguments, uncertainties, shared).shares();
    Object[] cells = Arrays.stream(shares).boxed().toArray();
    return arguments.length == 1
        ? new Object[][] {cells}
        : Arrays.stream(cells).map(cell -> new Object[] {cell}).toArray(Object[][]::new);
  }

  private static Propagation propagation(
      String function, Cell[][] arguments, Cell[][] uncertainties, Object[] shared) {
    List<Cell> given = ScalarCall.line("arguments", arguments);
    List<Cell> sizes = ScalarCall.line("uncertainties", uncertainties);
    if (given.size() != sizes.size()) {
      throw new Refusal(General.UNEQUAL_LENGTHS)
          .about("arguments")
          .with("length", given.size())
          .with("other", "uncertainties")
          .with("otherLength", sizes.size());
    }
    double[] u = sizes.stream().mapToDouble(cell -> cell.isBlank() ? 0 : cell.number()).toArray();
    if (Arrays.stream(u).noneMatch(size -> size > 0)) {
      throw new Refusal(CellarReason.ALL_EXACT);
    }
    Object[] contents = ScalarCall.contents(given);
    for (int i = 0; i < u.length; i++) {
      if (u[i] > 0 && contents[i] != null) {
        contents[i] = given.get(i).number(); // it may stand there as a text
      }
    }
    ScalarCall call = new ScalarCall(Cellar.catalogue().get(function), contents);
    return new Propagation(call, u, groups(shared, u));
  }

  /** The places of each instrument, from 0; those of exact arguments count for nothing. */
  private static List<int[]> groups(Object[] shared, double[] u) {
    boolean[] taken = new boolean[u.length];
    List<int[]> groups = new ArrayList<>();
    for (Object range : shared) {
      int[] places = places(range, u.length);
      if (places.length == 1) {
        throw new Refusal(CellarReason.SHARED_BY_ONE)
            .with("place", places[0] + 1)
            .with("pair", "{1;2}");
      }
      for (int place : places) {
        if (taken[place]) {
          throw new Refusal(CellarReason.SHARED_TWICE).with("place", place + 1);
        }
        taken[place] = true;
      }
      int[] uncertain = Arrays.stream(places).filter(place -> u[place] > 0).toArray();
      if (uncertain.length > 0) {
        groups.add(uncertain);
      }
    }
    return groups;
  }

  private static int[] places(Object range, int count) {
    Object[][] rows = range instanceof Object[][] cells ? cells : new Object[][] {{range}};
    return Arrays.stream(rows)
        .flatMap(Arrays::stream)
        .filter(cell -> cell != null && !cell.equals(""))
        .mapToInt(cell -> place(cell, count))
        .toArray();
  }

  private static int place(Object cell, int count) {
    if (cell instanceof Double number
        && number == Math.rint(number)
        && number >= 1
        && number <= count) {
      return (int) (double) number - 1;
    }
    throw new Refusal(CellarReason.NO_PLACE)
        .with("value", String.valueOf(cell))
        .with("most", count);
  }
}
