package meadcell.calc.extension;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import meadcell.calc.UnoNames;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Kind;

/**
 * A family as an interface of the office's component model. The types decide how Calc passes what a
 * user typed: a column given to a {@code double} or {@code string} takes the cell of its own row,
 * {@code any} may be left out, {@code [][]any} takes ranges. From the second of a variable number
 * of arguments on, Calc passes single values and calls once for each row, so {@code []any} stands
 * behind as many {@code any} as a call can need.
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
    int most = most(catalogue);
    return new UnoInterface(
        UnoNames.interfaceOf(family),
        catalogue.functions(family).stream().map(function -> method(function, most)).toList());
  }

  /** The names of the single parameters before a variable number of them. */
  static List<String> extra(ArgSpec arg, int most) {
    return IntStream.rangeClosed(1, arg.kind() == Kind.REST ? most : 0)
        .mapToObj(i -> arg.name() + i)
        .toList();
  }

  /** How many arguments any function of a fixed number takes. */
  static int most(Catalogue catalogue) {
    return catalogue.functions().stream()
        .filter(function -> !function.isVariadic())
        .mapToInt(FunctionSpec::most)
        .max()
        .orElse(0);
  }

  private static Method method(FunctionSpec function, int most) {
    List<Parameter> parameters = new ArrayList<>();
    for (ArgSpec arg : function.args()) {
      extra(arg, most).forEach(name -> parameters.add(new Parameter(name, ANY)));
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
      case NUMBERS, TEXTS, NUMBER_TABLE, TABLE -> arg.isOptional() ? ANY : CELLS;
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
