package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.book.Packages;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that unpack to far more than their size are read on their owner's word only. */
class LargeFilesTest {
  private static final Path LOG = Path.of("../../sample-workbooks/old-log.xlsx");
  private static final String TYPES = "[Content_Types].xml";
  private static final String PICTURES = "<Default Extension=\"png\" ContentType=\"image/png\"/>";
  private static final String BLANKS = " ".repeat(8 << 20);

  @TempDir Path folder;

  private void isReadOnlyWhenTrusted(Map<String, byte[]> parts) throws IOException {
    Path file = Files.write(folder.resolve("log.xlsx"), Packages.zip(parts));
    Run run = Run.of("check", file.toString());
    assertEquals(ExitCode.REFUSED, run.code());
    assertTrue(run.err().contains("--trust-large-files"), run.err());
    assertEquals(
        ExitCode.CHECK_FAILED, Run.of("check", "--trust-large-files", file.toString()).code());
    assertEquals(ExitCode.REFUSED, Run.of("check", file.toString()).code());
  }

  private Map<String, byte[]> withBlanks(String part) throws IOException {
    Map<String, byte[]> parts = Packages.parts(Files.readAllBytes(LOG));
    String xml = new String(parts.get(part), StandardCharsets.UTF_8);
    parts.put(part, (xml + BLANKS).getBytes(StandardCharsets.UTF_8));
    return parts;
  }

  @Test
  void aSheet() throws IOException {
    isReadOnlyWhenTrusted(withBlanks("xl/worksheets/sheet2.xml"));
  }

  @Test
  void anotherPart() throws IOException {
    isReadOnlyWhenTrusted(withBlanks("xl/styles.xml"));
  }

  @Test
  void manyParts() throws IOException {
    Map<String, byte[]> parts = Packages.parts(Files.readAllBytes(LOG));
    String types = new String(parts.get(TYPES), StandardCharsets.UTF_8);
    String withPictures = types.replace("</Types>", PICTURES + "</Types>");
    parts.put(TYPES, withPictures.getBytes(StandardCharsets.UTF_8));
    for (int i = 0; i <= 1000; i++) {
      parts.put("xl/media/image" + i + ".png", new byte[1]);
    }
    isReadOnlyWhenTrusted(parts);
  }
}
