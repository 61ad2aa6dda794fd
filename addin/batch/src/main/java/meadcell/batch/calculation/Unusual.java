package meadcell.batch.calculation;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import meadcell.batch.book.Setting;
import org.apache.poi.ss.formula.EvaluationWorkbook;
import org.apache.poi.ss.formula.eval.AreaEval;
import org.apache.poi.ss.formula.eval.RefEval;
import org.apache.poi.ss.formula.eval.StringEval;
import org.apache.poi.ss.formula.eval.ValueEval;

/**
 * Calls whose results hang on a setting of the workbook. What is proven was proven with the
 * settings of most workbooks.
 */
record Unusual(Set<Setting> settings) {
  static final Unusual NOTHING = new Unusual(Set.of());

  private static final Set<String> DAYS =
      Set.of(
          "DATE",
          "DATEVALUE",
          "DATEDIF",
          "DAY",
          "DAYS",
          "DAYS360",
          "EDATE",
          "EOMONTH",
          "ISOWEEKNUM",
          "MONTH",
          "NETWORKDAYS",
          "NETWORKDAYS.INTL",
          "NUMBERVALUE",
          "VALUE",
          "WEEKDAY",
          "WEEKNUM",
          "WORKDAY",
          "WORKDAY.INTL",
          "YEAR",
          "YEARFRAC");

  private static final Set<String> COMPARISONS = Set.of("=", "<>", "<", "<=", ">", ">=");
  private static final Set<String> SEARCHES =
      Set.of(
          "AVERAGEIF",
          "AVERAGEIFS",
          "COUNTIF",
          "COUNTIFS",
          "HLOOKUP",
          "LOOKUP",
          "MATCH",
          "MAXIFS",
          "MINIFS",
          "SEARCH",
          "SUMIF",
          "SUMIFS",
          "SWITCH",
          "VLOOKUP",
          "XLOOKUP",
          "XMATCH");

  private static final Pattern NUMBER = Pattern.compile("[<>=]*[-+]?[0-9]+([.,][0-9]+)?");
  private static final Pattern OF_DAYS = Pattern.compile("(?i).*[ymd].*", Pattern.DOTALL);

  /** Throws where a call is one of them. */
  void check(Library.Entry function, ValueEval[] values, EvaluationWorkbook workbook) {
    if (settings.isEmpty()) {
      return;
    }
    String name = function.name();
    if (settings.contains(Setting.OTHER_DAYS) && isOfDays(name, values, workbook)) {
      throw because(Setting.OTHER_DAYS);
    }
    if (SEARCHES.contains(name)
        && settings.contains(Setting.PATTERNS)
        && hasText(values, workbook)) {
      throw because(Setting.PATTERNS);
    }
    if ((SEARCHES.contains(name) || COMPARISONS.contains(name))
        && settings.contains(Setting.CAPITALS)
        && differInCapitals(values, workbook)) {
      throw because(Setting.CAPITALS);
    }
  }

  /** Why a formula of the user's own is not computed at all. */
  static Unproven because(Setting setting) {
    return new Unproven(setting.sentence() + ".");
  }

  private static boolean isOfDays(String name, ValueEval[] values, EvaluationWorkbook workbook) {
    if (DAYS.contains(name)) {
      return true;
    }
    boolean isShown = name.equals("TEXT") && values.length > 1;
    return isShown
            && texts(values[1], workbook).stream().anyMatch(text -> OF_DAYS.matcher(text).matches())
        || !name.equals("&") && !name.equals("TEXT") && anyLikeADate(values);
  }

  private static boolean anyLikeADate(ValueEval[] values) {
    for (ValueEval value : values) {
      if (Shapes.isLikeADate(value)
          || value instanceof RefEval ref
              && ref.getNumberOfSheets() == 1
              && Shapes.isLikeADate(ref.getInnerValueEval(ref.getFirstSheetIndex()))) {
        return true;
      }
    }
    return false;
  }

  private static boolean hasText(ValueEval[] values, EvaluationWorkbook workbook) {
    for (ValueEval value : values) {
      if (!(value instanceof AreaEval) && !texts(value, workbook).isEmpty()) {
        return true;
      }
    }
    return false;
  }

  /** Whether two of the texts are the same but for capital letters, or one may be a pattern. */
  private static boolean differInCapitals(ValueEval[] values, EvaluationWorkbook workbook) {
    List<String> texts = new ArrayList<>();
    for (ValueEval value : values) {
      List<String> here = texts(value, workbook);
      boolean isPattern =
          !(value instanceof AreaEval)
              && here.stream().anyMatch(text -> text.matches("(?s).*[*?~<>=].*"));
      for (String text : here) {
        if (isPattern
            || texts.stream().anyMatch(o -> o.equalsIgnoreCase(text) && !o.equals(text))) {
          return true;
        }
      }
      texts.addAll(here);
    }
    return false;
  }

  /** The texts in an argument, but those that only compare with a number. */
  private static List<String> texts(ValueEval value, EvaluationWorkbook workbook) {
    if (value instanceof StringEval text) {
      boolean isNumber = NUMBER.matcher(text.getStringValue()).matches();
      return isNumber ? List.of() : List.of(text.getStringValue());
    }
    if (value instanceof RefEval ref && ref.getNumberOfSheets() == 1) {
      return texts(ref.getInnerValueEval(ref.getFirstSheetIndex()), workbook);
    }
    List<String> texts = new ArrayList<>();
    if (value instanceof AreaEval area) {
      int height = Shapes.filledHeight(area, workbook);
      for (int row = 0; row < height; row++) {
        for (int column = 0; column < area.getWidth(); column++) {
          if (area.getRelativeValue(row, column) instanceof StringEval text) {
            texts.add(text.getStringValue());
          }
        }
      }
    }
    return texts;
  }
}
