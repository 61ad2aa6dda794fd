package meadcell.calc;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.sun.star.beans.PropertyValue;
import com.sun.star.container.XNameAccess;
import com.sun.star.sheet.FunctionArgument;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Kind;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** The function wizard tells what the catalogue declares. */
class WizardIT {
  @Test
  void everyFunctionIsExplained() throws Exception {
    loadEveryFamily();
    XNameAccess wizard =
        TestOffice.get().service(XNameAccess.class, "com.sun.star.sheet.FunctionDescriptions");
    for (FunctionSpec function : Cellar.catalogue().functions()) {
      Map<String, Object> shown = new HashMap<>();
      for (PropertyValue property : (PropertyValue[]) wizard.getByName(function.name())) {
        shown.put(property.Name, property.Value);
      }
      assertEquals(function.description(), shown.get("Description"), function.name());
      List<String> arguments = new ArrayList<>();
      if (shown.get("Arguments") instanceof FunctionArgument[] list) { // void where there is none
        for (FunctionArgument argument : list) {
          arguments.add(line(argument.Name, argument.Description, argument.IsOptional));
        }
      }
      assertEquals(declared(function), arguments, function.name());
    }
  }

  /** The office knows a function's arguments once it has used one of the family. */
  private static void loadEveryFamily() throws Exception {
    try (Workbook book = TestOffice.get().newWorkbook()) {
      book.type(
          0,
          Cellar.catalogue().functions().stream()
              .map(function -> "=" + function.name() + "()")
              .toArray(String[]::new));
    }
  }

  private static List<String> declared(FunctionSpec function) {
    List<String> arguments = new ArrayList<>();
    for (ArgSpec arg : function.args()) {
      for (int i = 1; arg.kind() == Kind.REST && i <= mostSingle(); i++) {
        arguments.add(line(arg.name() + i, arg.description(), true));
      }
      arguments.add(line(arg.name(), arg.description(), arg.isOptional()));
    }
    if (function.takesUnits()) {
      arguments.add(line(FunctionSpec.UNITS, FunctionSpec.unitsHelp(Words.ENGLISH), true));
    }
    return arguments;
  }

  /** So many arguments come one by one, before those that may follow in any number. */
  private static int mostSingle() {
    return Cellar.catalogue().functions().stream()
        .filter(function -> !function.isVariadic())
        .mapToInt(FunctionSpec::most)
        .max()
        .orElseThrow();
  }

  private static String line(String name, String description, boolean optional) {
    return name + (optional ? " (optional): " : ": ") + description;
  }
}
