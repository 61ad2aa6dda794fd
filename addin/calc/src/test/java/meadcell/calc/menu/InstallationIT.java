package meadcell.calc.menu;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.script.provider.XScriptProviderFactory;
import com.sun.star.uno.XComponentContext;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import meadcell.catalogue.CheckRow;
import meadcell.cellar.Cellar;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The menu's check of the installation, against the running office. */
class InstallationIT {
  @TempDir Path folder;

  @Test
  void aSoundInstallationIsSaidToBeSound() throws Exception {
    String report = new Installation(TestOffice.get().context()).report();
    Files.writeString(TestOffice.extension().resolveSibling("installation.txt"), report + "\n");
    List<String> lines = report.lines().toList();
    String version = Cellar.version();
    assertTrue(lines.get(0).startsWith("Meadcell " + version + " in LibreOffice "), lines.get(0));
    int checks = CheckRow.load(Cellar.catalogue()).size();
    assertEquals("All %d check values are met.".formatted(checks), lines.get(1));
    assertEquals("Calc calls the functions: CELLAR.VERSION() gives " + version + ".", lines.get(2));
    assertEquals("All is sound.", lines.get(3));
    assertEquals(4, lines.size());
  }

  @Test
  void functionsThatCalcCannotCallAreSaidToFail() throws Exception {
    Path broken = Files.copy(TestOffice.extension(), folder.resolve("broken.oxt"));
    try (FileSystem archive = FileSystems.newFileSystem(broken)) {
      Files.write(archive.getPath("meadcell-calc.jar"), new byte[0]);
    }
    try (RemoteOffice office = new RemoteOffice()) {
      office.install(broken);
      office.start();
      String report = new Installation(office.context()).report();
      assertTrue(report.contains("\nCalc cannot call the functions. Start the office"), report);
      assertTrue(report.endsWith("Something is wrong; the lines above say what."), report);
    }
  }

  /** What Basic says before it calls the menu's Java; empty where that can speak for itself. */
  @Test
  void whereJavaIsSwitchedOffBasicSaysWhatToClick() throws Exception {
    assertEquals("", trouble(TestOffice.get()));
    for (String language : List.of("en-US", "de")) {
      try (RemoteOffice office = new RemoteOffice(language)) {
        office.install(TestOffice.extension());
        office.switchJavaOff();
        office.start();
        Texts texts = new Texts(language.substring(0, 2));
        assertEquals(texts.say("javaOff"), trouble(office));
      }
    }
  }

  private static Object trouble(RemoteOffice office) throws Exception {
    Object factory =
        office
            .context()
            .getValueByName(
                "/singletons/com.sun.star.script.provider.theMasterScriptProviderFactory");
    return RemoteOffice.as(XScriptProviderFactory.class, factory)
        .createScriptProvider("")
        .getScript(
            "vnd.sun.star.script:Meadcell.Cellar.Trouble?language=Basic&location=application")
        .invoke(new Object[0], new short[1][0], new Object[1][0]);
  }

  @Test
  void aJavaThatIsTooOldForTheFunctionsIsNamed() throws Exception {
    Class<?> installation = new OlderJava().loadClass(Installation.class.getName());
    Object checked =
        installation
            .getConstructor(XComponentContext.class)
            .newInstance(TestOffice.get().context());
    String report = (String) installation.getMethod("report").invoke(checked);
    String java = System.getProperty("java.version");
    assertTrue(report.contains("Java " + java + " is too old for them. Install Java 17"), report);
    assertTrue(report.endsWith("Something is wrong; the lines above say what."), report);
  }

  /** Loads the menu, and finds the functions compiled for a Java that does not exist yet. */
  private static final class OlderJava extends ClassLoader {
    private static final int MAJOR_VERSION_AT = 7;

    OlderJava() {
      super(InstallationIT.class.getClassLoader());
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      Class<?> loaded = findLoadedClass(name);
      if (loaded != null || !name.startsWith("meadcell.calc.")) {
        return loaded != null ? loaded : super.loadClass(name, resolve);
      }
      try (InputStream in = getParent().getResourceAsStream(name.replace('.', '/') + ".class")) {
        byte[] bytes = in.readAllBytes();
        if (name.equals(Functions.CLASS)) {
          bytes[MAJOR_VERSION_AT] = Byte.MAX_VALUE;
        }
        return defineClass(name, bytes, 0, bytes.length);
      } catch (IOException e) {
        throw new ClassNotFoundException(name, e);
      }
    }
  }
}
