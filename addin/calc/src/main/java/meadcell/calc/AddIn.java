package meadcell.calc;

import com.sun.star.lang.XSingleComponentFactory;
import com.sun.star.uno.XComponentContext;
import meadcell.cellar.Cellar;

/** Where the office's Java loader enters: gives the factory of a family's service. */
public final class AddIn {
  private AddIn() {}

  /** Called by the office, by this very name. */
  public static XSingleComponentFactory __getComponentFactory(String implementation) {
    return new Factory(UnoNames.familyOf(implementation));
  }

  private static final class Factory implements XSingleComponentFactory {
    private final String family;

    Factory(String family) {
      this.family = family;
    }

    @Override
    public Object createInstanceWithContext(XComponentContext context) {
      return FamilyService.of(Cellar.catalogue(), family);
    }

    @Override
    public Object createInstanceWithArgumentsAndContext(
        Object[] arguments, XComponentContext context) {
      return createInstanceWithContext(context);
    }
  }
}
