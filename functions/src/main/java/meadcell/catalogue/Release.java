package meadcell.catalogue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Properties;

/** The version of this library, from {@code /meadcell/version.properties}. */
public final class Release {
  private static final String VERSION = read();

  private Release() {}

  /** {@return the version, such as 1.0.0} */
  public static String version() {
    return VERSION;
  }

  private static String read() {
    Properties properties = new Properties();
    try (InputStream in = Release.class.getResourceAsStream("/meadcell/version.properties")) {
      properties.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return properties.getProperty("version");
  }
}
