package meadcell.batch.calculation;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;
import org.apache.poi.ss.formula.OperationEvaluationContext;
import org.apache.poi.ss.formula.TwoDEval;
import org.apache.poi.ss.formula.eval.BlankEval;
import org.apache.poi.ss.formula.eval.ErrorEval;
import org.apache.poi.ss.formula.eval.EvaluationException;
import org.apache.poi.ss.formula.eval.FunctionEval;
import org.apache.poi.ss.formula.eval.NumberEval;
import org.apache.poi.ss.formula.eval.NumericValueEval;
import org.apache.poi.ss.formula.eval.OperandResolver;
import org.apache.poi.ss.formula.eval.RefEval;
import org.apache.poi.ss.formula.eval.StringEval;
import org.apache.poi.ss.formula.eval.TwoOperandNumericOperation;
import org.apache.poi.ss.formula.eval.ValueEval;
import org.apache.poi.ss.formula.function.FunctionMetadataRegistry;
import org.apache.poi.ss.formula.functions.Function;

/** Functions and operators that POI computes otherwise than spreadsheet programs do. */
final class Mended {
  /** Two numbers that differ by less are one, as programs take them (48 bits of 53). */
  private static final double NOISE = 1.0 / (1L << 48);

  /** Months, days or minutes of a date. */
  private static final double MOST = 4000;

  static final Map<String, Library.Body> FUNCTIONS = new HashMap<>();

  static {
    FUNCTIONS.put("DATE", Mended::date);
    FUNCTIONS.put("TIME", Mended::time);
    FUNCTIONS.put("POWER", (args, ec) -> power(args, ec.getRowIndex(), ec.getColumnIndex()));
    FUNCTIONS.put("YEAR", date("YEAR", LocalDate::getYear));
    FUNCTIONS.put("MONTH", date("MONTH", LocalDate::getMonthValue));
    FUNCTIONS.put("DAY", date("DAY", LocalDate::getDayOfMonth));
    Map.of("WEEKDAY", 1, "WEEKNUM", 1, "EDATE", 1, "EOMONTH", 1, "WORKDAY", 1, "WORKDAY.INTL", 1)
        .forEach((name, dates) -> FUNCTIONS.put(name, dated(name, dates)));
    Map.of("DAYS", 2, "DAYS360", 2, "NETWORKDAYS", 2, "YEARFRAC", 2)
        .forEach((name, dates) -> FUNCTIONS.put(name, dated(name, dates)));
    FUNCTIONS.put("VLOOKUP", (args, ec) -> lookedUp("VLOOKUP", args, ec));
    FUNCTIONS.put("HLOOKUP", (args, ec) -> lookedUp("HLOOKUP", args, ec));
    FUNCTIONS.put("MOD", Mended::modulo);
    FUNCTIONS.put("ROMAN", Mended::roman);
    FUNCTIONS.put("COUNTIF", Mended::countIf);
    FUNCTIONS.put("CODE", number("CODE"));
    FUNCTIONS.put("N", Mended::plainNumber);
    FUNCTIONS.put("QUARTILE", Mended::quartile);
    FUNCTIONS.put("QUARTILE.INC", Mended::quartile);
    FUNCTIONS.put("PERCENTILE.INC", (args, ec) -> poi("PERCENTILE", args, ec));
    FUNCTIONS.put("RANK.EQ", (args, ec) -> poi("RANK", args, ec));
    FUNCTIONS.put("RSQ", Mended::determination);
    for (String deviation : List.of("STDEV", "VAR", "STDEV.S", "VAR.S")) {
      FUNCTIONS.put(
          deviation, (args, ec) -> deviation(poi(deviation, args, ec), poi("COUNT", args, ec)));
    }
    FUNCTIONS.put("IMREAL", number("IMREAL"));
    FUNCTIONS.put("IMAGINARY", number("IMAGINARY"));
  }

  private Mended() {}

  private static ValueEval poi(String name, ValueEval[] args, OperationEvaluationContext ec) {
    var known = FunctionMetadataRegistry.getFunctionByName(name);
    if (known == null) {
      return org.apache.poi.ss.formula.atp.AnalysisToolPak.instance
          .findFunction(name)
          .evaluate(args, ec);
    }
    Function function = FunctionEval.getBasicFunction(known.getIndex());
    return function.evaluate(args, ec.getRowIndex(), ec.getColumnIndex());
  }

  private static double number(ValueEval value, OperationEvaluationContext ec)
      throws EvaluationException {
    return OperandResolver.coerceValueToDouble(
        OperandResolver.getSingleValue(value, ec.getRowIndex(), ec.getColumnIndex()));
  }

  private static boolean isSame(double a, double b) {
    return a == b || Math.abs(a - b) < Math.abs(a) * NOISE;
  }

  /** Numbers that cancel but for noise give 0. */
  static ValueEval sum(ValueEval[] args, int row, int column) {
    return withoutNoise(TwoOperandNumericOperation.AddEval, args, row, column);
  }

  static ValueEval difference(ValueEval[] args, int row, int column) {
    return withoutNoise(TwoOperandNumericOperation.SubtractEval, args, row, column);
  }

  private static ValueEval withoutNoise(Function operation, ValueEval[] args, int row, int column) {
    ValueEval result = operation.evaluate(args, row, column);
    try {
      double first =
          OperandResolver.coerceValueToDouble(OperandResolver.getSingleValue(args[0], row, column));
      boolean cancels =
          result instanceof NumberEval number
              && number.getNumberValue() != 0
              && Math.abs(number.getNumberValue()) < Math.abs(first) * NOISE;
      return cancels ? NumberEval.ZERO : result;
    } catch (EvaluationException e) {
      return e.getErrorEval();
    }
  }

  /** Numbers are compared without noise. */
  static Function comparison(Function comparison) {
    return (args, row, column) -> {
      try {
        ValueEval a = OperandResolver.getSingleValue(args[0], row, column);
        ValueEval b = OperandResolver.getSingleValue(args[1], row, column);
        boolean same =
            a instanceof NumberEval x
                && b instanceof NumberEval y
                && isSame(x.getNumberValue(), y.getNumberValue());
        return comparison.evaluate(new ValueEval[] {a, same ? a : b}, row, column);
      } catch (EvaluationException e) {
        return e.getErrorEval();
      }
    };
  }

  /** Programs disagree on roots of negative numbers. */
  static ValueEval power(ValueEval[] args, int row, int column) {
    try {
      double base =
          OperandResolver.coerceValueToDouble(OperandResolver.getSingleValue(args[0], row, column));
      double exponent =
          OperandResolver.coerceValueToDouble(OperandResolver.getSingleValue(args[1], row, column));
      if (base < 0 && exponent != Math.rint(exponent)) {
        throw new Unproven("programs disagree on roots of negative numbers.");
      }
      ValueEval result = TwoOperandNumericOperation.PowerEval.evaluate(args, row, column);
      boolean vanishes =
          base != 0 && result instanceof NumberEval number && number.getNumberValue() == 0;
      if (vanishes) {
        throw new Unproven("the number is too small.");
      }
      return result;
    } catch (EvaluationException e) {
      return e.getErrorEval();
    }
  }

  /** Programs disagree on the years up to 99. */
  private static ValueEval date(ValueEval[] args, OperationEvaluationContext ec) {
    return within(args[0], ec, 100, 9999, "years of one or two digits")
        .or(() -> within(args[1], ec, -MOST, MOST, "so many months"))
        .or(() -> within(args[2], ec, -MOST, MOST, "so many days"))
        .orElseGet(() -> poi("DATE", args, ec));
  }

  private static ValueEval time(ValueEval[] args, OperationEvaluationContext ec) {
    for (ValueEval arg : args) {
      Optional<ValueEval> error =
          within(arg, ec, 0, arg == args[0] ? 23 : MOST, "times beyond a day");
      ValueEval value = arg instanceof RefEval ref ? single(ref) : arg;
      if (value instanceof NumberEval n && n.getNumberValue() != Math.rint(n.getNumberValue())) {
        throw new Unproven("programs disagree on shares of hours, minutes and seconds.");
      }
      if (error.isPresent()) {
        return error.get();
      }
    }
    return poi("TIME", args, ec);
  }

  /** An error, or nothing to object. */
  private static Optional<ValueEval> within(
      ValueEval arg, OperationEvaluationContext ec, double least, double most, String what) {
    try {
      double number = number(arg, ec);
      if (number < least || number > most) {
        throw new Unproven("programs disagree on " + what + ".");
      }
      return Optional.empty();
    } catch (EvaluationException e) {
      return Optional.of(e.getErrorEval());
    }
  }

  /** Programs disagree on the days before March 1900. */
  private static Library.Body date(String name, ToIntFunction<LocalDate> part) {
    return (args, ec) -> {
      try {
        ValueEval value =
            OperandResolver.getSingleValue(args[0], ec.getRowIndex(), ec.getColumnIndex());
        if (args.length != 1 || value instanceof StringEval) {
          return poi(name, args, ec);
        }
        double day = Math.floor(OperandResolver.coerceValueToDouble(value));
        if (day <= 60) {
          throw new Unproven("programs disagree on days before March 1900.");
        }
        return new NumberEval(part.applyAsInt(LocalDate.of(1899, 12, 30).plusDays((long) day)));
      } catch (EvaluationException e) {
        return e.getErrorEval();
      }
    };
  }

  /** Programs disagree on the days before March 1900, and on times in whole days. */
  private static Library.Body dated(String name, int dates) {
    return (args, ec) -> {
      for (int i = 0; i < Math.min(dates, args.length); i++) {
        ValueEval value = args[i] instanceof RefEval ref ? single(ref) : args[i];
        if (value instanceof NumberEval day
            && (day.getNumberValue() <= 60
                || name.equals("DAYS")
                    && day.getNumberValue() != Math.rint(day.getNumberValue()))) {
          throw new Unproven("programs disagree on such days.");
        }
      }
      return poi(name, args, ec);
    };
  }

  private static ValueEval single(RefEval ref) {
    return ref.getInnerValueEval(ref.getFirstSheetIndex());
  }

  /** Programs disagree on columns and rows beyond the table. */
  private static ValueEval lookedUp(String name, ValueEval[] args, OperationEvaluationContext ec) {
    ValueEval index = args.length > 2 && args[2] instanceof RefEval ref ? single(ref) : args[2];
    boolean isBeyond =
        args[1] instanceof TwoDEval table
            && index instanceof NumberEval number
            && number.getNumberValue()
                >= 1 + (name.equals("VLOOKUP") ? table.getWidth() : table.getHeight());
    if (isBeyond) {
      throw new Unproven("it looks beyond its table.");
    }
    return poi(name, args, ec);
  }

  private static ValueEval modulo(ValueEval[] args, OperationEvaluationContext ec) {
    try {
      double value = number(args[0], ec);
      double divisor = number(args[1], ec);
      if (divisor == 0) {
        return ErrorEval.DIV_ZERO;
      }
      double quotient = value / divisor;
      double whole =
          isSame(quotient, Math.rint(quotient)) ? Math.rint(quotient) : Math.floor(quotient);
      double rest = value - whole * divisor;
      return new NumberEval(Math.abs(rest) < Math.abs(value) * NOISE ? 0 : rest);
    } catch (EvaluationException e) {
      return e.getErrorEval();
    }
  }

  private static ValueEval roman(ValueEval[] args, OperationEvaluationContext ec) {
    return poi("ROMAN", args.length == 1 ? new ValueEval[] {args[0], NumberEval.ZERO} : args, ec);
  }

  /** {@code "<>"} counts what is not blank. */
  private static ValueEval countIf(ValueEval[] args, OperationEvaluationContext ec) {
    boolean filled =
        args.length == 2
            && args[1] instanceof StringEval text
            && text.getStringValue().equals("<>")
            && args[0] instanceof TwoDEval;
    if (!filled) {
      return poi("COUNTIF", args, ec);
    }
    TwoDEval area = (TwoDEval) args[0];
    int count = 0;
    for (int row = 0; row < area.getHeight(); row++) {
      for (int column = 0; column < area.getWidth(); column++) {
        count += area.getValue(row, column) instanceof BlankEval ? 0 : 1;
      }
    }
    return new NumberEval(count);
  }

  /** POI gives these numbers as text. */
  private static Library.Body number(String name) {
    return (args, ec) -> {
      ValueEval result = poi(name, args, ec);
      return result instanceof StringEval text && !(result instanceof NumericValueEval)
          ? new NumberEval(Double.parseDouble(text.getStringValue()))
          : result;
    };
  }

  private static ValueEval plainNumber(ValueEval[] args, OperationEvaluationContext ec) {
    ValueEval value = args[0] instanceof RefEval ref ? single(ref) : args[0];
    return value instanceof ErrorEval || value instanceof NumberEval
        ? value
        : value instanceof NumericValueEval number
            ? new NumberEval(number.getNumberValue())
            : NumberEval.ZERO;
  }

  private static ValueEval quartile(ValueEval[] args, OperationEvaluationContext ec) {
    try {
      ValueEval share = new NumberEval(Math.floor(number(args[1], ec)) / 4);
      return poi("PERCENTILE", new ValueEval[] {args[0], share}, ec);
    } catch (EvaluationException e) {
      return e.getErrorEval();
    }
  }

  private static ValueEval determination(ValueEval[] args, OperationEvaluationContext ec) {
    ValueEval correlation = poi("PEARSON", args, ec);
    return correlation instanceof NumberEval r
        ? new NumberEval(r.getNumberValue() * r.getNumberValue())
        : correlation;
  }

  /** Of fewer than two numbers there is none. */
  private static ValueEval deviation(ValueEval result, ValueEval count) {
    boolean isOfFew = count instanceof NumberEval number && number.getNumberValue() < 2;
    return result == ErrorEval.NUM_ERROR && isOfFew ? ErrorEval.DIV_ZERO : result;
  }
}
