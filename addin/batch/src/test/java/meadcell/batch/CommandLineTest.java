package meadcell.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.catalogue.FunctionSpec;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CommandLineTest {

  @Test
  void evalPrintsTheBareNumber() {
    Run run = Run.of("eval", "ROUND(GRAVITY.TOBRIX(1)+50/3;2)");
    assertEquals(ExitCode.OK, run.code());
    assertEquals("16.67", run.out().trim());
  }

  @Test
  void evalTakesAFormulaAsInACell() {
    Run run = Run.of("eval", " =BARREL.VOLUME(50;64;81)");
    assertEquals(ExitCode.OK, run.code());
    assertEquals(Run.of("eval", "BARREL.VOLUME(50;64;81)").out(), run.out());
    Run one = Run.of("eval", "=BARREL.VOLUME(50)");
    assertTrue(one.out().contains("was given 1 argument;"), one.out());
  }

  @Test
  void evalTakesBothSeparatorsButNotMixed() {
    assertEquals(
        Run.of("eval", "GRAVITY.CORRECT(1.05;25)").out(),
        Run.of("eval", "GRAVITY.CORRECT(1.05,25)").out());
    Run mixed = Run.of("eval", "GRAVITY.CORRECT(1,05;25)");
    assertEquals(ExitCode.REFUSED, mixed.code());
    assertTrue(mixed.out().contains("decimal mark"));
  }

  @Test
  void evalTakesEmptyPlacesInArrayConstants() {
    String full = Run.of("eval", "MUST.GRAVITY({\"honey\",30;\"water\",70})").out();
    for (String empty :
        List.of(
            "{\"honey\",30,;\"water\",70,}",
            "{\"honey\",30;\"water\",70, ,}",
            "{\"honey\",30,0;\"water\",70,0}")) {
      assertEquals(full, Run.of("eval", "MUST.GRAVITY(" + empty + ")").out());
    }
  }

  @Test
  void evalAnswersStandardInputLineByLine() {
    InputStream before = System.in;
    System.setIn(
        new ByteArrayInputStream(
            "1+1\nGRAVITY.TOBRIX(1085)\nCELLAR.MAP(\"GRAVITY.TOBRIX\";{1;1})\n1+(\nNO.SUCH(1)\n"
                .getBytes(StandardCharsets.UTF_8)));
    try {
      Run run = Run.of("eval", "--json", "-");
      assertEquals(ExitCode.REFUSED, run.code());
      List<String> lines = run.out().lines().toList();
      assertEquals(5, lines.size());
      assertEquals("{\"expression\":\"1+1\",\"value\":2.0}", lines.get(0));
      assertTrue(lines.get(1).contains("\"error\":\"#NUM!\",\"why\":\"sg is 1085 SG;"));
      assertTrue(lines.get(2).endsWith("\"value\":[[0.0],[0.0]]}"), lines.get(2));
      assertTrue(lines.get(3).contains("cannot be read"));
      assertTrue(lines.get(4).contains("\"error\":\"#NAME?\""));
    } finally {
      System.setIn(before);
    }
  }

  @Test
  void unknownFunctionSuggestsTheNearest() {
    Run run = Run.of("explain", "GRAVITY.TOBRICKS");
    assertEquals(ExitCode.REFUSED, run.code());
    assertTrue(run.err().contains("Did you mean GRAVITY.TOBRIX?"), run.err());
    assertTrue(Run.of("eval", "GRAVITY.TOBRICKS(1)").out().contains("GRAVITY.TOBRIX?"));
  }

  @Test
  void functionsListsEverySignature() {
    String listed = Run.of("functions").out();
    for (FunctionSpec function : Cellar.catalogue().functions()) {
      assertTrue(listed.contains(function.signature()), function.name());
    }
  }

  @Test
  void explainShowsFunctionsAndCommands() {
    assertTrue(Run.of("explain", "gravity.tobrix").out().contains("GRAVITY.TOBRIX(sg)"));
    assertTrue(Run.of("explain", "eval").out().contains("Example: meadcell eval"));
  }

  @Test
  void selfcheckHoldsOnTheEvaluatorThatFillsWorkbooks() {
    Run run = Run.of("selfcheck", "--failed");
    assertEquals(ExitCode.OK, run.code(), run.out());
    assertFalse(run.out().contains("FAILED"));
  }

  @Test
  void selfcheckWritesTheProofAsAPage(@TempDir Path folder) throws Exception {
    Path page = folder.resolve("proof.html");
    Run run = Run.of("selfcheck", "--failed", "--report", page.toString(), "--date", "2026-11-26");
    assertEquals(ExitCode.OK, run.code(), run.out());
    String html = Files.readString(page);
    for (FunctionSpec function : Cellar.catalogue().functions()) {
      assertTrue(html.contains("id=\"" + function.name() + "\""), function.name());
    }
    assertTrue(html.contains("<td>2026-11-26</td>"));
    assertTrue(html.contains(run.out().lines().reduce((a, b) -> b).orElseThrow()));
    assertTrue(html.contains("AOAC 969.38 (Wedmore 1955)"), "sources");
    assertTrue(html.contains("<circle"), "deviations");
    Matcher links = Pattern.compile("href=\"#([^\"]+)\"").matcher(html);
    assertTrue(links.results().count() > 2000, "rows lead to the bibliography");
    links.reset();
    while (links.find()) {
      assertTrue(html.contains("id=\"" + links.group(1) + "\""), links.group(1));
    }
    Run again = Run.of("selfcheck", "--report", page.toString());
    assertEquals(ExitCode.NOT_WRITTEN, again.code());
    assertEquals(html, Files.readString(page));
  }

  @Test
  void selfcheckListsTheWeakestProvenFirst() {
    List<String> lines = Run.of("selfcheck", "--weakest").out().lines().toList();
    List<Integer> strength =
        lines.stream()
            .filter(line -> line.contains("\t"))
            .map(
                line ->
                    List.of("memory", "practice", "worked", "published")
                        .indexOf(line.split("\t")[0]))
            .toList();
    assertTrue(strength.contains(3));
    assertEquals(strength.stream().sorted().toList(), strength);
  }

  @Test
  void helpNamesTheExitCodes() {
    for (String command : List.of("eval", "functions", "explain", "selfcheck")) {
      assertTrue(Run.of("help", command).out().contains("6   a check failed"), command);
    }
  }

  @Test
  void misunderstoodCommandLineIsUsage() {
    assertEquals(ExitCode.USAGE, Run.of("eval").code());
    Run unknown = Run.of("evaluate", "1");
    assertEquals(ExitCode.USAGE, unknown.code());
    assertTrue(unknown.err().contains("meadcell eval"), unknown.err());
    Run noPlan = Run.of("fill", "log.xlsx");
    assertEquals(ExitCode.USAGE, noPlan.code());
    assertEquals(
        List.of(
            "meadcell: Missing required option: '--plan=PLAN'",
            "\"meadcell fill --help\" has the rest."),
        noPlan.err().lines().toList());
  }
}
