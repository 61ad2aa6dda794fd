package meadcell.calc.menu;

import com.sun.star.beans.XPropertySet;
import com.sun.star.container.XEnumeration;
import com.sun.star.container.XIndexContainer;
import com.sun.star.document.DocumentEvent;
import com.sun.star.document.XDocumentEventBroadcaster;
import com.sun.star.document.XDocumentEventListener;
import com.sun.star.frame.XController;
import com.sun.star.frame.XDesktop;
import com.sun.star.frame.XModel;
import com.sun.star.lang.EventObject;
import com.sun.star.lang.XMultiServiceFactory;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.table.XCellRange;
import com.sun.star.ui.ContextMenuExecuteEvent;
import com.sun.star.ui.ContextMenuInterceptorAction;
import com.sun.star.ui.XContextMenuInterception;
import com.sun.star.ui.XContextMenuInterceptor;
import com.sun.star.uno.UnoRuntime;
import com.sun.star.uno.XComponentContext;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Pattern;

/**
 * Puts the explanation into the context menu of cells that use our functions. An office has no
 * configuration for that, and no Java should start for spreadsheets without our functions: so this
 * begins when the first of our functions is loaded, and goes on for every window opened later.
 */
final class ContextMenus implements XDocumentEventListener, XContextMenuInterceptor {
  /** What an entry calls: the same as in the menu. */
  static final String EXPLAIN =
      "vnd.sun.star.script:Meadcell.Cellar.Explain?language=Basic&location=application";

  private static final AtomicBoolean IS_ADDED = new AtomicBoolean();

  private final String title;
  private final Pattern ours;

  ContextMenus(String title, String families) {
    this.title = title;
    this.ours = Pattern.compile("\\b(" + families + ")\\.", Pattern.CASE_INSENSITIVE);
  }

  /** Begins, once in an office; the families of our functions have bars between them. */
  static void add(XComponentContext context, String families) {
    if (!IS_ADDED.compareAndSet(false, true)) {
      return;
    }
    String title = new Installation(context).texts().say("explainEntry");
    ContextMenus menus = new ContextMenus(title, families);
    try {
      as(
              XDocumentEventBroadcaster.class,
              context.getValueByName("/singletons/com.sun.star.frame.theGlobalEventBroadcaster"))
          .addDocumentEventListener(menus);
      Object desktop =
          context
              .getServiceManager()
              .createInstanceWithContext("com.sun.star.frame.Desktop", context);
      XEnumeration open = as(XDesktop.class, desktop).getComponents().createEnumeration();
      while (open.hasMoreElements()) {
        XModel model = as(XModel.class, open.nextElement());
        if (model != null) {
          menus.addTo(model.getCurrentController());
        }
      }
    } catch (com.sun.star.uno.Exception e) {
      throw new com.sun.star.uno.RuntimeException(e, "no entry in context menus");
    }
  }

  private void addTo(XController controller) {
    XContextMenuInterception menus = as(XContextMenuInterception.class, controller);
    if (menus != null && as(XSpreadsheetDocument.class, controller.getModel()) != null) {
      menus.registerContextMenuInterceptor(this);
    }
  }

  @Override
  public void documentEventOccured(DocumentEvent event) {
    if (event.EventName.equals("OnViewCreated") && event.ViewController != null) {
      addTo(event.ViewController);
    }
  }

  @Override
  public ContextMenuInterceptorAction notifyContextMenuExecute(ContextMenuExecuteEvent event) {
    XCellRange cells = as(XCellRange.class, event.Selection.getSelection());
    try {
      String formula = cells == null ? "" : cells.getCellByPosition(0, 0).getFormula();
      if (!formula.replace("{", "").startsWith("=") || !ours.matcher(formula).find()) {
        return ContextMenuInterceptorAction.IGNORED;
      }
      XIndexContainer entries = event.ActionTriggerContainer;
      XMultiServiceFactory factory = as(XMultiServiceFactory.class, entries);
      Object entry = factory.createInstance("com.sun.star.ui.ActionTrigger");
      as(XPropertySet.class, entry).setPropertyValue("Text", title);
      as(XPropertySet.class, entry).setPropertyValue("CommandURL", EXPLAIN);
      entries.insertByIndex(0, entry);
      entries.insertByIndex(1, factory.createInstance("com.sun.star.ui.ActionTriggerSeparator"));
      return ContextMenuInterceptorAction.EXECUTE_MODIFIED;
    } catch (com.sun.star.uno.Exception e) {
      throw new com.sun.star.uno.RuntimeException(e, "no entry in the context menu");
    }
  }

  @Override
  public void disposing(EventObject source) {
    // the office ends
  }

  private static <T> T as(Class<T> type, Object object) {
    return UnoRuntime.queryInterface(type, object);
  }
}
