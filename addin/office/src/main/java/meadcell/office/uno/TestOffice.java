package meadcell.office.uno;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;

/** The one office that all tests share: the built extension is installed, and it is running. */
public final class TestOffice {
  private static RemoteOffice office;

  private TestOffice() {}

  /** The built package, which the property {@code meadcell.oxt} names. */
  public static Path extension() {
    return Path.of(System.getProperty("meadcell.oxt"));
  }

  /** The office, started at its first use; it ends with the program. */
  public static synchronized RemoteOffice get() throws Exception {
    if (office == null) {
      RemoteOffice started = new RemoteOffice();
      Runtime.getRuntime().addShutdownHook(new Thread(() -> close(started)));
      started.install(extension());
      started.start();
      office = started;
    }
    return office;
  }

  private static void close(RemoteOffice office) {
    try {
      office.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
