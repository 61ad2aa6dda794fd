package meadcell.calc;

import static meadcell.calc.Scratch.as;

import com.sun.star.beans.UnknownPropertyException;
import com.sun.star.beans.XPropertySet;
import com.sun.star.container.XIndexAccess;
import com.sun.star.lang.WrappedTargetException;
import com.sun.star.sheet.XCellAddressable;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.table.XCell;
import com.sun.star.text.XText;
import com.sun.star.uno.XComponentContext;
import com.sun.star.util.CellProtection;
import com.sun.star.util.XProtectable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import meadcell.calc.Scratch.Area;
import meadcell.calc.Scratch.Found;
import meadcell.calc.menu.OfficeSettings;
import meadcell.calc.menu.Texts;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.CallPage;
import meadcell.catalogue.CallPage.Chosen;
import meadcell.catalogue.CallPage.Given;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Kind;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;

/**
 * The page of each of our functions in a cell's formula. Calc computes the arguments and says where
 * they stand; what is said of them is the catalogue's.
 */
final class Explanation {
  /** Its arguments are those of the function that it names, a row at a time. */
  private static final String MAP = "CELLAR.MAP";

  /** A line is as wide as the window. */
  private static final int WIDTH = Integer.MAX_VALUE;

  private final Catalogue catalogue = Cellar.catalogue();
  private final XComponentContext context;
  private final Texts texts;
  private final Words words;

  Explanation(XComponentContext context, Texts texts) {
    this.context = context;
    this.texts = texts;
    this.words =
        Words.in(texts.language()).withDecimalSign(new OfficeSettings(context).decimalSign());
  }

  String of(XSpreadsheetDocument document, XCell cell) {
    if (isHidden(document, cell)) {
      return texts.say("hidden");
    }
    String formula = cell.getFormula();
    boolean isArray = formula.startsWith("{");
    List<CallText> calls = CallText.in(formula.replaceAll("^\\{|}$", ""), catalogue);
    if (calls.isEmpty()) {
      return texts.say("noCall");
    }
    try (Scratch scratch =
        new Scratch(context, document, as(XCellAddressable.class, cell).getCellAddress())) {
      StringBuilder page = new StringBuilder(local(cell));
      if (cell.getError() != 0) {
        page.append('\n').append(texts.say("shows", as(XText.class, cell).getString()));
      }
      for (CallText call : calls) {
        page.append('\n').append(new Reader(scratch, isArray, formula).page(call));
      }
      return page.toString().strip();
    } catch (Scratch.Locked e) {
      return texts.say("protected");
    } catch (com.sun.star.uno.Exception e) {
      throw new com.sun.star.uno.RuntimeException(e, "the formula cannot be explained");
    }
  }

  /** Whether the sheet keeps the formula to itself. */
  private static boolean isHidden(XSpreadsheetDocument document, XCell cell) {
    try {
      short number = as(XCellAddressable.class, cell).getCellAddress().Sheet;
      Object sheet = as(XIndexAccess.class, document.getSheets()).getByIndex(number);
      CellProtection protection =
          (CellProtection) as(XPropertySet.class, cell).getPropertyValue("CellProtection");
      return protection.IsFormulaHidden && as(XProtectable.class, sheet).isProtected();
    } catch (com.sun.star.uno.Exception e) {
      throw new com.sun.star.uno.RuntimeException(e, "no sheet");
    }
  }

  private static String local(XCell cell) {
    try {
      return (String) as(XPropertySet.class, cell).getPropertyValue("FormulaLocal");
    } catch (UnknownPropertyException | WrappedTargetException e) {
      throw new com.sun.star.uno.RuntimeException(e, "no formula");
    }
  }

  /** Finds what the arguments of a formula's calls are. */
  private final class Reader {
    private final Scratch scratch;
    private final boolean isArray;
    private final String formula;

    Reader(Scratch scratch, boolean isArray, String formula) {
      this.scratch = scratch;
      this.isArray = isArray;
      this.formula = formula;
    }

    String page(CallText call) throws com.sun.star.uno.Exception {
      FunctionSpec function = call.function();
      List<String> arguments = call.arguments();
      if (function.name().equals(MAP) && !arguments.isEmpty()) {
        Optional<FunctionSpec> mapped =
            catalogue.find(String.valueOf(scratch.value(arguments.get(0)).value()));
        if (mapped.isPresent()) {
          List<Given> given = new ArrayList<>();
          for (String argument : arguments.subList(1, arguments.size())) {
            given.add(argument.isEmpty() ? Given.constant(null) : single(argument, true, null));
          }
          return text(call, mapped.get(), given, Chosen.FIRST);
        }
      }
      List<Given> given = new ArrayList<>();
      for (int i = 0; i < arguments.size(); i++) {
        given.add(given(function, i, arguments.get(i)));
      }
      return text(
          call,
          function,
          given,
          isWhole(call) ? new Chosen(scratch.rowInArray(), scratch.columnInArray()) : Chosen.FIRST);
    }

    /** Whether a call is the whole formula. */
    private boolean isWhole(CallText call) {
      return formula.replaceAll("^\\{?=|}$", "").equals(call.text());
    }

    private String text(CallText call, FunctionSpec function, List<Given> given, Chosen chosen) {
      String page = CallPage.of(function, given, chosen, words).text(WIDTH);
      boolean isMapped = !call.function().name().equals(function.name());
      String body = isMapped ? "\n" + page : page.substring(page.indexOf('\n') + 1);
      return isWhole(call) ? body : "\n" + scratch.local(call.text()) + "\n" + body;
    }

    private Given given(FunctionSpec function, int place, String argument)
        throws com.sun.star.uno.Exception {
      if (argument.isEmpty()) {
        return Given.constant(null);
      }
      boolean isRequired = place < function.required();
      ArgSpec arg = place < function.args().size() ? function.args().get(place) : null;
      if (isRequired && arg != null && arg.kind().isScalar()) {
        return single(argument, isArray, arg);
      }
      return scratch.rows(argument) * scratch.columns(argument) == 1 && !takesRange(arg)
          ? single(argument, false, null)
          : range(argument);
    }

    private static boolean takesRange(ArgSpec arg) {
      return arg != null && !arg.kind().isScalar() && arg.kind() != Kind.REST;
    }

    /** One value: of a range, the element of the chosen cell, or else the own row's or column's. */
    private Given single(String argument, boolean byElement, ArgSpec required)
        throws com.sun.star.uno.Exception {
      int rows = scratch.rows(argument);
      int columns = scratch.columns(argument);
      int row = rows == 1 ? 0 : scratch.rowInArray();
      int column = columns == 1 ? 0 : scratch.columnInArray();
      Area area = scratch.area(argument);
      String one = argument;
      if (rows * columns > 1 && byElement) {
        one = "INDEX(" + argument + ";" + (row + 1) + ";" + (column + 1) + ")";
        area = area == null || row >= rows || column >= columns ? null : area.cell(row, column);
      } else if (rows * columns > 1 && area != null) {
        area = scratch.own(area);
        one = area == null ? argument : area.fullName();
      }
      Found found = value(one, required);
      return new Given(found.value(), from(argument, area), found.error());
    }

    /** As Calc gives it to a required number or text. */
    private Found value(String one, ArgSpec required) {
      if (required != null && required.kind() != Kind.NUMBER) {
        return scratch.value("(" + one + ")&\"\"");
      }
      Found found = scratch.value(one);
      if (required == null || !(found.value() instanceof String)) {
        return found;
      }
      Found number = scratch.value("(" + one + ")*1");
      return number.isError() ? found : number;
    }

    private Given range(String argument) throws com.sun.star.uno.Exception {
      int rows = scratch.rows(argument);
      int columns = scratch.columns(argument);
      Area area = scratch.area(argument);
      Object[][] cells = area == null ? new Object[rows][columns] : area.values();
      for (int i = 0; i < rows; i++) {
        for (int j = 0; j < columns; j++) {
          if (area == null) {
            String one =
                rows * columns == 1
                    ? argument
                    : "INDEX(" + argument + ";" + (i + 1) + ";" + (j + 1) + ")";
            Found found = scratch.value(one);
            if (found.isError()) {
              return new Given(null, scratch.local(argument), found.error());
            }
            cells[i][j] = found.value();
          } else if (area.isError(i, j)) {
            return new Given(null, area.cell(i, j).name(), area.shown(i, j));
          }
        }
      }
      return new Given(cells, from(argument, area), "");
    }

    private String from(String argument, Area area) throws com.sun.star.uno.Exception {
      if (area == null) {
        return CallText.isConstant(argument) ? "" : scratch.local(argument);
      }
      String shown = area.rows() * area.columns() == 1 ? area.shown(0, 0) : "";
      boolean isFormatted = shown.matches(".*\\d.*") && !shown.matches("[-+\\d.,' \\u00a0]*");
      boolean isNumber = isFormatted && area.values()[0][0] instanceof Double;
      return isNumber ? area.name() + ", " + shown : area.name();
    }
  }
}
