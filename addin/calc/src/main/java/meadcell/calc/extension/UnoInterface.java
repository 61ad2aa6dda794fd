package meadcell.calc.extension;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import meadcell.calc.UnoNames;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;

/**
 * A family as an interface of the office's component model. The types decide how Calc passes what a
 * user typed: a column given to a {@code double} or {@code string} takes the cell of its own row,
 * {@code any} may be left out, {@code [][]any} takes ranges.
 */
public record UnoInterface(String name, List<Method> methods) {
  static final String ROOT = "com.sun.star.uno.XInterface";

  private static final String ANY = "any";
  private static final String CELLS = "[][]any";

  private static final Map<String, String> JAVA =
      Map.of(
          "double",
          "double",
          "string",
          "String",
          ANY,
          "Object",
          CELLS,
          "Object[][]",
          "[]any",
          "Object[]");

  /** One parameter, of a type in UNOIDL. */
  public record Parameter(String name, String type) {}

  /** One method, of a type in UNOIDL. */
  public record Method(String name, String type, List<Parameter> parameters) {}

  static UnoInterface of(Catalogue catalogue, String family) {
    return new UnoInterface(
        UnoNames.interfaceOf(family),
        catalogue.functions(family).stream().map(UnoInterface::method).toList());
  }

  private static Method method(FunctionSpec function) {
    List<Parameter> parameters = new ArrayList<>();
    for (ArgSpec arg : function.args()) {
      parameters.add(new Parameter(arg.name(), type(arg)));
    }
    if (function.takesUnits()) {
      parameters.add(new Parameter("units", ANY));
    }
    String type =
        switch (function.result().shape()) {
          case NUMBER -> "double";
          case TEXT, ANY -> ANY;
          case ROW, COLUMN, TABLE -> CELLS;
        };
    return new Method(function.member(), type, parameters);
  }

  private static String type(ArgSpec arg) {
    return switch (arg.kind()) {
      case NUMBER -> arg.isOptional() ? ANY : "double";
      case TEXT, CHOICE -> arg.isOptional() ? ANY : "string";
      case NUMBERS, TEXTS, NUMBER_TABLE, TABLE -> CELLS;
      case REST -> "[]any";
    };
  }

  /** The interface in Java, with the type hints that the Java bridge reads. */
  public String javaSource() {
    StringBuilder source = new StringBuilder("package " + UnoNames.MODULE + ";\n");
    source.append("public interface ").append(name).append(" extends ").append(ROOT).append(" {\n");
    List<String> hints = new ArrayList<>();
    for (Method method : methods) {
      List<String> parameters = new ArrayList<>();
      for (Parameter parameter : method.parameters()) {
        parameters.add(JAVA.get(parameter.type()) + " p" + parameters.size());
      }
      source.append(
          "  %s %s(%s);\n"
              .formatted(JAVA.get(method.type()), method.name(), String.join(", ", parameters)));
      hints.add(
          "new com.sun.star.lib.uno.typeinfo.MethodTypeInfo(\"%s\", %d, %s)"
              .formatted(
                  method.name(),
                  hints.size(),
                  method.type().endsWith(ANY) ? "com.sun.star.lib.uno.typeinfo.TypeInfo.ANY" : 0));
    }
    return source
        .append("  com.sun.star.lib.uno.typeinfo.TypeInfo[] UNOTYPEINFO = {\n    ")
        .append(String.join(",\n    ", hints))
        .append("\n  };\n}\n")
        .toString();
  }
}
