package meadcell.calc;

import com.sun.star.beans.PropertyValue;
import com.sun.star.beans.XPropertySet;
import com.sun.star.container.XIndexAccess;
import com.sun.star.frame.XComponentLoader;
import com.sun.star.frame.XStorable;
import com.sun.star.io.SequenceInputStream;
import com.sun.star.io.SequenceOutputStream;
import com.sun.star.io.XSequenceOutputStream;
import com.sun.star.sheet.FormulaResult;
import com.sun.star.sheet.XCellAddressable;
import com.sun.star.sheet.XCellRangeAddressable;
import com.sun.star.sheet.XSpreadsheet;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.table.CellAddress;
import com.sun.star.table.XCell;
import com.sun.star.text.XText;
import com.sun.star.uno.UnoRuntime;
import com.sun.star.uno.XComponentContext;
import com.sun.star.util.XCloseable;
import com.sun.star.util.XProtectable;
import java.util.ArrayList;
import java.util.List;
import meadcell.calc.menu.Texts;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;

/**
 * Says what each of our functions in a cell's formula was given, what it gives or why it refuses,
 * and what it rests on. The parts of the formula are computed by Calc itself in a spare cell of the
 * same row of a copy in memory, so the user's document stays as it is.
 */
final class Explanation {
  private static final String STREAM = "private:stream";

  private final XComponentContext context;
  private final Texts texts;

  Explanation(XComponentContext context, Texts texts) {
    this.context = context;
    this.texts = texts;
  }

  String of(XSpreadsheetDocument document, XCell cell) {
    List<CallText> calls =
        CallText.in(cell.getFormula().replaceAll("^\\{|}$", ""), Cellar.catalogue());
    if (calls.isEmpty()) {
      return texts.say("noCall");
    }
    CellAddress place = as(XCellAddressable.class, cell).getCellAddress();
    try {
      XSpreadsheetDocument copy = copy(document);
      try {
        XSpreadsheet sheet =
            as(
                XSpreadsheet.class,
                as(XIndexAccess.class, copy.getSheets()).getByIndex(place.Sheet));
        try {
          as(XProtectable.class, sheet)
              .unprotect(""); // of the copy; fails where a password was set
        } catch (com.sun.star.lang.IllegalArgumentException e) {
          return texts.say("protected");
        }
        int last = as(XCellRangeAddressable.class, sheet).getRangeAddress().EndColumn;
        XCell spare = sheet.getCellByPosition(last, place.Row);
        List<String> lines = new ArrayList<>();
        calls.forEach(call -> explain(call, spare, lines));
        return String.join("\n", lines);
      } finally {
        as(XCloseable.class, copy).close(true);
      }
    } catch (com.sun.star.uno.Exception e) {
      throw new com.sun.star.uno.RuntimeException(e, "the formula cannot be explained");
    }
  }

  private XSpreadsheetDocument copy(XSpreadsheetDocument document)
      throws com.sun.star.uno.Exception {
    XSequenceOutputStream out = SequenceOutputStream.create(context);
    PropertyValue filter = property("FilterName", "calc8");
    as(XStorable.class, document)
        .storeToURL(STREAM, new PropertyValue[] {filter, property("OutputStream", out)});
    return as(
        XSpreadsheetDocument.class,
        as(
                XComponentLoader.class,
                context
                    .getServiceManager()
                    .createInstanceWithContext("com.sun.star.frame.Desktop", context))
            .loadComponentFromURL(
                STREAM,
                "_blank",
                0,
                new PropertyValue[] {
                  filter,
                  property(
                      "InputStream",
                      SequenceInputStream.createStreamFromSequence(context, out.getWrittenBytes())),
                  property("Hidden", true)
                }));
  }

  private void explain(CallText call, XCell spare, List<String> lines) {
    FunctionSpec function = call.function();
    if (!lines.isEmpty()) {
      lines.add("");
    }
    lines.add(call.text());
    List<String> values = new ArrayList<>();
    for (int i = 0; i < call.arguments().size(); i++) {
      String text = call.arguments().get(i);
      String value = text.isEmpty() || !isScalar(function, i) ? text : value(text, spare);
      values.add(value);
      lines.add(
          "   "
              + name(function, i)
              + " = "
              + (text.isEmpty() ? texts.say("leftOut") : value)
              + (value.equals(text) ? "" : "   (" + text + ")"));
    }
    spare.setFormula("=" + call.text());
    String shown = as(XText.class, spare).getString();
    if (spare.getError() == 0) {
      lines.add(texts.say("gives", shown));
    } else {
      values.add(0, '"' + function.name() + '"');
      String why = value("CELLAR.WHY(" + String.join(";", values) + ")", spare);
      boolean said = why.startsWith("\"") && !why.equals("\"\"");
      lines.add(
          said
              ? texts.say(
                  "refused", shown, why.substring(1, why.length() - 1).replace("\"\"", "\""))
              : texts.say("hostError", shown));
    }
    lines.add(texts.say("source", function.source(Words.in(texts.language()))));
  }

  private static boolean isScalar(FunctionSpec function, int place) {
    List<ArgSpec> args = function.args();
    return place >= args.size() && !function.isVariadic()
        || place < args.size() && args.get(place).kind().isScalar();
  }

  private static String name(FunctionSpec function, int place) {
    List<ArgSpec> args = function.args();
    if (place < args.size()) {
      return args.get(place).name();
    }
    return function.isVariadic() ? args.get(args.size() - 1).name() : FunctionSpec.UNITS;
  }

  /** What an expression is, as a literal that a formula can hold; an error as it shows. */
  private static String value(String expression, XCell spare) {
    spare.setFormula("=" + expression);
    if (spare.getError() != 0) {
      return as(XText.class, spare).getString();
    }
    return resultType(spare) == FormulaResult.STRING
        ? '"' + as(XText.class, spare).getString().replace("\"", "\"\"") + '"'
        : Double.toString(spare.getValue()).replaceAll("\\.0$", "");
  }

  private static int resultType(XCell cell) {
    try {
      return (Integer) as(XPropertySet.class, cell).getPropertyValue("FormulaResultType2");
    } catch (com.sun.star.uno.Exception e) {
      throw new com.sun.star.uno.RuntimeException(e, "no result type");
    }
  }

  private static PropertyValue property(String name, Object value) {
    PropertyValue property = new PropertyValue();
    property.Name = name;
    property.Value = value;
    return property;
  }

  private static <T> T as(Class<T> type, Object object) {
    return UnoRuntime.queryInterface(type, object);
  }
}
