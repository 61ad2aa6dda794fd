package meadcell.calc.extension;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import meadcell.calc.menu.Menu;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The guide's pages in the built package; in a browser, where the machine has Chromium. */
class GuideSiteIT {
  private static final Pattern LINK = Pattern.compile("(?:href|src)=\"([^\"]*)\"");

  /** In the gate, these; with {@code -Dmeadcell.long}, all. */
  private static final List<String> TRIED = List.of("en/index.html", "de/barrel.html");

  @TempDir static Path folder;

  @BeforeAll
  static void unpack() throws IOException {
    Path packed = Path.of(System.getProperty("meadcell.oxt"));
    try (ZipInputStream in = new ZipInputStream(Files.newInputStream(packed))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        if (entry.getName().startsWith(GuideSite.FOLDER)) {
          Path file = folder.resolve(entry.getName());
          Files.createDirectories(file.getParent());
          Files.write(file, in.readAllBytes());
        }
      }
    }
  }

  private static Path guide() {
    return folder.resolve(GuideSite.FOLDER);
  }

  private static List<Path> pages() throws IOException {
    try (Stream<Path> files = Files.walk(guide())) {
      return files.filter(file -> file.toString().endsWith(".html")).sorted().toList();
    }
  }

  @Test
  void theMenuFindsItInEveryLanguage() {
    for (Words words : Words.all()) {
      assertTrue(Files.exists(folder.resolve(Menu.pages(words.tag()))), words.tag());
    }
  }

  @Test
  void everyLinkLeadsSomewhereAndNoneLeavesTheFolder() throws IOException {
    List<String> lost = new ArrayList<>();
    for (Path page : pages()) {
      LINK.matcher(Files.readString(page))
          .results()
          .map(link -> link.group(1))
          .filter(link -> !leads(page, link))
          .forEach(link -> lost.add(page + ": " + link));
    }
    assertEquals(List.of(), lost);
  }

  private static boolean leads(Path page, String link) {
    String[] parts = link.split("#", 2);
    Path target = parts[0].isEmpty() ? page : page.resolveSibling(parts[0]).normalize();
    try {
      return target.startsWith(guide())
          && Files.exists(target)
          && (parts.length == 1 || Files.readString(target).contains(" id=\"" + parts[1] + "\""));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @Test
  void everyFunctionHasItsTextsInEveryLanguage() throws IOException {
    for (Words words : Words.all()) {
      String index = Files.readString(guide().resolve(words.tag() + "/index.html"));
      for (FunctionSpec function : Cellar.catalogue().functions()) {
        String file = function.family().toLowerCase(java.util.Locale.ROOT) + ".html";
        String page = Files.readString(guide().resolve(words.tag() + "/" + file));
        assertTrue(index.contains(file + "#" + function.name()), function.name());
        for (String text :
            List.of(
                function.summary(words),
                function.formula(words),
                function.source(words),
                function.caution(words))) {
          text.lines().forEach(line -> assertTrue(page.contains(escaped(line)), line));
        }
      }
    }
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#x27;");
  }

  private static Browser browser() {
    Optional<Path> program = Browser.program("chromium", "chromium-browser", "google-chrome");
    assumeTrue(
        program.isPresent(),
        "no Chromium on the PATH: the guide's search and contrast are not tried");
    return new Browser(program.get(), folder);
  }

  @Test
  void theSearchShowsWhatHasEveryWord() throws Exception {
    Browser browser = browser();
    String search =
        """
        const search = document.getElementById("search");
        search.value = "%s";
        search.dispatchEvent(new Event("input"));
        return [...document.querySelectorAll("[data-words]")]
          .filter((entry) => entry.checkVisibility())
          .map((entry) => entry.querySelector("a").textContent).join(" ")
          + "|" + document.getElementById("found").textContent;
        """;
    Path english = guide().resolve("en/index.html");
    String hydrometer = browser.says(english, false, search.formatted("Hydrometer  TEMPERATURE"));
    assertTrue(hydrometer.contains("GRAVITY.CORRECT"), hydrometer);
    assertFalse(hydrometer.contains("BARREL.VOLUME"), hydrometer);
    String all = browser.says(english, false, search.formatted(""));
    assertEquals(Cellar.catalogue().names().size(), all.split(" ").length);
    Path german = guide().resolve("de/index.html");
    String headspace = browser.says(german, true, search.formatted("kopfraum"));
    assertTrue(headspace.contains("BARREL.HEADSPACE"), headspace);
    String nothing = browser.says(german, true, search.formatted("xyzzy"));
    assertTrue(nothing.startsWith("|Nichts gefunden"), nothing);
  }

  /** By the rules of WCAG 2 at level AA, as the library axe judges them: contrast, names, order. */
  @Test
  void lightAndDarkAreReadable() throws Exception {
    Browser browser = browser();
    String judge =
        """
        const found = await axe.run({ runOnly: ["wcag2a", "wcag2aa"] });
        const contrast = found.passes.some((rule) => rule.id === "color-contrast");
        return getComputedStyle(document.body).backgroundColor + " " + contrast + " "
          + found.violations.map((v) => v.id + " " + v.nodes[0].html).join("; ");
        """;
    boolean isWhole = System.getProperty("meadcell.long") != null;
    for (Path page : isWhole ? pages() : TRIED.stream().map(guide()::resolve).toList()) {
      assertEquals("rgb(255, 253, 248) true ", browser.says(page, false, judge), "" + page);
      assertEquals("rgb(27, 23, 18) true ", browser.says(page, true, judge), "" + page);
    }
  }
}
