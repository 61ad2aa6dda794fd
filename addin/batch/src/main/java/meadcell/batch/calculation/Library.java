package meadcell.batch.calculation;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.apache.poi.ss.formula.OperationEvaluationContext;
import org.apache.poi.ss.formula.atp.AnalysisToolPak;
import org.apache.poi.ss.formula.eval.ConcatEval;
import org.apache.poi.ss.formula.eval.FunctionEval;
import org.apache.poi.ss.formula.eval.IntersectionEval;
import org.apache.poi.ss.formula.eval.NotImplementedFunctionException;
import org.apache.poi.ss.formula.eval.PercentEval;
import org.apache.poi.ss.formula.eval.RangeEval;
import org.apache.poi.ss.formula.eval.RelationalOperationEval;
import org.apache.poi.ss.formula.eval.TwoOperandNumericOperation;
import org.apache.poi.ss.formula.eval.UnaryMinusEval;
import org.apache.poi.ss.formula.eval.UnaryPlusEval;
import org.apache.poi.ss.formula.eval.ValueEval;
import org.apache.poi.ss.formula.function.FunctionMetadata;
import org.apache.poi.ss.formula.function.FunctionMetadataRegistry;
import org.apache.poi.ss.formula.functions.ArrayFunction;
import org.apache.poi.ss.formula.functions.FreeRefFunction;
import org.apache.poi.ss.formula.functions.Function;
import org.apache.poi.ss.formula.functions.Indirect;
import org.apache.poi.ss.formula.ptg.AbstractFunctionPtg;
import org.apache.poi.ss.formula.ptg.OperationPtg;
import org.apache.poi.ss.formula.ptg.Ptg;

/** The functions and operators of the spreadsheet, as POI computes them or better. */
final class Library {
  /** How a function is computed. */
  interface Body {
    ValueEval call(ValueEval[] arguments, OperationEvaluationContext context);
  }

  /**
   * A function or operator.
   *
   * @param takes what its arguments are: {@code V} single values, {@code R} references or areas,
   *     {@code A} whole arrays, as which they are computed; the last may stand for many
   * @param repeated how many of the last arguments may be repeated
   */
  record Entry(String name, String takes, int repeated, Body body) {
    char takes(int index) {
      int length = takes.length();
      return index < length
          ? takes.charAt(index)
          : takes.charAt(repeated == 2 ? length - 2 + (index - length) % 2 : length - 1);
    }

    /** Names an argument's role, the same for all that may be repeated. */
    String role(int index, int count) {
      return repeated == 0
          ? "/" + count + " " + (index + 1)
          : index < takes.length() - repeated ? " " + (index + 1) : " *" + takes(index);
    }

    /** An operator as it is written. */
    String sign() {
      return name.replace("X", "");
    }

    boolean isOperator() {
      return !Character.isLetter(name.charAt(0));
    }
  }

  private static final String PREFIXES =
      "^(_XLFN\\.)?(_XLWS\\.)?(COM\\.MICROSOFT\\.|ORG\\.(LIBREOFFICE|OPENOFFICE)\\.|LEGACY\\.)?";

  private static final Map<String, Body> OPERATORS =
      Map.ofEntries(
          operator("+", Mended::sum),
          operator("-", Mended::difference),
          operator("*", TwoOperandNumericOperation.MultiplyEval),
          operator("/", TwoOperandNumericOperation.DivideEval),
          operator("^", Mended::power),
          operator("&", ConcatEval.instance),
          operator("<", Mended.comparison(RelationalOperationEval.LessThanEval)),
          operator("<=", Mended.comparison(RelationalOperationEval.LessEqualEval)),
          operator("=", Mended.comparison(RelationalOperationEval.EqualEval)),
          operator(">=", Mended.comparison(RelationalOperationEval.GreaterEqualEval)),
          operator(">", Mended.comparison(RelationalOperationEval.GreaterThanEval)),
          operator("<>", Mended.comparison(RelationalOperationEval.NotEqualEval)),
          operator("+X", UnaryPlusEval.instance),
          operator("-X", UnaryMinusEval.instance),
          operator("%", PercentEval.instance),
          operator(":", RangeEval.instance),
          operator(" ", IntersectionEval.instance));

  /** What POI's functions from add-ins take, if not single values; * and ~ repeat one or two. */
  private static final Map<String, String> ADD_IN_TAKES =
      Map.ofEntries(
          Map.entry("AVERAGEIF", "RVR"),
          Map.entry("AVERAGEIFS", "RRV~"),
          Map.entry("SUMIFS", "RRV~"),
          Map.entry("MAXIFS", "RRV~"),
          Map.entry("MINIFS", "RRV~"),
          Map.entry("COUNTIFS", "RV~"),
          Map.entry("CONCAT", "R*"),
          Map.entry("TEXTJOIN", "VVR*"),
          Map.entry("IFS", "VV~"),
          Map.entry("SWITCH", "VVV~"),
          Map.entry("COVARIANCE.P", "AA"),
          Map.entry("COVARIANCE.S", "AA"),
          Map.entry("FORECAST.LINEAR", "VAA"),
          Map.entry("GCD", "R*"),
          Map.entry("LCM", "R*"),
          Map.entry("NETWORKDAYS", "VVR"),
          Map.entry("WORKDAY", "VVR"),
          Map.entry("WORKDAY.INTL", "VVVR"),
          Map.entry("PERCENTRANK.EXC", "RVV"),
          Map.entry("PERCENTRANK.INC", "RVV"),
          Map.entry("STDEV.P", "R*"),
          Map.entry("STDEV.S", "R*"),
          Map.entry("VAR.P", "R*"),
          Map.entry("VAR.S", "R*"),
          Map.entry("PERCENTILE.INC", "RV"),
          Map.entry("QUARTILE.INC", "RV"),
          Map.entry("RANK.EQ", "VRV"),
          Map.entry("XLOOKUP", "VRRVVV"),
          Map.entry("XMATCH", "VRVV"),
          Map.entry("SHEET", "R"),
          Map.entry("SINGLE", "R"));

  private final Map<String, Entry> entries = new HashMap<>();

  private static Map.Entry<String, Body> operator(String sign, Function function) {
    return Map.entry(sign, body(function));
  }

  private static Body body(Function function) {
    return (args, ec) -> function.evaluate(args, ec.getRowIndex(), ec.getColumnIndex());
  }

  /** The function's or operator's name as people write it in English. */
  static String name(OperationPtg token) {
    return token instanceof AbstractFunctionPtg function
        ? function.getName()
        : switch (token.getClass().getSimpleName()) {
          case "AddPtg" -> "+";
          case "SubtractPtg" -> "-";
          case "MultiplyPtg" -> "*";
          case "DividePtg" -> "/";
          case "PowerPtg" -> "^";
          case "ConcatPtg" -> "&";
          case "LessThanPtg" -> "<";
          case "LessEqualPtg" -> "<=";
          case "EqualPtg" -> "=";
          case "GreaterEqualPtg" -> ">=";
          case "GreaterThanPtg" -> ">";
          case "NotEqualPtg" -> "<>";
          case "UnaryPlusPtg" -> "+X";
          case "UnaryMinusPtg" -> "-X";
          case "PercentPtg" -> "%";
          case "RangePtg" -> ":";
          case "IntersectionPtg" -> " ";
          default -> ",";
        };
  }

  /** The function's or operator's entry, or null if there is none. */
  Entry find(String name) {
    String plain = name.toUpperCase(Locale.ROOT).replaceFirst(PREFIXES, "");
    return entries.computeIfAbsent(plain, Library::entry);
  }

  private static Entry entry(String name) {
    if (OPERATORS.containsKey(name)) {
      boolean single = name.length() > 1 && name.endsWith("X") || name.equals("%");
      String takes = ": ".contains(name) ? "RR" : single ? "V" : "VV";
      return new Entry(name, takes, 0, OPERATORS.get(name));
    }
    FunctionMetadata known = FunctionMetadataRegistry.getFunctionByName(name);
    String takes = known == null ? ADD_IN_TAKES.getOrDefault(name, "V") : takes(known);
    int repeated = takes.endsWith("*") ? 1 : takes.endsWith("~") ? 2 : 0;
    Body body = Mended.FUNCTIONS.get(name);
    if (body == null) {
      body = known == null ? addIn(name) : builtIn(known);
    }
    return body == null ? null : new Entry(name, takes.replaceAll("[*~]", ""), repeated, body);
  }

  private static Body addIn(String name) {
    FreeRefFunction function = AnalysisToolPak.instance.findFunction(name);
    return function == null ? null : function::evaluate;
  }

  private static Body builtIn(FunctionMetadata known) {
    if (known.getName().equals("INDIRECT")) {
      return Indirect.instance::evaluate;
    }
    try {
      Function function = FunctionEval.getBasicFunction(known.getIndex());
      boolean givesArray = known.getReturnClassCode() == Ptg.CLASS_ARRAY;
      return givesArray && function instanceof ArrayFunction array
          ? (args, ec) -> array.evaluateArray(args, ec.getRowIndex(), ec.getColumnIndex())
          : body(function);
    } catch (NotImplementedFunctionException e) {
      return null;
    }
  }

  private static String takes(FunctionMetadata known) {
    if (known.getName().equals("LOOKUP")) {
      return "VAA"; // of arrays, too, in every spreadsheet program
    }
    StringBuilder takes = new StringBuilder();
    for (byte code : known.getParameterClassCodes()) {
      takes.append(code == Ptg.CLASS_REF ? 'R' : code == Ptg.CLASS_ARRAY ? 'A' : 'V');
    }
    return (takes.isEmpty() ? "V" : takes.toString()) + (known.getMaxParams() >= 30 ? "*" : "");
  }
}
