package meadcell.cellar;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.Arrays;
import java.util.Optional;
import meadcell.catalogue.Arg;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Release;
import meadcell.catalogue.Said;

/** What a user asks about the functions themselves. */
@Family(
    name = "CELLAR",
    about = "The functions themselves: version, reasons, sources, columns.",
    says = CellarReason.class)
public final class Cellar {
  private static final Catalogue CATALOGUE = Catalogue.load(Cellar.class.getClassLoader());

  @Arg(name = "function", help = "Name of the function, such as \"ALCOHOL.ABV\"")
  @Retention(RetentionPolicy.RUNTIME)
  private @interface FunctionName {}

  private Cellar() {}

  /** {@return all functions that are installed} */
  public static Catalogue catalogue() {
    return CATALOGUE;
  }

  /** {@return the version of the function library, a text} */
  @CellarFunction(
      summary = "Version of the installed functions; an error here means they did not load.",
      gives = Quantity.TEXT,
      formula = "None.",
      source = "None needed.",
      example = "CELLAR.VERSION()")
  public static String version() {
    return Release.version();
  }

  /**
   * {@return why a call is refused or what its verdict rests on; empty when there is nothing to
   * say}
   *
   * @param function name of the function, such as "ALCOHOL.ABV"
   * @param arguments the same arguments as in the cell
   */
  @CellarFunction(
      summary =
          "Says in one sentence why a call is refused, or what its verdict rests on: which argument,"
              + " its value, what is allowed; or the numbers behind the word, and what would tell."
              + " Empty when there is nothing to say.",
      gives = Quantity.TEXT,
      formula = "Calls the function with the same arguments and gives the sentence.",
      source = "None needed.",
      example = "CELLAR.WHY(\"BARREL.VOLUME\";50;0;81)",
      note =
          "Put it beside the cell with the same arguments. It says what these rest on: FERMENT.STATE,"
              + " VESSEL.LOSSES, BLEND.CARRIED, BOTTLE.FILLCHECK, BOTTLE.SULFITES, DUTY.USA, DUTY.UK.")
  public static Optional<Said> why(
      @FunctionName String function,
      @Arg(name = "argument", help = "The same arguments as in the cell") Object... arguments) {
    try {
      return CATALOGUE.get(function).why(arguments);
    } catch (Refusal unknown) {
      return Optional.of(unknown);
    }
  }

  /**
   * {@return what a function rests on, a text}
   *
   * @param function name of the function, such as "ALCOHOL.ABV"
   */
  @CellarFunction(
      summary = "The published source that a function rests on.",
      gives = Quantity.TEXT,
      formula = "None.",
      source = "None needed.",
      example = "CELLAR.SOURCE(\"BARREL.VOLUME\")")
  public static Optional<Said> source(@FunctionName String function) {
    return Optional.of(CATALOGUE.get(function)::source);
  }

  /**
   * {@return a function applied to whole columns, what the called function gives}
   *
   * @param function name of a function that gives one value
   * @param columns its arguments: columns of equal length, cells, constants
   */
  @CellarFunction(
      summary =
          "Applies a function to whole columns at once and gives a column: the fast way for long"
              + " logs. Enter it as an array formula.",
      formula =
          "Row by row, the function of that row's cells. A single cell or constant serves every"
              + " row; rows blank in every column stay blank; a refused row shows its error.",
      source = "None needed.",
      example = "CELLAR.MAP(\"GRAVITY.TOBRIX\";{1.04;1.09})")
  public static Object map(
      @Arg(name = "function", help = "Name of a function that gives one value") String function,
      @Arg(name = "column", help = "Its arguments: columns of equal length, cells, constants")
          Object... columns) {
    FunctionSpec called = CATALOGUE.get(function);
    if (!called.result().isScalar()) {
      throw new Refusal(CellarReason.NOT_ONE_VALUE).with("function", called.name());
    }
    return new Columns(columns).map(called);
  }

  /** Arguments of a mapped call: columns of one length, and values that serve every row. */
  private static final class Columns {
    private final Object[][][] ranges;
    private final Object[] row;
    private final int length;

    Columns(Object[] columns) {
      ranges = new Object[columns.length][][];
      row = columns.clone();
      int longest = 1;
      for (int c = 0; c < columns.length; c++) {
        if (columns[c] instanceof Object[][] range && (range.length > 1 || range[0].length > 1)) {
          ranges[c] = range.length == 1 ? transposed(range[0]) : range;
          if (range.length > 1 && range[0].length > 1) {
            throw new Refusal(CellarReason.BLOCK);
          }
          if (longest > 1 && ranges[c].length != longest) {
            throw new Refusal(CellarReason.UNEQUAL_COLUMNS)
                .with("first", longest)
                .with("other", ranges[c].length);
          }
          longest = ranges[c].length;
        }
      }
      length = longest;
    }

    private static Object[][] transposed(Object[] cells) {
      return Arrays.stream(cells).map(cell -> new Object[] {cell}).toArray(Object[][]::new);
    }

    Object[][] map(FunctionSpec called) {
      Object[][] results = new Object[length][1];
      for (int i = 0; i < length; i++) {
        results[i][0] = isBlank(i) ? "" : answer(called);
      }
      return results;
    }

    /** Puts row i into place; says whether all its column cells are blank. */
    private boolean isBlank(int i) {
      boolean anyColumn = false;
      boolean anyValue = false;
      for (int c = 0; c < ranges.length; c++) {
        if (ranges[c] != null) {
          Object cell = ranges[c][i][0];
          boolean blank = cell == null || cell instanceof String text && text.isBlank();
          row[c] = blank ? (Object) 0.0 : cell;
          anyColumn = true;
          anyValue |= !blank;
        }
      }
      return anyColumn && !anyValue;
    }

    private Object answer(FunctionSpec called) {
      try {
        return called.call(row);
      } catch (Refusal refusal) {
        return refusal;
      }
    }
  }
}
