package meadcell.calc.extension;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.jar.JarInputStream;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import meadcell.office.uno.TestOffice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is in the built package. */
class PackageIT {
  /** Class-file version of Java n, less n. */
  private static final int JAVA_0 = 44;

  /** Where the extension's own sources lie. */
  static final Path SOURCES = Path.of("src/main/java").toAbsolutePath();

  private static final Path UNOIDL_READ = Path.of("/usr/lib/libreoffice/sdk/bin/unoidl-read");

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({Extension.JAR + ",17", "meadcell-functions.jar,17", Extension.MENU_JAR + ",8"})
  void ourClassesRunOnTheJavaWeClaim(String jar, int java) throws Exception {
    int classes = 0;
    for (Map.Entry<String, byte[]> entry : unzip(packed().get(jar)).entrySet()) {
      if (entry.getKey().endsWith(".class")) {
        classes++;
        assertEquals(java + JAVA_0, ByteBuffer.wrap(entry.getValue()).getShort(6), entry.getKey());
      }
    }
    assertTrue(classes > 0, jar);
  }

  @Test
  void theJarNamesItsEntryAndNoTypePath() throws Exception {
    try (JarInputStream jar =
        new JarInputStream(new ByteArrayInputStream(packed().get(Extension.JAR)))) {
      var attributes = jar.getManifest().getMainAttributes();
      assertEquals("meadcell.calc.AddIn", attributes.getValue("RegistrationClassName"));
      assertNull(attributes.getValue("UNO-Type-Path"));
      for (String library : attributes.getValue("Class-Path").split(" ")) {
        assertTrue(packed().containsKey(library), library);
      }
    }
  }

  @Test
  void theSameSourcesGiveTheSameBytes() throws Exception {
    Path again = folder.resolve("again.oxt");
    Path fixed = TestOffice.extension().resolveSibling("extension");
    Archive archive =
        new Extension(Extension.class.getClassLoader(), Extension.libraries(), folder)
            .archive(fixed, SOURCES);
    Files.write(again, archive.bytes());
    assertArrayEquals(Files.readAllBytes(TestOffice.extension()), Files.readAllBytes(again));
  }

  @Test
  void theSdkReadsTheTypeLibraryAsWritten() throws Exception {
    assumeTrue(Files.isExecutable(UNOIDL_READ), "no LibreOffice SDK here");
    Path types = Files.write(folder.resolve("meadcell.rdb"), packed().get("meadcell.rdb"));
    String office = UNOIDL_READ.resolve("../../../program/types.rdb").normalize().toString();
    Process read = new ProcessBuilder(UNOIDL_READ.toString(), office, types.toString()).start();
    String idl = new String(read.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, read.waitFor());
    assertEquals(idl(), idl);
  }

  /** The interfaces in the SDK's notation. */
  private static String idl() {
    StringBuilder idl = new StringBuilder("module meadcell {\n module uno {\n");
    new Extension(Extension.class.getClassLoader(), List.of(), Path.of("unused"))
        .interfaces().stream()
            .sorted(Comparator.comparing(UnoInterface::name))
            .forEach(
                type -> {
                  idl.append("  interface ").append(type.name()).append(" {\n");
                  idl.append("   interface ::com::sun::star::uno::XInterface;\n");
                  for (UnoInterface.Method method : type.methods()) {
                    idl.append("   ").append(named(method.type())).append(' ');
                    idl.append(method.name()).append('(');
                    idl.append(
                        String.join(
                            ", ",
                            method.parameters().stream()
                                .map(p -> "[in] " + named(p.type()) + " " + p.name())
                                .toList()));
                    idl.append(");\n");
                  }
                  idl.append("  };\n");
                });
    return idl.append(" };\n};\n").toString();
  }

  private static String named(String type) {
    return type.startsWith("[]") ? "sequence< " + named(type.substring(2)) + " >" : type;
  }

  private static Map<String, byte[]> packed() throws IOException {
    return unzip(Files.readAllBytes(TestOffice.extension()));
  }

  private static Map<String, byte[]> unzip(byte[] archive) throws IOException {
    Map<String, byte[]> entries = new HashMap<>();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        entries.put(entry.getName(), zip.readAllBytes());
      }
    }
    return entries;
  }

  @Test
  void withASiteItLinksThereAndTellsOfNewerVersions() throws Exception {
    byte[] without =
        Files.readAllBytes(
            TestOffice.extension().resolveSibling("extension").resolve(Extension.DESCRIPTION));
    Site site = new Site("https://cellar.example/packages");
    List<String> added = words(site.described(without));
    for (String word : words(without)) {
      assertTrue(added.remove(word), word);
    }
    assertEquals(
        List.of(
            "/update-information",
            "src",
            "update-information",
            "xlink:href=\"https://cellar.example/packages\"",
            "xlink:href=\"https://cellar.example/packages/meadcell.update.xml\""),
        added);
    String newer = new String(site.updates("2.0.0", "meadcell.oxt"), StandardCharsets.UTF_8);
    assertTrue(newer.contains("<version value=\"2.0.0\"/>"), newer);
    assertTrue(
        newer.contains("<src xlink:href=\"https://cellar.example/packages/meadcell.oxt\"/>"),
        newer);
  }

  /** The names, attributes and words of some XML, sorted. */
  private static List<String> words(byte[] xml) {
    String text = new String(xml, StandardCharsets.UTF_8).replaceFirst("<\\?[^>]*>", "");
    return Stream.of(text.split("/?[\\s<>]+"))
        .filter(word -> !word.isEmpty())
        .sorted()
        .collect(Collectors.toCollection(ArrayList::new));
  }

  @Test
  void theExtensionManagerGetsATextAndNoLicenceToAccept() throws Exception {
    Map<String, byte[]> entries = packed();
    String description = new String(entries.get("description.xml"), StandardCharsets.UTF_8);
    assertFalse(description.contains("license"), "Apache 2.0 asks for no acceptance");
    assertFalse(description.contains("$"), description);
    Matcher links = Pattern.compile("xlink:href=\"([^\"]+)\"").matcher(description);
    int count = 0;
    for (; links.find(); count++) {
      assertTrue(entries.containsKey(links.group(1)), links.group(1));
    }
    assertEquals(5, count, "two descriptions, two icons, release notes");
  }
}
