package meadcell.office.uno;

import com.sun.star.beans.PropertyValue;
import com.sun.star.bridge.XUnoUrlResolver;
import com.sun.star.comp.helper.Bootstrap;
import com.sun.star.connection.NoConnectException;
import com.sun.star.container.XEnumeration;
import com.sun.star.frame.XComponentLoader;
import com.sun.star.frame.XDesktop;
import com.sun.star.lang.DisposedException;
import com.sun.star.lang.XComponent;
import com.sun.star.lang.XMultiComponentFactory;
import com.sun.star.uno.UnoRuntime;
import com.sun.star.uno.XComponentContext;
import java.io.File;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import meadcell.office.Session;
import meadcell.office.Session.Setting;

/**
 * A LibreOffice of our own: its user profile is a temporary folder, and it runs as another user
 * when we are root, since the office installs no extension for root.
 */
public final class RemoteOffice implements AutoCloseable {
  private static final int NOBODY = 65534;

  /** What is called in place of a browser, in the folder that the office runs in. */
  private static final String BROWSER = "browser";

  /** How long an office may take to answer after its start. */
  private static final long START_SECONDS = 90;

  private final String locale;
  private final Session session;
  private final Path program;
  private Process process;
  private XComponentContext context;

  /** An office with an empty profile that recalculates every document it loads. */
  public RemoteOffice() throws IOException {
    this("en-US");
  }

  /** The same in another language, whose language pack must be installed. */
  public RemoteOffice(String locale) throws IOException {
    this.locale = locale;
    program = program();
    session = new Session("meadcell-office");
    Path asked = Files.writeString(home().resolve(BROWSER), "#!/bin/sh\necho \"$1\" >>browsed\n");
    Files.setPosixFilePermissions(asked, PosixFilePermissions.fromString("rwxr-xr-x"));
    Files.writeString(home().resolve(".mailcap"), "text/html; " + asked + " %s\n");
    recalculate(true);
  }

  /** {@return what the office had a browser open, an address a line; it opens none} */
  public String browsed() throws IOException {
    Path browsed = home().resolve("browsed");
    return Files.exists(browsed) ? Files.readString(browsed) : "";
  }

  private static Path program() throws IOException {
    return Arrays.stream(System.getenv("PATH").split(File.pathSeparator))
        .map(folder -> Path.of(folder, "soffice"))
        .filter(Files::isExecutable)
        .findFirst()
        .orElseThrow(
            () ->
                new IOException(
                    "no soffice on the PATH; run addin/office/src/install/install-office.sh"))
        .toRealPath()
        .getParent();
  }

  /** A folder that both we and the office can write. */
  public Path home() {
    return session.home();
  }

  /** Lets loaded documents keep the numbers they were stored with, as users have it. */
  public void recalculateNever() throws IOException {
    recalculate(false);
  }

  private void recalculate(boolean always) throws IOException {
    List<Setting> settings = new ArrayList<>(Session.recalculation(always));
    settings.add(new Setting("Office.Linguistic/General", "UILocale", locale));
    settings.add(new Setting("Setup/L10N", "ooLocale", locale));
    settings.add(new Setting("Setup/L10N", "ooSetupSystemLocale", locale));
    settings.add(new Setting("Office.Common/Misc", "FirstRun", false));
    settings.add(new Setting("Office.Common/Misc", "ShowTipOfTheDay", false));
    session.set(settings);
    open(home());
  }

  /** As a user does under Options, Advanced; before the start. */
  public void switchJavaOff() throws IOException {
    String arch = System.getProperty("os.arch").equals("amd64") ? "X86_64" : "AARCH64";
    Path folder = Files.createDirectories(home().resolve("profile/user/config"));
    Files.writeString(
        folder.resolve("javasettings_Linux_" + arch + ".xml"),
        """
        <?xml version="1.0" encoding="UTF-8"?>
        <java xmlns="http://openoffice.org/2004/java/framework/1.0"
          xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
        <enabled xsi:nil="false">false</enabled>
        <userClassPath xsi:nil="true"/><vmParameters xsi:nil="true"/>
        <jreLocations xsi:nil="true"/><javaInfo xsi:nil="true"/>
        </java>
        """);
    open(home());
  }

  /** Installs an extension, over an older version if there is one. */
  public void install(Path extension) throws IOException, InterruptedException {
    Path copy = home().resolve(extension.getFileName());
    Files.copy(extension, copy, StandardCopyOption.REPLACE_EXISTING);
    open(home());
    run("unopkg", "add", "-f", "-s", copy.toString(), session.profile());
  }

  /** Removes an extension by its identifier. */
  public void remove(String identifier) throws IOException, InterruptedException {
    run("unopkg", "remove", identifier, session.profile());
  }

  private void run(String... command) throws IOException, InterruptedException {
    Process run = command(command).start();
    if (!run.waitFor(START_SECONDS, TimeUnit.SECONDS) || run.exitValue() != 0) {
      Session.end(run);
      throw new IOException(String.join(" ", command) + " failed:\n" + session.log());
    }
  }

  private ProcessBuilder command(String... command) {
    List<String> line = new ArrayList<>();
    if (System.getProperty("user.name").equals("root")) {
      line.addAll(List.of("setpriv", "--reuid=" + NOBODY, "--regid=" + NOBODY, "--clear-groups"));
    }
    line.add(program.resolve(command[0]).toString());
    line.addAll(List.of(command).subList(1, command.length));
    ProcessBuilder builder = session.command(line).directory(home().toFile());
    builder.environment().put("HOME", home().toString());
    builder.environment().put("BROWSER", home().resolve(BROWSER).toString());
    return builder;
  }

  /** Starts the office and waits until it answers. */
  public void start(String... options) throws Exception {
    int port;
    try (ServerSocket free = new ServerSocket(0)) {
      port = free.getLocalPort();
    }
    String address = "socket,host=127.0.0.1,port=" + port + ";urp";
    List<String> line =
        new ArrayList<>(
            List.of("soffice", "--norestore", "--nologo", "--nodefault", "--accept=" + address));
    line.addAll(options.length == 0 ? List.of("--headless") : List.of(options));
    line.add(session.profile());
    process = command(line.toArray(String[]::new)).start();
    XComponentContext local = Bootstrap.createInitialComponentContext(null);
    XUnoUrlResolver resolver =
        as(
            XUnoUrlResolver.class,
            local
                .getServiceManager()
                .createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", local));
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(START_SECONDS);
    while (context == null) {
      try {
        context =
            as(
                XComponentContext.class,
                resolver.resolve("uno:" + address + ";StarOffice.ComponentContext"));
      } catch (NoConnectException e) {
        if (!process.isAlive() || System.nanoTime() > deadline) {
          throw new IOException("the office did not start:\n" + session.log(), e);
        }
        Thread.sleep(100);
      }
    }
  }

  /** An instance of one of the office's services. */
  public <T> T service(Class<T> type, String name) throws com.sun.star.uno.Exception {
    XMultiComponentFactory services = context.getServiceManager();
    Object instance = services.createInstanceWithContext(name, context);
    if (instance == null) {
      throw new IllegalStateException("the office has no service " + name);
    }
    return as(type, instance);
  }

  public XComponentContext context() {
    return context;
  }

  /** A new spreadsheet. */
  public Workbook newWorkbook() throws com.sun.star.uno.Exception {
    return open("private:factory/scalc", true);
  }

  /** A stored spreadsheet. */
  public Workbook open(String url, boolean hidden) throws com.sun.star.uno.Exception {
    XComponent document =
        service(XComponentLoader.class, "com.sun.star.frame.Desktop")
            .loadComponentFromURL(
                url, "_blank", 0, new PropertyValue[] {property("Hidden", hidden)});
    return new Workbook(document);
  }

  /** The spreadsheets that are open, the one in front first. */
  public List<Workbook> openWorkbooks() throws com.sun.star.uno.Exception {
    XDesktop desktop = service(XDesktop.class, "com.sun.star.frame.Desktop");
    XComponent front = desktop.getCurrentComponent();
    List<Workbook> open = new ArrayList<>();
    for (XEnumeration all = desktop.getComponents().createEnumeration(); all.hasMoreElements(); ) {
      XComponent document = as(XComponent.class, all.nextElement());
      open.add(UnoRuntime.areSame(document, front) ? 0 : open.size(), new Workbook(document));
    }
    return open;
  }

  public static PropertyValue property(String name, Object value) {
    PropertyValue property = new PropertyValue();
    property.Name = name;
    property.Value = value;
    return property;
  }

  /** The same object by another of its interfaces. */
  public static <T> T as(Class<T> type, Object object) {
    T found = UnoRuntime.queryInterface(type, object);
    if (found == null) {
      throw new IllegalStateException(object + " is no " + type);
    }
    return found;
  }

  /** Ends the office, keeps the profile. */
  public void stop() throws IOException {
    if (process == null) {
      return;
    }
    try {
      if (context != null) {
        service(XDesktop.class, "com.sun.star.frame.Desktop").terminate();
      }
    } catch (DisposedException e) {
      context = null; // it was gone before it could answer, as asked
    } catch (com.sun.star.uno.Exception e) {
      throw new IOException(e);
    }
    context = null;
    try {
      if (!process.waitFor(20, TimeUnit.SECONDS)) {
        Session.end(process);
      } else if (process.exitValue() != 0) {
        throw new IOException(
            "the office ended with code " + process.exitValue() + "\n" + session.log());
      }
    } catch (InterruptedException e) {
      throw new InterruptedIOException();
    }
    process = null;
  }

  @Override
  public void close() throws IOException {
    stop();
    session.close();
  }

  /** Lets the other user in. */
  private static void open(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.toList()) {
        if (Optional.of(Files.getOwner(file).getName())
            .filter(System.getProperty("user.name")::equals)
            .isPresent()) {
          Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxrwxrwx"));
        }
      }
    }
  }
}
