package meadcell.calc;

import com.sun.star.lang.IllegalArgumentException;
import com.sun.star.sheet.XFunctionAccess;
import com.sun.star.uno.UnoRuntime;
import com.sun.star.uno.XComponentContext;
import java.util.List;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.Kind;

/**
 * Texts that stand where a function takes one number. Calc reads them as its locale writes numbers
 * before the function sees them; a function that is asked about a call gets the texts.
 */
final class TypedNumbers {
  private final Catalogue catalogue;
  private final XComponentContext context;

  /** A text that Calc reads as no number. */
  private record NoNumber(String text) {
    @Override
    public String toString() {
      return text;
    }
  }

  TypedNumbers(Catalogue catalogue, XComponentContext context) {
    this.catalogue = catalogue;
    this.context = context;
  }

  /**
   * Puts what the called function would get in place of texts.
   *
   * @param call its name and its arguments
   */
  void read(Object[] call) {
    List<ArgSpec> args =
        catalogue
            .find(String.valueOf(call[0]))
            .map(function -> function.args().subList(0, function.required()))
            .orElse(List.of());
    for (int i = 0; i < args.size() && i + 1 < call.length; i++) {
      if (args.get(i).kind() == Kind.NUMBER
          && call[i + 1] instanceof String text
          && !text.isBlank()) {
        call[i + 1] = number(text);
      }
    }
  }

  private Object number(String text) {
    try {
      Object functions =
          context
              .getServiceManager()
              .createInstanceWithContext("com.sun.star.sheet.FunctionAccess", context);
      return UnoRuntime.queryInterface(XFunctionAccess.class, functions)
          .callFunction("POWER", new Object[] {text, 1.0});
    } catch (IllegalArgumentException e) {
      return new NoNumber(text);
    } catch (com.sun.star.uno.Exception e) {
      throw new com.sun.star.uno.RuntimeException(e, text);
    }
  }
}
