package meadcell.samples.cellar;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import meadcell.samples.sheet.Workings;

/** What Today tells of the rows of all logs: which lack something, and which do not count. */
final class Told {
  /** Each log by the beginning of its columns' names. */
  private static final Map<String, String> LOGS = new LinkedHashMap<>();

  static {
    LOGS.put("move", Logs.MOVES);
    LOGS.put("reading", Logs.READINGS);
    LOGS.put("analysis", Logs.ANALYSES);
    LOGS.put("tasting", Logs.TASTINGS);
    LOGS.put("addition", Logs.ADDITIONS);
    LOGS.put("check", InstrumentPage.CHECKS);
    LOGS.put("lot", Registers.LOTS);
    LOGS.put("vessel", Registers.VESSELS);
    LOGS.put("past", Registers.PAST);
  }

  /** Days of complete rows, and what makes them so. */
  private static final Map<String, String> DAYS =
      Map.of(
          "mv_day", "",
          "an_day", "",
          "reading_day", ",reading_lot,\"?*\",reading_gravity,\">0\",reading_temperature,\">-99\"",
          "tasting_day", ",tasting_vessel,\"?*\",tasting_score,\">=0\"",
          "addition_day", ",addition_vessel,\"?*\",addition_what,\"?*\"");

  /** Gauged volumes are good to half a per cent where nothing else is said: twice that. */
  private static final double BEYOND = 0.01;

  private Told() {}

  /** The last day on which something happened, before this one if any. */
  private static String lastDay(String before) {
    return DAYS.keySet().stream()
        .sorted()
        .map(
            day ->
                "MAXIFS(DAY,DAY,\">0\"%s%s)"
                    .replace("DAY", day)
                    .formatted(
                        DAYS.get(day),
                        before.isEmpty() ? "" : ",%s,\"<\"&%s".formatted(day, before)))
        .collect(Collectors.joining(",", "INT(MAX(", "))"));
  }

  static void workings(Workings state) {
    LOGS.forEach(
        (name, title) ->
            state.column(
                "lacks_" + name,
                1,
                "IF(COUNTIF(LACKING,\"?*\")=0,\"\",COUNTIF(LACKING,\"?*\")&\" in TITLE, first in line \"&(MATCH(\"?*\",LACKING,0)+HEADER)&\" (\"&INDEX(LACKING,MATCH(\"?*\",LACKING,0))&\"). \")"
                    .replace("LACKING", name + "_lacking")
                    .replace("HEADER", name + "_header")
                    .replace("TITLE", title)));
    one(state, "told_lacking", told("lacks_", "&"));
    one(state, "told_later", later());
    one(
        state,
        "told_day",
        "IF(told_later=0,\"\",\"Shown is the cellar on \"&YEAR(today)&\"-\"&RIGHT(100+MONTH(today),2)&\"-\"&RIGHT(100+DAY(today),2)&\", the day on page Today. Rows of later days do not count: \"&told_later&\".\")");
    one(state, "told_last", lastDay(""));
    one(state, "told_before", lastDay("told_last"));
    state
        .array(
            1,
            "MIN(IF(ISNUMBER(v_space),IF(v_space<-%s*v_capacity,ROW(v_space),\"\"),\"\"))"
                .formatted(BEYOND),
            "over")
        .block("told_over", "over", "over", 1);
  }

  /** A name for a single cell. */
  private static void one(Workings state, String name, String formula) {
    state.column("of_" + name, 1, formula).block(name, "of_" + name, "of_" + name, 1);
  }

  private static String told(String prefix, String between) {
    return LOGS.keySet().stream()
        .map(name -> "[" + prefix + name + "]")
        .collect(Collectors.joining(between));
  }

  /** How many rows are of a later day than the book's. */
  private static String later() {
    return DAYS.keySet().stream()
        .sorted()
        .map(day -> "COUNTIF(" + day + ",\">=\"&(INT(today)+1))")
        .collect(Collectors.joining("+"));
  }

  /** All of it in a sentence or more. */
  static String sentence() {
    return "IF(AND(told_before>0,told_last-told_before>400),\"The last day in the logs comes \"&(told_last-told_before)&\" days after the one before it: is its year right? \",\"\")"
        + "&IF(told_over=0,\"\",INDEX(v_name,told_over)&\" holds more than it can: look at its rows and its sizes. \")"
        + "&IF(told_lacking=\"\",\"All rows are complete.\",\"Rows that lack something: \"&told_lacking&\"There they are marked, and the top says what.\")";
  }
}
