package meadcell.calc;

import com.sun.star.awt.XTopWindow;
import com.sun.star.beans.PropertyValue;
import com.sun.star.frame.XController;
import com.sun.star.frame.XDispatchHelper;
import com.sun.star.frame.XDispatchProvider;
import com.sun.star.frame.XModel;
import com.sun.star.view.XSelectionSupplier;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.Workbook;

/**
 * Takes the README's pictures in a real window: run it under Xvfb with a window manager, xdotool
 * and ImageMagick installed.
 */
public final class Pictures {
  private static final int PAUSE_SECONDS = 6;

  private final RemoteOffice office;
  private final Path folder;

  private Pictures(RemoteOffice office, Path folder) {
    this.office = office;
    this.folder = folder;
  }

  /** Arguments: the built package, the folder for the pictures. */
  public static void main(String[] arguments) throws Exception {
    try (RemoteOffice office = new RemoteOffice()) {
      office.install(Path.of(arguments[0]));
      office.start("--norestore");
      new Pictures(office, Files.createDirectories(Path.of(arguments[1]))).take();
    }
  }

  private void take() throws Exception {
    try (Workbook book = office.open("private:factory/scalc", false)) {
      book.type(0, "Head, cm", "Bilge, cm", "Length, cm", "Drop, cm", "Missing, L", "Gravity");
      book.type(1, "50", "64", "81", "6", "=BARREL.HEADSPACE(B1;B2;B3;B4)", "1085");
      book.cell("B7").setFormula("=GRAVITY.TOBRIX(B6)");
      XController controller =
          RemoteOffice.as(XModel.class, book.document()).getCurrentController();
      RemoteOffice.as(XTopWindow.class, controller.getFrame().getContainerWindow()).toFront();
      select(controller, book, "B9");
      run("xdotool", "type", "--delay", "200", "=BARREL.");
      picture("completion", "640x340+0+0");
      run("xdotool", "type", "--delay", "200", "HEADSPACE(");
      run("xdotool", "key", "ctrl+F2");
      TimeUnit.SECONDS.sleep(PAUSE_SECONDS);
      run("xdotool", "key", "alt+n"); // Next: the arguments
      picture("wizard", "1000x660+0+0");
      run("xdotool", "key", "Escape");
      run("xdotool", "key", "Escape");
      select(controller, book, "B7");
      run("xdotool", "key", "F10"); // the menu bar; Cellar stands before Window and Help
      run("xdotool", "key", "Left", "Left", "Left", "Down");
      picture("menu", "640x300+0+0");
      run("xdotool", "key", "Escape", "Escape");
      entry(controller, "explain");
    }
  }

  private static void select(XController controller, Workbook book, String cell) throws Exception {
    RemoteOffice.as(XSelectionSupplier.class, controller).select(book.cell(cell));
    TimeUnit.SECONDS.sleep(1);
  }

  /** Chooses a menu entry that shows a message, and closes it again. */
  private void entry(XController controller, String entry) throws Exception {
    XDispatchHelper helper =
        office.service(XDispatchHelper.class, "com.sun.star.frame.DispatchHelper");
    Thread shown =
        new Thread(
            () ->
                helper.executeDispatch(
                    RemoteOffice.as(XDispatchProvider.class, controller.getFrame()),
                    "service:meadcell.calc.Menu?" + entry,
                    "_self",
                    0,
                    new PropertyValue[0]));
    shown.start();
    picture(entry, "1000x620+0+0");
    run("xdotool", "key", "Return");
    shown.join();
  }

  private void picture(String name, String area) throws IOException, InterruptedException {
    TimeUnit.SECONDS.sleep(PAUSE_SECONDS);
    String file = folder.resolve(name + ".png").toString();
    run("import", "-window", "root", "-crop", area, "+repage", "+dither", "-colors", "64", file);
  }

  private static void run(String... command) throws IOException, InterruptedException {
    if (new ProcessBuilder(command).inheritIO().start().waitFor() != 0) {
      throw new IOException("failed: " + String.join(" ", command));
    }
  }
}
