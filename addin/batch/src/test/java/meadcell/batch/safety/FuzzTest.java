package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.book.Packages;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Damaged workbooks end in a sentence and an exit code, and stay as they are. {@code -Dfuzz.count}
 * sets how many of each kind.
 */
class FuzzTest {
  private static final Path SAMPLES = Path.of("../../sample-workbooks");
  private static final int COUNT = Integer.getInteger("fuzz.count", 15);
  private static final Duration LONGEST = Duration.ofSeconds(60); // ten, and a busy machine

  @TempDir Path folder;
  private final Random chance = new Random(20261125);
  private final List<byte[]> originals = new ArrayList<>();
  private final List<String> names = List.of("log.xlsx", "log.ods", "log.xls");

  @BeforeEach
  void originals() throws IOException {
    originals.add(Files.readAllBytes(SAMPLES.resolve("old-log.xlsx")));
    originals.add(Files.readAllBytes(SAMPLES.resolve("first-week.ods")));
    var old = new HSSFWorkbook();
    old.createSheet("log").createRow(0).createCell(0).setCellValue("SG");
    Path file = meadcell.batch.TestBooks.save(old, folder.resolve("old.xls"));
    originals.add(Files.readAllBytes(file));
  }

  private interface Mutation {
    byte[] apply(byte[] original) throws IOException;
  }

  private void everyKind(Mutation mutation) throws IOException {
    for (int i = 0; i < COUNT; i++) {
      int kind = i % originals.size();
      ends(names.get(kind), mutation.apply(originals.get(kind)));
    }
  }

  private void ends(String name, byte[] bytes) throws IOException {
    Path file = folder.resolve(name);
    Files.write(file, bytes);
    Path out = Files.createTempDirectory(folder, "out");
    String plan = SAMPLES.resolve("old-log-plan.xlsx").toString();
    for (String[] command :
        new String[][] {
          {"fill", file.toString(), "--plan", plan, "--out", out.toString()},
          {"recalc", file.toString(), "--force", "--out", out.toString()},
          {"check", file.toString()}
        }) {
      Run run = assertTimeoutPreemptively(LONGEST, () -> Run.of(command));
      assertTrue(run.code() != ExitCode.FAULT && run.code() != ExitCode.USAGE, run.err());
      boolean said = run.code() == ExitCode.OK || !(run.err() + run.out()).isBlank();
      assertTrue(said, "no word about " + name);
      assertFalse(run.err().contains("\tat "), run.err());
      assertArrayEquals(bytes, Files.readAllBytes(file));
    }
  }

  @Test
  void truncated() throws IOException {
    everyKind(bytes -> java.util.Arrays.copyOf(bytes, chance.nextInt(bytes.length)));
  }

  @Test
  void flippedBits() throws IOException {
    everyKind(
        original -> {
          byte[] bytes = original.clone();
          for (int i = 0; i <= chance.nextInt(20); i++) {
            bytes[chance.nextInt(bytes.length)] ^= (byte) (1 << chance.nextInt(8));
          }
          return bytes;
        });
  }

  @Test
  void damagedInside() throws IOException {
    for (int i = 0; i < COUNT; i++) {
      int kind = i % 2;
      Map<String, byte[]> parts = Packages.parts(originals.get(kind));
      List<String> all = new ArrayList<>(parts.keySet());
      String victim = all.get(chance.nextInt(all.size()));
      byte[] part = parts.get(victim).clone();
      for (int b = 0; b < 5 && part.length > 0; b++) {
        part[chance.nextInt(part.length)] = (byte) chance.nextInt(256);
      }
      parts.put(victim, part);
      if (i % 5 == 0) {
        parts.remove(victim);
      }
      ends(names.get(kind), Packages.zip(parts));
    }
  }

  @Test
  void notWhatTheNameSays() throws IOException {
    for (String name : names) {
      ends(name, new byte[0]);
      ends(name, "Date;SG\n1;1.085\n".getBytes(java.nio.charset.StandardCharsets.UTF_8));
      for (byte[] other : originals) {
        ends(name, other);
      }
    }
  }

  @Test
  void bombs() throws IOException {
    byte[] blanks = new byte[200 << 20];
    java.util.Arrays.fill(blanks, (byte) ' ');
    Map<String, byte[]> parts = Packages.parts(originals.get(0));
    parts.put("xl/styles.xml", blanks);
    ends("log.xlsx", Packages.zip(parts));
    Map<String, byte[]> many = Packages.parts(originals.get(0));
    for (int i = 0; i < 1001; i++) {
      many.put("xl/media/image" + i + ".png", new byte[1]);
    }
    ends("log.xlsx", Packages.zip(many));
    String huge = "table:number-columns-repeated=\"2000000000\"";
    Map<String, byte[]> ods = Packages.parts(originals.get(1));
    String content = new String(ods.get("content.xml"), java.nio.charset.StandardCharsets.UTF_8);
    ods.put(
        "content.xml",
        content
            .replaceAll("table:number-(columns|rows)-repeated=\"[0-9]+\"", huge)
            .getBytes(java.nio.charset.StandardCharsets.UTF_8));
    ends("log.ods", Packages.zip(ods));
  }
}
