package meadcell.batch.calculation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
import org.apache.poi.ss.formula.ptg.ArrayPtg;

/**
 * What a call of a function is like, as far as its being computed rightly may hang on it, in words:
 * for each argument its origin and what is in it, and for all together the signs of numbers.
 *
 * <p>Origins are <code>@</code> a cell, {@code []} an area (doubled: of several sheets), <code>{}
 * </code> an array constant, {@code <>} a computed array, else a single value. In them are {@code
 * n} numbers, {@code h} very large or small ones, {@code t} texts, {@code q} texts that look like
 * numbers, {@code d} like dates or times, {@code z} empty texts, {@code b} TRUE, {@code f} FALSE,
 * {@code e} errors, {@code _} blanks, {@code m} nothing.
 */
final class Shapes {
  private static final Pattern LIKE_A_NUMBER =
      Pattern.compile("\\s*[-+(]?\\W?[.,]?\\d.*|(?i)true|false", Pattern.DOTALL);
  private static final Pattern LIKE_A_DATE =
      Pattern.compile(".*\\d\\s*([-/:]|\\.\\d+\\.).*|.*\\d\\s*[a-zA-Z]{2}.*", Pattern.DOTALL);

  /** Numbers beyond are written with an exponent, in several ways. */
  private static final double SMALL = 1e-4;

  private static final double LARGE = 1e15;

  /** Whole columns and rows. */
  private static final int ENDLESS = 1 << 8;

  /** As many digits as a criterion can have before its last ones matter. */
  private static final int DIGITS = 12;

  private static final Pattern CRITERION = Pattern.compile("(<>|<=|>=|<|>|=)?(.*)", Pattern.DOTALL);

  /** The argument that chooses among ways of computing: its very value belongs to the name. */
  private static final Map<String, Integer> CHOICES =
      Map.ofEntries(
          Map.entry("WEEKDAY", 2),
          Map.entry("WEEKNUM", 2),
          Map.entry("ROMAN", 2),
          Map.entry("MATCH", 3),
          Map.entry("VLOOKUP", 4),
          Map.entry("HLOOKUP", 4),
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
          "COUNTIF",
          "SUMIF",
          "AVERAGEIF",
          "COUNTIFS",
          "SUMIFS",
          "AVERAGEIFS",
          "MAXIFS",
          "MINIFS",
          "MATCH",
          "VLOOKUP",
          "HLOOKUP",
          "LOOKUP",
          "XLOOKUP",
          "XMATCH",
          "SEARCH",
          "DATEVALUE",
          "TIMEVALUE",
          "VALUE",
          "NUMBERVALUE");

  /** Functions that search where they expect order. */
  private static final Set<String> SEARCHING = Set.of("MATCH", "VLOOKUP", "HLOOKUP", "LOOKUP");

  private final Library.Entry function;
  private final List<Formula> written;
  private final ValueEval[] arguments;
  private final EvaluationWorkbook workbook;
  private final List<String> words = new ArrayList<>();

  private Shapes(
      Library.Entry function,
      List<Formula> written,
      ValueEval[] arguments,
      EvaluationWorkbook workbook) {
    this.function = function;
    this.written = written;
    this.arguments = arguments;
    this.workbook = workbook;
  }

  /** The words for one call; what is taken as single values has no arrays in it any more. */
  static List<String> of(
      Library.Entry function,
      List<Formula> written,
      ValueEval[] arguments,
      EvaluationWorkbook workbook) {
    Shapes shapes = new Shapes(function, written, arguments, workbook);
    shapes.describe();
    return shapes.words;
  }

  /** The word for arrays of different sizes, element by element. */
  static List<String> unevenEach(Library.Entry function) {
    return List.of(function.name() + " uneven each");
  }

  /** The words for an array of which each element is taken. */
  static List<String> each(
      Library.Entry function, int index, int count, Formula written, AreaEval array) {
    List<String> words = new ArrayList<>();
    String each = function.name() + function.role(index, count) + " each" + origin(array, written);
    Set<String> kinds = new TreeSet<>();
    for (int row = 0; row < array.getHeight(); row++) {
      for (int column = 0; column < array.getWidth(); column++) {
        kinds.add(kind(array.getRelativeValue(row, column)));
      }
    }
    kinds.forEach(kind -> words.add(each + " " + kind));
    return words;
  }

  /** What is alike in all calls with the same words, for calls of single values; else null. */
  static String key(Library.Entry function, ValueEval[] arguments) {
    StringBuilder key = new StringBuilder(function.name());
    for (int i = 0; i < arguments.length; i++) {
      ValueEval single = single(arguments[i]);
      if (single instanceof AreaEval || single instanceof RefEval) {
        return null;
      }
      key.append('\n').append(single == arguments[i] ? "" : "@").append(kind(single));
      boolean isDetailed = CHOICES.getOrDefault(function.name(), 0) == i + 1;
      if (isDetailed || single instanceof StringEval && PATTERNED.contains(function.name())) {
        key.append(isDetailed ? value(single) : pattern(((StringEval) single).getStringValue()));
      }
      key.append(sign(single, i));
    }
    return key.toString();
  }

  private void describe() {
    int count = arguments.length;
    int choice = CHOICES.getOrDefault(function.name(), 0);
    String name =
        function.name()
            + (choice > 0 && choice <= count ? "=" + value(single(arguments[choice - 1])) : "");
    Set<String> before = Set.of();
    StringBuilder signs = new StringBuilder();
    for (int i = 0; i < count; i++) {
      String role = name + function.role(i, count) + " ";
      Set<String> inside = inside(i);
      String origin = origin(arguments[i], i < written.size() ? written.get(i) : null);
      boolean isArea = arguments[i] instanceof AreaEval;
      String form = isArea ? form((AreaEval) arguments[i]) : "";
      for (String kind : inside) {
        words.add(role + origin + form + kind);
        if (isSearched(i)) {
          before.forEach(other -> words.add(role + kind + " with " + other));
        }
      }
      if (isArea && !inside.contains("n")) {
        words.add(role + origin + "no n");
      }
      if (isArea && SEARCHING.contains(function.name()) && !isOrdered((AreaEval) arguments[i])) {
        words.add(role + origin + "unordered");
      }
      before = inside;
      signs.append(sign(single(arguments[i]), i));
    }
    if (isUneven(arguments)) {
      words.add(name + " uneven");
    }
    if (count == 0) {
      words.add(name + "/0");
    } else if (function.isOperator()) {
      String both = String.join("", inside(0)) + " " + String.join("", before);
      boolean isSigned = name.equals("^") || name.equals("/");
      words.add(name + " " + both + (isSigned ? " signs " + signs : ""));
    } else if (function.repeated() == 0) {
      words.add(name + "/" + count + " signs " + signs);
    }
  }

  /** Whether there are areas of different sizes. */
  static boolean isUneven(ValueEval[] arguments) {
    TwoDEval first = null;
    for (ValueEval argument : arguments) {
      if (argument instanceof TwoDEval area && !(argument instanceof RefEval)) {
        if (first != null
            && (first.getHeight() != area.getHeight() || first.getWidth() != area.getWidth())) {
          return true;
        }
        first = area;
      }
    }
    return false;
  }

  /** Whether an argument and the one before are what is looked for and where. */
  private boolean isSearched(int index) {
    return PATTERNED.contains(function.name())
        && index > 0
        && (index == 1 || function.repeated() == 2 && function.takes(index) == 'V')
        && function.takes(index - 1) != function.takes(index);
  }

  private static ValueEval single(ValueEval value) {
    return value instanceof RefEval ref && ref.getNumberOfSheets() == 1
        ? ref.getInnerValueEval(ref.getFirstSheetIndex())
        : value;
  }

  /** Whether an area is no part of a sheet. */
  static boolean isComputed(AreaEval area) {
    return area.getFirstSheetIndex() < 0;
  }

  private static String origin(ValueEval value, Formula written) {
    if (value instanceof RefEval ref) {
      return ref.getNumberOfSheets() > 1 ? "@@" : "@";
    }
    if (value instanceof AreaEval area) {
      boolean isConstant =
          written instanceof Formula.Operand operand && operand.token() instanceof ArrayPtg;
      return isComputed(area)
          ? isConstant ? "{} " : "<> "
          : area.getFirstSheetIndex() == area.getLastSheetIndex() ? "[] " : "[[]] ";
    }
    return "";
  }

  /** The form of an area, where it can matter. */
  private String form(TwoDEval area) {
    if (area.getHeight() >= ENDLESS || area.getWidth() >= ENDLESS) {
      return "endless ";
    }
    if (function.repeated() > 0) {
      return "";
    }
    boolean row = area.getHeight() == 1;
    boolean column = area.getWidth() == 1;
    return row ? column ? "" : "row " : column ? "column " : "block ";
  }

  /** The kinds of what there is in an argument; below the sheet's last row all is blank. */
  private Set<String> inside(int index) {
    if (!(arguments[index] instanceof AreaEval area)) {
      ValueEval value = single(arguments[index]);
      boolean isPattern = value instanceof StringEval && PATTERNED.contains(function.name());
      return Set.of(
          isPattern ? "t:" + pattern(((StringEval) value).getStringValue()) : kind(value));
    }
    Set<String> kinds = new TreeSet<>();
    int height = filledHeight(area, workbook);
    if (height < area.getHeight()) {
      kinds.add("_");
    }
    for (int row = 0; row < height; row++) {
      for (int column = 0; column < area.getWidth(); column++) {
        kinds.add(kind(area.getRelativeValue(row, column)));
      }
    }
    return kinds;
  }

  /** How many rows of an area do not lie below the last row of its sheet. */
  static int filledHeight(AreaEval area, EvaluationWorkbook workbook) {
    if (isComputed(area)) {
      return area.getHeight();
    }
    int filled = workbook.getSheet(area.getFirstSheetIndex()).getLastRowNum();
    return Math.min(area.getHeight(), Math.max(0, filled - area.getFirstRow() + 1));
  }

  /** Whether a text looks like a date or a time. */
  static boolean isLikeADate(ValueEval value) {
    return kind(value).equals("d");
  }

  /** Whether the numbers in the first column, or in the only row, rise. */
  private boolean isOrdered(AreaEval area) {
    boolean isRow = function.name().equals("HLOOKUP") || area.getHeight() == 1;
    int length =
        isRow
            ? area.getWidth()
            : Math.min(
                area.getHeight(),
                isComputed(area)
                    ? Integer.MAX_VALUE
                    : workbook.getSheet(area.getFirstSheetIndex()).getLastRowNum() + 1);
    double last = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < length; i++) {
      ValueEval value = isRow ? area.getRelativeValue(0, i) : area.getRelativeValue(i, 0);
      if (value instanceof NumericValueEval number && !(value instanceof BoolEval)) {
        if (number.getNumberValue() < last) {
          return false;
        }
        last = number.getNumberValue();
      }
    }
    return true;
  }

  private static String kind(ValueEval value) {
    if (value instanceof BoolEval truth) {
      return truth.getBooleanValue() ? "b" : "f";
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

  private static String value(ValueEval value) {
    if (value instanceof BoolEval truth) {
      return truth.getBooleanValue() ? "1.0" : "0.0";
    }
    if (value instanceof NumericValueEval number) {
      return String.valueOf(number.getNumberValue());
    }
    if (value instanceof StringEval text) {
      return text.getStringValue().replace("\n", " ");
    }
    return value instanceof ErrorEval error ? error.getErrorString() : kind(value);
  }

  /** The comparison, the wildcards and the kind of a criterion. */
  private static String pattern(String text) {
    Matcher criterion = CRITERION.matcher(text);
    criterion.matches();
    String operand = criterion.group(2);
    StringBuilder pattern = new StringBuilder();
    pattern.append(criterion.group(1) == null ? "" : criterion.group(1));
    pattern.append(kind(new StringEval(operand)));
    for (char c : "*?~".toCharArray()) {
      pattern.append(operand.indexOf(c) >= 0 ? String.valueOf(c) : "");
    }
    boolean regular = operand.chars().anyMatch(c -> "[](){}^$|+\\".indexOf(c) >= 0);
    boolean isLong = operand.chars().filter(Character::isDigit).count() > DIGITS;
    return pattern + (regular ? "[" : "") + (isLong ? "..." : "");
  }

  /** The sign of a number, and from the second argument on whether it is whole. */
  private static char sign(ValueEval value, int index) {
    if (!(value instanceof NumericValueEval numeric) || value instanceof BoolEval) {
      return '.';
    }
    double number = numeric.getNumberValue();
    boolean isWhole = index == 0 || number == Math.rint(number);
    return number < 0 ? isWhole ? '-' : 'g' : number > 0 ? isWhole ? '+' : 'f' : '0';
  }
}
