package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.Series;
import meadcell.batch.TestBooks;
import meadcell.batch.book.Packages;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Damaged workbooks end in a sentence and an exit code, and stay as they are. {@code -Dfuzz.count}
 * sets how many.
 */
class FuzzTest {
  private static final Path SAMPLES = Path.of("../../sample-workbooks");
  private static final int COUNT = Integer.getInteger("fuzz.count", Series.count(480, 8));
  private static final long SEED = Long.getLong("fuzz.seed", 20261125);
  private static final Duration LONGEST = Duration.ofSeconds(60); // ten, and a busy machine
  private static final Set<Integer> CODES =
      Set.of(
          ExitCode.OK,
          ExitCode.SOME_FAILED,
          ExitCode.REFUSED,
          ExitCode.CHECK_FAILED,
          ExitCode.LEFT);

  /** What only a programmer understands. */
  private static final Pattern UNCLEAR =
      Pattern.compile(
          "fault in this tool|\\tat |Exception|\\bnull\\b|java\\.|org\\.apache|out of bounds"
              + "|Index \\d|Cannot invoke|For input string|class \\w+\\.");

  private record Original(String name, byte[] bytes, Path plan) {}

  @TempDir Path folder;
  private Path healthy;
  private final List<Original> originals = new ArrayList<>();
  private final List<String> failures = new ArrayList<>();
  private final Map<Integer, Integer> codes = new TreeMap<>();
  private long longest;
  private String slowest = "";

  @BeforeEach
  void originals() throws IOException {
    Path goldenPlan = Golden.plan(folder.resolve("plan.xlsx"));
    healthy = GoldenBooks.both().get(0).save(folder);
    Path samplePlan = SAMPLES.resolve("old-log-plan.xlsx");
    for (List<Golden> all : List.of(GoldenBooks.xlsx(), GoldenBooks.xls())) {
      for (Golden golden : all) {
        byte[] bytes = Files.readAllBytes(golden.save(folder));
        originals.add(new Original("log." + golden.ending, bytes, goldenPlan));
      }
    }
    for (String sample : List.of("old-log.xlsx", "first-week.ods", "old-log.xlsx")) {
      byte[] bytes = Files.readAllBytes(SAMPLES.resolve(sample));
      originals.add(new Original(sample.replaceFirst(".*\\.", "log."), bytes, samplePlan));
    }
    byte[] ods = Files.readAllBytes(SAMPLES.resolve("first-week.ods"));
    for (int i = 0; i < originals.size() / 4; i++) {
      originals.add(4 * i, new Original("log.ods", ods, samplePlan));
    }
  }

  private void ends(String what, Original original, byte[] bytes) throws IOException {
    Path file = folder.resolve(original.name);
    Files.write(file, bytes);
    Path out = Files.createTempDirectory(folder, "out");
    Path filled = out.resolve(file.getFileName());
    String plan = original.plan.toString();
    command(what, "fill", file.toString(), "--plan", plan, "--out", out.toString());
    command(what, "fill", file.toString(), healthy.toString(), "--plan", plan, "--dry-run");
    if (Files.exists(filled)) {
      Run again = command(what + ", filled", "check", filled.toString());
      if (again.code() == ExitCode.REFUSED) {
        failures.add(what + " was made worse: " + again.err());
      }
    }
    command(what, "recalc", file.toString(), "--force", "--out", out.toString());
    command(what, "check", file.toString());
    if (!Arrays.equals(bytes, Files.readAllBytes(file))) {
      failures.add(what + " was changed");
    }
  }

  private Run command(String what, String... command) {
    long start = System.nanoTime();
    Run run;
    try {
      run = assertTimeoutPreemptively(LONGEST, () -> Run.of(command));
    } catch (AssertionError | RuntimeException e) {
      failures.add(what + ", " + command[0] + ": " + e);
      return new Run(ExitCode.FAULT, "", "");
    }
    long duration = System.nanoTime() - start;
    if (duration > longest) {
      longest = duration;
      slowest = what + ", " + command[0];
    }
    codes.merge(run.code(), 1, Integer::sum);
    boolean isSaid = run.code() == ExitCode.OK || !(run.err() + run.out()).isBlank();
    if (!CODES.contains(run.code()) || !isSaid || UNCLEAR.matcher(run.err()).find()) {
      failures.add(what + ", " + command[0] + ": " + run.code() + " " + run.err().strip());
    }
    return run;
  }

  private void noFailures() {
    System.out.printf(
        "Damaged workbooks: exit codes %s; at most %d ms (%s)%n",
        codes, TimeUnit.NANOSECONDS.toMillis(longest), slowest);
    assertEquals("", String.join("\n", failures));
  }

  @Test
  void damagedByChance() throws IOException {
    Mutation[] mutations = Mutation.values();
    for (int i = 0; i < COUNT; i++) {
      Random chance = new Random(SEED + i);
      Mutation mutation = mutations[i % mutations.length];
      Original original = originals.get(chance.nextInt(originals.size()));
      byte[] damaged = mutation.of(original.bytes, chance);
      ends(i + " " + mutation + " " + original.name, original, damaged);
    }
    noFailures();
  }

  @Test
  void notWhatTheNameSays() throws IOException {
    List<Original> kinds =
        List.of(originals.get(0), originals.get(1), originals.get(originals.size() - 4));
    for (Original name : kinds) {
      ends("nothing as " + name.name, name, new byte[0]);
      byte[] text = "Date;SG\n1;1.085\n".getBytes(StandardCharsets.UTF_8);
      ends("text as " + name.name, name, text);
      for (Original other : kinds) {
        ends(other.name + " as " + name.name, name, other.bytes);
      }
    }
    noFailures();
  }

  @Test
  void bombs() throws IOException {
    Original log = originals.get(1);
    Original ods = originals.get(0);
    byte[] blanks = new byte[200 << 20];
    Arrays.fill(blanks, (byte) ' ');
    Map<String, byte[]> parts = Packages.parts(log.bytes);
    parts.put("xl/styles.xml", blanks);
    ends("a bomb", log, Packages.zip(parts));
    Map<String, byte[]> many = Packages.parts(log.bytes);
    for (int i = 0; i < 1001; i++) {
      many.put("xl/media/image" + i + ".png", new byte[1]);
    }
    ends("a thousand parts", log, Packages.zip(many));
    String huge = "table:number-$1-repeated=\"2000000000\"";
    Map<String, byte[]> odsParts = Packages.parts(ods.bytes);
    String content = Parts.text(odsParts.get("content.xml"));
    odsParts.put(
        "content.xml",
        content
            .replaceAll("table:number-(columns|rows)-repeated=\"[0-9]+\"", huge)
            .getBytes(StandardCharsets.UTF_8));
    ends("repeated endlessly", ods, Packages.zip(odsParts));
    noFailures();
  }

  @Test
  void dimensions() throws IOException {
    Original log = originals.get(1);
    Path file = folder.resolve("large.xlsx");
    String[] rows = {
      "<row r=\"1048576\"><c r=\"XFD1048576\"><v>1</v></c></row>",
      "<row r=\"1048577\"><c r=\"A1048577\"><v>1</v></c></row>",
      "<row r=\"9\"><c r=\"H9\"><f t=\"array\" ref=\"H9:XFD1048576\">D5:D7*2</f><v>1</v></c></row>",
      "<row r=\"9\"><c r=\"H9\"><f>SUM(A:XFD)</f><v>1</v></c></row>",
      "<row r=\"9\"><c r=\"H9\"><f t=\"shared\" ref=\"H9:XFD1048576\" si=\"0\">D5</f></c></row>",
      "<row r=\"9\"><c r=\"H9\"><f>" + "(".repeat(9000) + "D5" + ")".repeat(9000) + "</f></c></row>"
    };
    for (String row : rows) {
      Files.write(file, log.bytes);
      Parts parts = new Parts(file);
      parts.addRows(Parts.LOG, row);
      parts.save(file);
      ends(row.substring(0, 50), log, Files.readAllBytes(file));
    }
    Files.write(file, log.bytes);
    Parts merged = new Parts(file);
    merged.replace(
        Parts.LOG,
        "</sheetData>",
        "</sheetData><mergeCells count=\"1\"><mergeCell ref=\"A9:XFD1048576\"/></mergeCells>");
    merged.save(file);
    ends("all merged", log, Files.readAllBytes(file));
    noFailures();
  }

  @Test
  void manySheets() throws IOException {
    Path file = folder.resolve("sheets.xlsx");
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      for (int i = 0; i < 900; i++) {
        book.createSheet("sheet " + i).createRow(0).createCell(0).setCellValue("SG");
      }
      TestBooks.save(book, file);
    }
    ends("many sheets", originals.get(1), Files.readAllBytes(file));
    noFailures();
  }
}
