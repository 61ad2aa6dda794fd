package meadcell.batch.calculation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.ss.formula.CacheAreaEval;
import org.apache.poi.ss.formula.EvaluationWorkbook;
import org.apache.poi.ss.formula.TwoDEval;
import org.apache.poi.ss.formula.eval.AreaEval;
import org.apache.poi.ss.formula.eval.BlankEval;
import org.apache.poi.ss.formula.eval.BoolEval;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.MissingArgEval;
import org.apache.poi.ss.formula.eval.NumericValueEval;
import org.apache.poi.ss.formula.eval.RefEval;
import org.apache.poi.ss.formula.eval.StringEval;
import org.apache.poi.ss.formula.eval.ValueEval;

/**
 * What a call of a function is like, as far as its being computed rightly may hang on it: one word
 * for each argument and one for the signs of its numbers. Of an argument: <code>@</code> a cell,
 * {@code []} an area, doubled if of several sheets, <code>{}</code> an array constant, {@code <>} a computed array, and what is
 * in it: {@code n} numbers, {@code h} very large or small ones, {@code t} texts, {@code q} texts
 * that look like numbers, {@code d} like dates or times, {@code z} empty texts, {@code b} truth
 * values, {@code e} errors, {@code _} blanks, {@code m} nothing.
 */
final class Shapes {
  private static final Pattern LIKE_A_NUMBER =
      Pattern.compile("\\s*[-+(]?\\W?[.,]?\\d.*|(?i)true|false", Pattern.DOTALL);
  private static final Pattern LIKE_A_DATE = Pattern.compile(".*\\d\\s*([-/:]|\\.\\d+\\.).*|.*\\d\\s*[a-zA-Z]{2}.*", Pattern.DOTALL);

  /** Numbers beyond are written with an exponent, in several ways. */
  private static final double SMALL = 1e-4;
  private static final double LARGE = 1e15;

  /** As many digits as a criterion can have before its last ones matter. */
  private static final int DIGITS = 12;

  private static final Pattern CRITERION =
      Pattern.compile("(<>|<=|>=|<|>|=)?(.*)", Pattern.DOTALL);

  /** Arguments that choose among ways of computing: their very value counts. */
  private static final Map<String, Integer> CHOICES =
      Map.ofEntries(
          Map.entry("WEEKDAY", 2),
          Map.entry("WEEKNUM", 2),
          Map.entry("ROMAN", 2),
          Map.entry("MATCH", 3),
          Map.entry("RANK", 3),
          Map.entry("YEARFRAC", 3),
          Map.entry("DAYS360", 3),
          Map.entry("WORKDAY.INTL", 3),
          Map.entry("ADDRESS", 3),
          Map.entry("XMATCH", 3),
          Map.entry("TDIST", 3),
          Map.entry("SUBTOTAL", 1),
          Map.entry("TEXT", 2),
          Map.entry("CEILING.MATH", 3),
          Map.entry("FLOOR.MATH", 3),
          Map.entry("ERROR.TYPE", 1));

  /** Functions in which a text can be a pattern or a comparison. */
  private static final Set<String> PATTERNED =
      Set.of(
          "COUNTIF", "SUMIF", "AVERAGEIF", "COUNTIFS", "SUMIFS", "AVERAGEIFS", "MAXIFS", "MINIFS",
          "MATCH", "VLOOKUP", "HLOOKUP", "LOOKUP", "XLOOKUP", "XMATCH", "SEARCH", "DATEVALUE",
          "TIMEVALUE", "VALUE", "NUMBERVALUE");

  private Shapes() {}

  /** The words for one call. */
  static List<String> of(
      Library.Entry function,
      List<Formula> written,
      ValueEval[] arguments,
      EvaluationWorkbook workbook) {
    List<String> words = new ArrayList<>(arguments.length + 1);
    StringBuilder signs = new StringBuilder();
    boolean several = function.repeated() > 0;
    String before = "";
    for (int i = 0; i < arguments.length; i++) {
      boolean isConstant = i < written.size() && isConstant(written.get(i));
      String shape = shape(function, i, arguments[i], isConstant, workbook);
      String after = PATTERNED.contains(function.name()) && i > 0 ? before + " " + shape : shape;
      words.add(function.name() + function.role(i, arguments.length) + " " + after);
      signs.append(sign(arguments[i]));
      before = shape;
    }
    if (arguments.length == 0) {
      words.add(function.name() + "/0");
    } else if (!function.isOperator() && !several) {
      words.add(function.name() + "/" + arguments.length + " signs " + signs);
    } else if (function.name().equals("^")) {
      words.add("^ signs " + signs);
    } else if (function.name().equals("/")) {
      words.add("/ signs " + sign(arguments[1]));
    }
    return words;
  }

  private static boolean isConstant(Formula formula) {
    return formula instanceof Formula.Operand operand
        && operand.token() instanceof org.apache.poi.ss.formula.ptg.ArrayPtg;
  }

  private static String shape(
      Library.Entry function,
      int index,
      ValueEval value,
      boolean isConstant,
      EvaluationWorkbook workbook) {
    if (value instanceof RefEval ref) {
      if (ref.getNumberOfSheets() > 1) {
        return "@@";
      }
      ValueEval inner = ref.getInnerValueEval(ref.getFirstSheetIndex());
      return "@" + kind(inner) + detail(function, index, inner);
    }
    if (value instanceof AreaEval area) {
      if (area.getFirstSheetIndex() != area.getLastSheetIndex()) {
        return "[[]]";
      }
      String kinds = kinds(area, workbook);
      String form = function.repeated() > 0 ? "" : form(area);
      return area instanceof CacheAreaEval
          ? isConstant ? "{" + form + kinds + "}" : "<" + form + kinds + ">"
          : "[" + form + kinds + "]";
    }
    return kind(value) + detail(function, index, value);
  }

  private static String form(TwoDEval area) {
    boolean row = area.getHeight() == 1;
    boolean column = area.getWidth() == 1;
    return row ? column ? "" : "row " : column ? "column " : "block ";
  }

  /** What there is in an area; below the sheet's last row all is blank. */
  private static String kinds(AreaEval area, EvaluationWorkbook workbook) {
    Set<String> kinds = new TreeSet<>();
    int height = area.getHeight();
    if (!(area instanceof CacheAreaEval)) {
      int filled = workbook.getSheet(area.getFirstSheetIndex()).getLastRowNum();
      int used = Math.max(0, filled - area.getFirstRow() + 1);
      if (used < height) {
        kinds.add("_");
        height = used;
      }
    }
    for (int row = 0; row < height; row++) {
      for (int column = 0; column < area.getWidth(); column++) {
        kinds.add(kind(area.getRelativeValue(row, column)));
      }
    }
    return String.join("", kinds);
  }

  private static String kind(ValueEval value) {
    if (value instanceof BoolEval) {
      return "b";
    }
    if (value instanceof NumericValueEval number) {
      double size = Math.abs(number.getNumberValue());
      return size == 0 || size >= SMALL && size < LARGE ? "n" : "h";
    }
    if (value instanceof StringEval text) {
      String string = text.getStringValue();
      return string.isEmpty()
          ? "z"
          : !LIKE_A_NUMBER.matcher(string).matches()
              ? "t"
              : LIKE_A_DATE.matcher(string).matches() ? "d" : "q";
    }
    if (value instanceof ErrorEval) {
      return "e";
    }
    return value instanceof BlankEval ? "_" : value instanceof MissingArgEval ? "m" : "?";
  }

  private static String detail(Library.Entry function, int index, ValueEval value) {
    boolean isChoice = CHOICES.getOrDefault(function.name(), 0) == index + 1;
    if (isChoice && value instanceof NumericValueEval number) {
      return "=" + number.getNumberValue();
    }
    if (isChoice && value instanceof ErrorEval error) {
      return "=" + error.getErrorString();
    }
    if (!(value instanceof StringEval text)) {
      return "";
    }
    return isChoice
        ? "=" + text.getStringValue()
        : PATTERNED.contains(function.name()) ? pattern(text.getStringValue()) : "";
  }

  /** The comparison, the wildcards and the kind of a criterion. */
  private static String pattern(String text) {
    Matcher criterion = CRITERION.matcher(text);
    criterion.matches();
    String operand = criterion.group(2);
    StringBuilder special = new StringBuilder(":");
    special.append(criterion.group(1) == null ? "" : criterion.group(1));
    special.append(kind(new StringEval(operand)));
    for (char c : "*?~".toCharArray()) {
      special.append(operand.indexOf(c) >= 0 ? String.valueOf(c) : "");
    }
    boolean regular = operand.chars().anyMatch(c -> "[](){}^$|+\\".indexOf(c) >= 0);
    boolean isLong = operand.chars().filter(Character::isDigit).count() > DIGITS;
    return special + (regular ? "[" : "") + (isLong ? "..." : "");
  }

  private static char sign(ValueEval value) {
    ValueEval single =
        value instanceof RefEval ref && ref.getNumberOfSheets() == 1
            ? ref.getInnerValueEval(ref.getFirstSheetIndex())
            : value;
    if (single instanceof NumericValueEval number && !(single instanceof BoolEval)) {
      return number.getNumberValue() < 0 ? '-' : number.getNumberValue() > 0 ? '+' : '0';
    }
    return '.';
  }
}
