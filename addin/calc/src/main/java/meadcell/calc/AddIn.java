package meadcell.calc;

import com.sun.star.lang.XSingleComponentFactory;
import com.sun.star.task.XJobExecutor;
import com.sun.star.uno.UnoRuntime;
import com.sun.star.uno.XComponentContext;
import meadcell.calc.menu.Menu;
import meadcell.cellar.Cellar;

/** Where the office's Java loader enters: gives the factory of a family's service. */
public final class AddIn {
  private AddIn() {}

  /** Called by the office, by this very name. */
  public static XSingleComponentFactory __getComponentFactory(String implementation) {
    return new Factory(UnoNames.familyOf(implementation));
  }

  /** By its service: the menu is another jar, with classes of its own. */
  private static void addToContextMenus(XComponentContext context) {
    try {
      Object menu = context.getServiceManager().createInstanceWithContext(Menu.SERVICE, context);
      UnoRuntime.queryInterface(XJobExecutor.class, menu)
          .trigger(Menu.CONTEXT_MENUS + String.join("|", Cellar.catalogue().families().keySet()));
    } catch (com.sun.star.uno.Exception | com.sun.star.uno.RuntimeException e) {
      // the functions work without the entry
      System.getLogger(AddIn.class.getName())
          .log(System.Logger.Level.WARNING, "no entry in context menus", e);
    }
  }

  private static final class Factory implements XSingleComponentFactory {
    private final String family;

    Factory(String family) {
      this.family = family;
    }

    @Override
    public Object createInstanceWithContext(XComponentContext context) {
      addToContextMenus(context);
      return FamilyService.of(Cellar.catalogue(), family, context);
    }

    @Override
    public Object createInstanceWithArgumentsAndContext(
        Object[] arguments, XComponentContext context) {
      return createInstanceWithContext(context);
    }
  }
}
