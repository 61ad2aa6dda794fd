package meadcell.calc.office;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;

/** The one office that all tests share: the built extension is installed, and it is running. */
public final class TestOffice {
  private static Office office;

  private TestOffice() {}

  /** The built package. */
  public static Path extension() {
    return Path.of(System.getProperty("meadcell.oxt"));
  }

  /** Where the extension's own sources lie. */
  public static Path sources() {
    return Path.of("src/main/java").toAbsolutePath();
  }

  public static synchronized Office get() throws Exception {
    if (office == null) {
      Office started = new Office();
      Runtime.getRuntime().addShutdownHook(new Thread(() -> close(started)));
      started.install(extension());
      started.start();
      office = started;
    }
    return office;
  }

  private static void close(Office office) {
    try {
      office.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
