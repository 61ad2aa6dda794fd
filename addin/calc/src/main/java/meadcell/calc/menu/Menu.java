package meadcell.calc.menu;

import com.sun.star.awt.MessageBoxType;
import com.sun.star.awt.XMessageBox;
import com.sun.star.awt.XMessageBoxFactory;
import com.sun.star.awt.XWindowPeer;
import com.sun.star.beans.PropertyValue;
import com.sun.star.deployment.PackageInformationProvider;
import com.sun.star.frame.FrameSearchFlag;
import com.sun.star.frame.XComponentLoader;
import com.sun.star.frame.XDesktop;
import com.sun.star.frame.XFrame;
import com.sun.star.frame.XModel;
import com.sun.star.lang.XSingleComponentFactory;
import com.sun.star.lib.uno.helper.Factory;
import com.sun.star.lib.uno.helper.WeakBase;
import com.sun.star.sheet.XSpreadsheetDocument;
import com.sun.star.system.SystemShellExecuteFlags;
import com.sun.star.system.XSystemShellExecute;
import com.sun.star.table.XCell;
import com.sun.star.table.XCellRange;
import com.sun.star.task.XJobExecutor;
import com.sun.star.ucb.XSimpleFileAccess;
import com.sun.star.uno.UnoRuntime;
import com.sun.star.uno.XComponentContext;

/** What the entries of the menu do; each arrives as one word. */
public final class Menu extends WeakBase implements XJobExecutor {
  /** Identifier of our package. */
  public static final String PACKAGE = "meadcell.calc";

  /** The service that the menu's entries name. */
  public static final String SERVICE = "meadcell.calc.Menu";

  /** What the functions say when they are loaded; their families follow, with bars between. */
  public static final String CONTEXT_MENUS = "contextMenus:";

  private final XComponentContext context;

  public Menu(XComponentContext context) {
    this.context = context;
  }

  /** Called by the office, by this very name. */
  public static XSingleComponentFactory __getComponentFactory(String implementation) {
    return implementation.equals(Menu.class.getName())
        ? Factory.createComponentFactory(Menu.class, new String[] {SERVICE})
        : null;
  }

  /** The first page of the function guide of a language, in the package. */
  public static String pages(String language) {
    return "guide/" + language + "/index.html";
  }

  /** The function guide of a language as a workbook, in the package. */
  public static String guide(String language) {
    return "guide_" + language + ".fods";
  }

  @Override
  public void trigger(String entry) {
    if (entry.startsWith(CONTEXT_MENUS)) {
      ContextMenus.add(context, entry.substring(CONTEXT_MENUS.length()));
      return;
    }
    Installation installation = new Installation(context);
    Texts texts = installation.texts();
    try {
      switch (entry) {
        case "sample":
          open(texts, texts.say("firstWeek"), "cellar-book.ods");
          break;
        case "guide":
          open(texts, guide(texts.language()));
          break;
        case "pages":
          browse(texts);
          break;
        case "explain":
          explain(installation.functions(), texts);
          break;
        case "check":
          show(texts, installation.report());
          break;
        default:
          throw new IllegalArgumentException(entry);
      }
    } catch (Installation.NotLoaded e) {
      show(texts, e.getMessage());
    } catch (com.sun.star.uno.Exception | RuntimeException e) {
      show(texts, texts.say("failed", e.getMessage())); // the office itself would say nothing
    }
  }

  private void explain(Functions functions, Texts texts) throws com.sun.star.uno.Exception {
    XModel model = as(XModel.class, desktop().getCurrentComponent());
    XSpreadsheetDocument document = as(XSpreadsheetDocument.class, model);
    XCellRange selection =
        document == null ? null : as(XCellRange.class, model.getCurrentSelection());
    if (selection == null) {
      show(texts, texts.say("noCell"));
      return;
    }
    XCell cell = selection.getCellByPosition(0, 0);
    PageWindow.show(
        context,
        as(XWindowPeer.class, model.getCurrentController().getFrame().getContainerWindow()),
        texts.say("explainEntry"),
        functions.explain(context, document, cell, texts),
        texts.say("close"));
  }

  /** Opens packed workbooks as untitled copies, the last one in front. */
  private void open(Texts texts, String... files) throws com.sun.star.uno.Exception {
    String folder = PackageInformationProvider.get(context).getPackageLocation(PACKAGE);
    PropertyValue copy = new PropertyValue();
    copy.Name = "AsTemplate";
    copy.Value = true;
    for (String file : files) {
      String url = folder + "/" + file;
      if (!as(XSimpleFileAccess.class, service("com.sun.star.ucb.SimpleFileAccess")).exists(url)) {
        show(texts, texts.say("noWorkbook"));
        return;
      }
      as(XComponentLoader.class, desktop())
          .loadComponentFromURL(url, "_blank", FrameSearchFlag.CREATE, new PropertyValue[] {copy});
    }
  }

  /** Shows the guide's pages in the browser; they lie in the package and need no network. */
  private void browse(Texts texts) throws com.sun.star.uno.Exception {
    String folder = PackageInformationProvider.get(context).getPackageLocation(PACKAGE);
    as(XSystemShellExecute.class, service("com.sun.star.system.SystemShellExecute"))
        .execute(folder + "/" + pages(texts.language()), "", SystemShellExecuteFlags.URIS_ONLY);
  }

  private void show(Texts texts, String text) {
    try {
      XFrame frame = desktop().getCurrentFrame();
      XWindowPeer parent = as(XWindowPeer.class, frame.getContainerWindow());
      XMessageBox box =
          as(XMessageBoxFactory.class, service("com.sun.star.awt.Toolkit"))
              .createMessageBox(parent, MessageBoxType.INFOBOX, 1, texts.say("title"), text);
      box.execute();
    } catch (com.sun.star.uno.Exception e) {
      throw new com.sun.star.uno.RuntimeException(e, text);
    }
  }

  private XDesktop desktop() throws com.sun.star.uno.Exception {
    return as(XDesktop.class, service("com.sun.star.frame.Desktop"));
  }

  private Object service(String name) throws com.sun.star.uno.Exception {
    return context.getServiceManager().createInstanceWithContext(name, context);
  }

  private static <T> T as(Class<T> type, Object object) {
    return UnoRuntime.queryInterface(type, object);
  }
}
