package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A blank row in a range is one of the rows that a user counts: with it before a bad row, every
 * function names the row below, and a good answer stays what it was.
 */
class BlankRowTest {
  private static final Pattern ROW = Pattern.compile("\\b([Rr]ow|Zeile) (\\d+)");

  /** Reasons that name a row by the function itself, which only a bad row can show. */
  private static final Set<String> NAMED =
      Set.of(
          "TIMES_MUST_RISE",
          "NOT_LATER",
          "DAY_NOT_LATER",
          "NOT_AN_ORDER",
          "SAME_ADDITION",
          "TURNS_BACK",
          "MORE_RIGHT_THAN_ANSWERS",
          "CANNOT_MOVE");

  static List<FunctionSpec> functions() {
    return Cellar.catalogue().functions().stream()
        .filter(f -> !f.isVariadic() && f.args().stream().anyMatch(BlankRowTest::hasRows))
        .toList();
  }

  private static boolean hasRows(ArgSpec arg) {
    return arg.kind().isColumn()
        || arg.kind() == Kind.NUMBER_TABLE
        || arg.kind() == Kind.TABLE && arg.rows() != null;
  }

  @ParameterizedTest
  @MethodSource("functions")
  void aRefusalNamesTheRowOfTheRange(FunctionSpec function) {
    for (Refused refused : refused(function)) {
      for (int above = 0; above < refused.row; above++) {
        int blank = above;
        Object[] given = withBlankRow(function, refused.arg, refused.given, blank);
        Refusal now = assertThrows(Refusal.class, () -> function.call(given), refused.said);
        for (Words words : Words.all()) {
          assertEquals(
              shifted(refused.refusal.sentence(words), blank),
              now.sentence(words),
              function.name() + ", a blank row above row " + (blank + 1));
        }
        assertEquals(
            refused.refusal.place().map(Place::row).map(row -> row > blank ? row + 1 : row),
            now.place().map(Place::row),
            refused.said);
      }
    }
  }

  @Test
  void whatFunctionsFindThemselvesIsAmongIt() {
    Set<String> seen = new TreeSet<>();
    for (FunctionSpec function : functions()) {
      for (Refused refused : refused(function)) {
        seen.add(((Enum<?>) refused.refusal.reason()).name());
      }
    }
    assertTrue(seen.containsAll(NAMED), () -> "only " + seen);
  }

  @ParameterizedTest
  @MethodSource("functions")
  void anAnswerIsWhatItWas(FunctionSpec function) {
    Object[] example = example(function);
    Object answer = function.call(example);
    for (int i = 0; i < function.args().size(); i++) {
      if (hasRows(function.args().get(i)) && example[i] != null) {
        Object[] given = withBlankRow(function, i, example, height(example[i]) - 1);
        Object now = function.call(given);
        if (answer instanceof Object[][] rows && now instanceof Object[][] nowRows) {
          if (nowRows.length == rows.length + 1) { // a row of the result for each of the range
            List<Object[]> kept = new ArrayList<>(Arrays.asList(nowRows));
            kept.remove(rows.length - 1);
            nowRows = kept.toArray(Object[][]::new);
          }
          assertArrayEquals(rows, nowRows, function.name());
        } else {
          assertEquals(answer, now, function.name());
        }
      }
    }
  }

  @Test
  void aColumnOfResultsStandsBesideItsRows() {
    FunctionSpec history = Cellar.catalogue().get("BARREL.HISTORY");
    Object[][] full = (Object[][]) history.call(column(200.0, 225.0, 225.0), 6.1);
    assertArrayEquals(
        new Object[][] {{""}, full[0], {""}, full[1], full[2]},
        (Object[][]) history.call(column("", 200.0, "", 225.0, 225.0, ""), 6.1));
  }

  @Test
  void aRowGivenAsAColumnNamesItsColumn() {
    FunctionSpec remaining = Cellar.catalogue().get("FERMENT.REMAINING");
    Object[] days = {0.0, "", 14.0, 14.0};
    Object[] gravities = {1.001, "", 1.0, 1.0};
    Refusal refusal =
        assertThrows(
            Refusal.class,
            () -> remaining.call(new Object[][] {days}, new Object[][] {gravities}, 90.0));
    assertEquals(Optional.of(Place.cell(1, 4)), refusal.place());
  }

  /** A call with a bad row, and what was said of it. */
  private record Refused(int arg, Object[] given, Refusal refusal, int row, String said) {}

  /** Calls of the example with one cell changed, or two rows exchanged, that name a row. */
  private static List<Refused> refused(FunctionSpec function) {
    List<Refused> refused = new ArrayList<>();
    Object[] example = example(function);
    for (int i = 0; i < example.length; i++) {
      if (!hasRows(function.args().get(i)) || example[i] == null) {
        continue;
      }
      for (Object[][] bad : spoilt(rows(example[i]))) {
        Object[] given = example.clone();
        given[i] = bad;
        try {
          function.call(given);
        } catch (Refusal refusal) {
          Matcher row = ROW.matcher(refusal.getMessage());
          String argument = refusal.argument();
          boolean isOfThis = argument.isEmpty() || isTogether(function, i, argument);
          if (isOfThis && row.find()) {
            refused.add(
                new Refused(
                    i, given, refusal, Integer.parseInt(row.group(2)), refusal.getMessage()));
          }
        }
      }
    }
    return refused;
  }

  /** Whether a blank row in an argument is one in the other, too. */
  private static boolean isTogether(FunctionSpec function, int place, String other) {
    ArgSpec arg = function.args().get(place);
    return arg.name().equals(other)
        || arg.kind().isColumn()
            && function.args().stream()
                .anyMatch(each -> each.kind().isColumn() && each.name().equals(other));
  }

  private static List<Object[][]> spoilt(Object[][] rows) {
    List<Object[][]> spoilt = new ArrayList<>();
    for (int r = 0; r < rows.length; r++) {
      for (int c = 0; c < rows[r].length; c++) {
        List<Object> cells = new ArrayList<>(List.of(-1e9, 1e12, "xyzzy", "", 0.0, 1.0));
        cells.add(rows[Math.max(0, r - 1)][c]);
        cells.add(rows[0][Math.max(0, c - 1)]);
        if (rows[r][c] instanceof Double number) {
          cells.addAll(List.of(number / 2, number * 2, number + 0.5));
        }
        for (Object cell : cells) {
          Object[][] changed = copy(rows);
          changed[r][c] = cell;
          spoilt.add(changed);
        }
      }
      Object[][] exchanged = copy(rows);
      exchanged[r] = rows[Math.max(0, r - 1)];
      exchanged[Math.max(0, r - 1)] = rows[r];
      spoilt.add(exchanged);
    }
    return spoilt;
  }

  private static Object[] withBlankRow(FunctionSpec function, int arg, Object[] given, int above) {
    Object[] changed = given.clone();
    for (int i = 0; i < given.length; i++) {
      boolean isTogether =
          i == arg
              || function.args().get(arg).kind().isColumn()
                  && function.args().get(i).kind().isColumn();
      if (isTogether && given[i] != null) {
        List<Object[]> rows = new ArrayList<>(Arrays.asList(rows(given[i])));
        Object[] blank = new Object[rows.get(0).length];
        Arrays.fill(blank, "");
        rows.add(above, blank);
        changed[i] = rows.toArray(Object[][]::new);
      }
    }
    return changed;
  }

  private static String shifted(String sentence, int blankAbove) {
    return ROW.matcher(sentence)
        .replaceAll(
            found -> {
              int row = Integer.parseInt(found.group(2));
              return found.group(1) + " " + (row > blankAbove ? row + 1 : row);
            });
  }

  private static Object[] example(FunctionSpec function) {
    Object[] literal = LiteralCall.parse(function.declaration().example()).arguments();
    Object[] given = Arrays.copyOf(literal, function.args().size());
    for (int i = 0; i < given.length; i++) {
      // a row of cells is a column that lies
      if (function.args().get(i).kind().isColumn() && given[i] instanceof Object[][] cells) {
        given[i] = cells.length == 1 ? column(cells[0]) : cells;
      }
    }
    return given;
  }

  private static int height(Object given) {
    return rows(given).length;
  }

  private static Object[][] rows(Object given) {
    return given instanceof Object[][] rows ? rows : new Object[][] {{given}};
  }

  private static Object[][] copy(Object[][] rows) {
    return Arrays.stream(rows).map(Object[]::clone).toArray(Object[][]::new);
  }

  private static Object[][] column(Object... cells) {
    return Arrays.stream(cells).map(cell -> new Object[] {cell}).toArray(Object[][]::new);
  }
}
