package meadcell.calc.menu;

import com.sun.star.awt.PosSize;
import com.sun.star.awt.PushButtonType;
import com.sun.star.awt.Rectangle;
import com.sun.star.awt.XControl;
import com.sun.star.awt.XControlContainer;
import com.sun.star.awt.XControlModel;
import com.sun.star.awt.XDialog;
import com.sun.star.awt.XTextComponent;
import com.sun.star.awt.XToolkit;
import com.sun.star.awt.XWindow;
import com.sun.star.awt.XWindowPeer;
import com.sun.star.beans.XPropertySet;
import com.sun.star.container.XNameContainer;
import com.sun.star.lang.XComponent;
import com.sun.star.lang.XMultiServiceFactory;
import com.sun.star.uno.UnoRuntime;
import com.sun.star.uno.XComponentContext;

/** A window with a long text to read, scroll and copy. Sizes are in the dialog's own units. */
final class PageWindow {
  private static final int WIDTH = 320;
  private static final int HEIGHT = 250;
  private static final int MARGIN = 6;
  private static final int BUTTON_WIDTH = 50;
  private static final int BUTTON_HEIGHT = 14;

  private static final String TEXT = "text";

  private final XComponentContext context;
  private final XNameContainer controls;
  private final XMultiServiceFactory models;
  private final XControl dialog;

  private PageWindow(XComponentContext context, String title) throws com.sun.star.uno.Exception {
    this.context = context;
    Object model = service("com.sun.star.awt.UnoControlDialogModel");
    place(model, 0, 0, WIDTH, HEIGHT);
    set(model, "Title", title);
    controls = as(XNameContainer.class, model);
    models = as(XMultiServiceFactory.class, model);
    dialog = as(XControl.class, service("com.sun.star.awt.UnoControlDialog"));
    dialog.setModel(as(XControlModel.class, model));
  }

  /** Shows a text until it is closed. */
  static void show(
      XComponentContext context, XWindowPeer parent, String title, String text, String close)
      throws com.sun.star.uno.Exception {
    PageWindow window = new PageWindow(context, title);
    try {
      window.fill(text, close);
      window.dialog.createPeer(
          as(XToolkit.class, window.service("com.sun.star.awt.Toolkit")), parent);
      window.over(parent);
      window.toTheTop();
      as(XDialog.class, window.dialog).execute();
    } finally {
      as(XComponent.class, window.dialog).dispose();
    }
  }

  private void fill(String text, String close) throws com.sun.star.uno.Exception {
    int height = HEIGHT - 3 * MARGIN - BUTTON_HEIGHT;
    Object button = add("com.sun.star.awt.UnoControlButtonModel", "close");
    place(
        button,
        WIDTH - MARGIN - BUTTON_WIDTH,
        HEIGHT - MARGIN - BUTTON_HEIGHT,
        BUTTON_WIDTH,
        BUTTON_HEIGHT);
    set(button, "Label", close);
    set(button, "PushButtonType", (short) PushButtonType.OK_value);
    set(button, "DefaultButton", true);
    Object page = add("com.sun.star.awt.UnoControlEditModel", TEXT);
    place(page, MARGIN, MARGIN, WIDTH - 2 * MARGIN, height);
    set(page, "MultiLine", true);
    set(page, "ReadOnly", true);
    set(page, "VScroll", true);
    set(page, "Text", text);
  }

  /** In the middle of the window it belongs to. */
  private void over(XWindowPeer parent) {
    Rectangle outer = as(XWindow.class, parent).getPosSize();
    XWindow window = as(XWindow.class, dialog);
    Rectangle inner = window.getPosSize();
    window.setPosSize(
        outer.X + (outer.Width - inner.Width) / 2,
        outer.Y + (outer.Height - inner.Height) / 2,
        0,
        0,
        PosSize.POS);
  }

  /** A text field shows its end, where its cursor is. */
  private void toTheTop() {
    as(XTextComponent.class, as(XControlContainer.class, dialog).getControl(TEXT))
        .setSelection(new com.sun.star.awt.Selection(0, 0));
  }

  private Object add(String type, String name) throws com.sun.star.uno.Exception {
    Object model = models.createInstance(type);
    controls.insertByName(name, model);
    return model;
  }

  private static void place(Object model, int x, int y, int width, int height)
      throws com.sun.star.uno.Exception {
    set(model, "PositionX", x);
    set(model, "PositionY", y);
    set(model, "Width", width);
    set(model, "Height", height);
  }

  private static void set(Object model, String property, Object value)
      throws com.sun.star.uno.Exception {
    as(XPropertySet.class, model).setPropertyValue(property, value);
  }

  private Object service(String name) throws com.sun.star.uno.Exception {
    return context.getServiceManager().createInstanceWithContext(name, context);
  }

  private static <T> T as(Class<T> type, Object object) {
    return UnoRuntime.queryInterface(type, object);
  }
}
