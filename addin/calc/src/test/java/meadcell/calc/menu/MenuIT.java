package meadcell.calc.menu;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.sun.star.beans.NamedValue;
import com.sun.star.beans.XPropertySet;
import com.sun.star.container.XHierarchicalNameAccess;
import com.sun.star.container.XIndexContainer;
import com.sun.star.container.XNameAccess;
import com.sun.star.frame.XModel;
import com.sun.star.lang.XMultiServiceFactory;
import com.sun.star.task.XJobExecutor;
import com.sun.star.ui.ContextMenuExecuteEvent;
import com.sun.star.ui.ContextMenuInterceptorAction;
import com.sun.star.view.XSelectionSupplier;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Proxy;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.cellar.Cellar;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;

/** Where the menu's entries stand, and that its packed guide opens as an untitled copy. */
public class MenuIT {
  private static final Pattern CALL =
      Pattern.compile(
          "vnd\\.sun\\.star\\.script:Meadcell\\.Cellar\\.(\\w+)\\?"
              + "(language=Basic&location=application|location=application&language=Basic)");

  @Test
  void theGuideHasASheetForEveryFamily() throws Exception {
    List<String> sheets = new ArrayList<>(List.of("Functions"));
    sheets.addAll(Cellar.catalogue().families().keySet());
    assertEquals(List.of(sheets), opened("guide"));
  }

  @Test
  void theGuideOpensInTheBrowser() throws Exception {
    assertTrue(pagesShown(TestOffice.get()).contains("<html lang=\"en\">"));
  }

  /** {@return the page that the menu's entry has the browser show} */
  public static String pagesShown(RemoteOffice office) throws Exception {
    assumeTrue(
        Files.isExecutable(Path.of("/usr/bin/xdg-open")), "the office calls it; it is absent");
    office.service(XJobExecutor.class, Menu.SERVICE).trigger("pages");
    for (int i = 0; i < 100 && office.browsed().isEmpty(); i++) {
      Thread.sleep(100); // a process of its own
    }
    String address = office.browsed().strip();
    assertTrue(address.endsWith("/index.html"), address);
    return Files.readString(
        address.startsWith("file:") ? Path.of(URI.create(address)) : Path.of(address));
  }

  /** In the menu, which the standard and the single-toolbar look have, and in the tabbed looks. */
  @Test
  void everyLookHasTheEntries() throws Exception {
    List<String> all = List.of("Sample", "Guide", "Pages", "Explain", "Check");
    assertEquals(all, entries("OfficeMenuBar/meadcell.calc/Submenu"));
    assertEquals(all, entries("OfficeNotebookBar/meadcell.calc"));
    assertEquals(List.of("Explain"), entries("OfficeToolBar/meadcell.calc"));
  }

  /** What entries in the office's own configuration call, all of them in spreadsheets only. */
  private static List<String> entries(String node) throws Exception {
    XHierarchicalNameAccess addons = configuration("/org.openoffice.Office.Addons/AddonUI");
    XNameAccess entries = RemoteOffice.as(XNameAccess.class, addons.getByHierarchicalName(node));
    List<String> called = new ArrayList<>();
    for (String name : new TreeSet<>(List.of(entries.getElementNames()))) {
      XNameAccess entry = RemoteOffice.as(XNameAccess.class, entries.getByName(name));
      assertFalse(((String) entry.getByName("Title")).isEmpty(), name);
      Matcher url = CALL.matcher((String) entry.getByName("URL"));
      assertTrue(url.matches(), () -> url + " of " + name);
      called.add(url.group(1));
    }
    return called;
  }

  @Test
  void aKeyExplains() throws Exception {
    XHierarchicalNameAccess keys =
        configuration("/org.openoffice.Office.Accelerators/PrimaryKeys/Modules");
    Object key =
        keys.getByHierarchicalName("com.sun.star.sheet.SpreadsheetDocument/E_SHIFT_MOD1/Command");
    assertEquals(ContextMenus.EXPLAIN, key);
  }

  private static XHierarchicalNameAccess configuration(String path) throws Exception {
    return RemoteOffice.as(
        XHierarchicalNameAccess.class,
        TestOffice.get()
            .service(XMultiServiceFactory.class, "com.sun.star.configuration.ConfigurationProvider")
            .createInstanceWithArguments(
                "com.sun.star.configuration.ConfigurationAccess",
                new Object[] {new NamedValue("nodepath", path)}));
  }

  @Test
  void theContextMenuOfACellWithOurFunctionsExplainsIt() throws Exception {
    assertEquals(
        List.of(Map.of("Text", "Explain This Cell", "CommandURL", ContextMenus.EXPLAIN), Map.of()),
        contextMenu("=2*gravity.tobrix(1.05)"));
    assertEquals(List.of(), contextMenu("=SUM(1;2)"));
    assertEquals(List.of(), contextMenu("GRAVITY.TOBRIX"), "no formula, no call");
  }

  /** What is put into the empty context menu of a cell with this formula. */
  private static List<Map<String, Object>> contextMenu(String formula) throws Exception {
    try (Workbook book = TestOffice.get().newWorkbook()) {
      book.cell("A1").setFormula(formula);
      XSelectionSupplier selection =
          RemoteOffice.as(
              XSelectionSupplier.class,
              RemoteOffice.as(XModel.class, book.document()).getCurrentController());
      selection.select(book.cell("A1"));
      List<Map<String, Object>> entries = new ArrayList<>();
      ContextMenuExecuteEvent event = new ContextMenuExecuteEvent();
      event.Selection = selection;
      event.ActionTriggerContainer = container(entries);
      String families = String.join("|", Cellar.catalogue().families().keySet());
      boolean isChanged =
          new ContextMenus("Explain This Cell", families).notifyContextMenuExecute(event)
              == ContextMenuInterceptorAction.EXECUTE_MODIFIED;
      assertEquals(!entries.isEmpty(), isChanged);
      return entries;
    }
  }

  /** A menu as the office passes it, whose entries are kept as maps of their properties. */
  private static XIndexContainer container(List<Map<String, Object>> entries) {
    IdentityHashMap<Object, Map<String, Object>> made = new IdentityHashMap<>();
    return (XIndexContainer)
        proxy(
            (object, method, arguments) ->
                switch (method.getName()) {
                  case "createInstance" -> entry(made);
                  case "insertByIndex" -> {
                    entries.add((Integer) arguments[0], made.get(arguments[1]));
                    yield null;
                  }
                  default -> throw new UnsupportedOperationException(method.getName());
                },
            XIndexContainer.class,
            XMultiServiceFactory.class);
  }

  private static Object entry(IdentityHashMap<Object, Map<String, Object>> made) {
    Map<String, Object> properties = new HashMap<>();
    Object entry =
        proxy(
            (object, method, arguments) -> properties.put((String) arguments[0], arguments[1]),
            XPropertySet.class);
    made.put(entry, properties);
    return entry;
  }

  private static Object proxy(InvocationHandler handler, Class<?>... types) {
    return Proxy.newProxyInstance(MenuIT.class.getClassLoader(), types, handler);
  }

  /** The sheets of each untitled document that an entry opens, the one in front first. */
  private static List<List<String>> opened(String entry) throws Exception {
    RemoteOffice office = TestOffice.get();
    office.service(XJobExecutor.class, Menu.SERVICE).trigger(entry);
    List<List<String>> sheets = new ArrayList<>();
    for (Workbook book : office.openWorkbooks()) {
      assertEquals("", book.url(), "untitled");
      sheets.add(book.sheets());
      book.close();
    }
    return sheets;
  }
}
