package meadcell.calc.extension;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A Chromium without a window: shows a page, runs a script in it, and tells what that says. */
record Browser(Path program, Path folder) {
  private static final Pattern SAID =
      Pattern.compile("<pre id=\"said\">(.*?)</pre>", Pattern.DOTALL);
  private static final String AXE = "/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js";

  /** The one of this machine, if there is one. */
  static Optional<Path> program(String... names) {
    return Stream.of(System.getenv("PATH").split(File.pathSeparator))
        .flatMap(path -> Stream.of(names).map(name -> Path.of(path, name)))
        .filter(Files::isExecutable)
        .findFirst();
  }

  /** What a script says, the value of a promise, in a page with the library axe. */
  String says(Path page, boolean isDark, String script) throws IOException, InterruptedException {
    Path axe = folder.resolve("axe.min.js");
    if (!Files.exists(axe)) {
      try (InputStream in = Browser.class.getResourceAsStream(AXE)) {
        Files.copy(in, axe);
      }
    }
    Path tried = page.resolveSibling("tried.html");
    String added =
        """
        <script src="%s"></script>
        <script>
        addEventListener("load", async () => {
          const said = document.createElement("pre");
          said.id = "said";
          said.textContent = await (async () => { %s })();
          document.body.append(said);
        });
        </script></body>
        """
            .formatted(axe.toUri(), script);
    Files.writeString(tried, Files.readString(page).replace("</body>", added));
    Process run =
        new ProcessBuilder(
                List.of(
                    program.toString(),
                    "--headless",
                    "--no-sandbox",
                    "--disable-gpu",
                    "--user-data-dir=" + folder.resolve("profile"),
                    "--blink-settings=preferredColorScheme=" + (isDark ? 0 : 1),
                    "--virtual-time-budget=20000",
                    "--dump-dom",
                    tried.toUri().toString()))
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    String dom = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(run.waitFor(1, TimeUnit.MINUTES), "the browser does not end");
    Files.delete(tried);
    Matcher said = SAID.matcher(dom);
    assertTrue(said.find(), dom);
    return said.group(1);
  }
}
