package meadcell.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;

/** Both packages carry the licence of all they contain, and a notice that names it and no more. */
class LicencesIT {
  private static final Pattern NAMED = Pattern.compile("^- ([\\w-]+)", Pattern.MULTILINE);
  private static final Pattern TEXT = Pattern.compile("META-INF/(LICENSE|NOTICE)[^/]*");

  /** The libraries that the tests see by their names, and where they lie. */
  private static final Map<String, Path> LIBRARIES =
      Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
          .filter(path -> path.endsWith(".jar"))
          .map(Path::of)
          .collect(Collectors.toMap(LicencesIT::name, path -> path, (one, other) -> one));

  /** Its name in a Maven repository: the folder above that of its version. */
  private static String name(Path jar) {
    return jar.getParent().getParent().getFileName().toString();
  }

  @Test
  void theJar() throws IOException {
    Map<String, String> libraryOf = new HashMap<>();
    for (Map.Entry<String, Path> library : LIBRARIES.entrySet()) {
      entries(library.getValue()).forEach((entry, text) -> libraryOf.put(entry, library.getKey()));
    }
    Map<String, String> jar = entries(PackedTool.jar());
    Set<String> contained = new TreeSet<>();
    for (String entry : jar.keySet()) {
      if (entry.endsWith(".class") && !entry.startsWith("meadcell/")) {
        contained.add(libraryOf.getOrDefault(entry, "unknown: " + entry));
      }
    }
    assertTexts(jar, "META-INF/", contained);
  }

  @Test
  void theExtension() throws IOException {
    Map<String, String> extension = entries(Path.of(System.getProperty("meadcell.oxt")));
    Set<String> contained =
        extension.keySet().stream()
            .filter(entry -> entry.endsWith(".jar") && !entry.startsWith("meadcell-"))
            .map(entry -> entry.replaceFirst("-[\\d.]+\\.jar$", ""))
            .collect(Collectors.toCollection(TreeSet::new));
    assertTexts(extension, "", contained);
  }

  private static void assertTexts(Map<String, String> packed, String folder, Set<String> contained)
      throws IOException {
    assertTrue(contained.contains("commons-math3"), contained.toString());
    assertEquals(Files.readString(Path.of("../../LICENSE")), packed.get(folder + "LICENSE"));
    String notice = packed.get(folder + "NOTICE");
    assertTrue(notice.startsWith("Meadcell\nCopyright "), notice);
    List<String> named = NAMED.matcher(notice).results().map(found -> found.group(1)).toList();
    assertEquals(contained, new TreeSet<>(named));
    for (String library : contained) {
      Map<String, String> texts = new TreeMap<>(entries(LIBRARIES.get(library)));
      texts.keySet().removeIf(entry -> !TEXT.matcher(entry).matches());
      texts.forEach(
          (entry, text) ->
              assertEquals(
                  text,
                  packed.get(
                      folder + "licenses/" + library + "-jar/" + Path.of(entry).getFileName()),
                  () -> library + " " + entry));
    }
  }

  /** The texts of licences and notices in a zip; of all else, only the names. */
  private static Map<String, String> entries(Path zip) throws IOException {
    Map<String, String> entries = new HashMap<>();
    try (ZipFile file = new ZipFile(zip.toFile())) {
      for (ZipEntry entry :
          (Iterable<ZipEntry>) file.stream().map(ZipEntry.class::cast)::iterator) {
        boolean isText = entry.getName().matches("(.*/)?(LICENSE|NOTICE)[^/]*");
        entries.put(
            entry.getName(),
            isText
                ? new String(file.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8)
                : "");
      }
    }
    return entries;
  }
}
