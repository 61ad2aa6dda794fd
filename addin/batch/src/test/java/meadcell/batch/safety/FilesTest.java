package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The file itself: links, protection, owners, and what a workbook may make the tool open. */
@DisabledOnOs(OS.WINDOWS)
class FilesTest {
  @TempDir Path folder;
  private Scene scene;

  @BeforeEach
  void scene() {
    scene = new Scene(folder);
  }

  private boolean isFilled(Path file) throws IOException {
    return Scene.part(file, Parts.LOG).contains("GRAVITY.CORRECT");
  }

  @Test
  void aSymbolicLinkStaysAndTheLogItselfIsFilled() throws Exception {
    Path real = Files.createDirectory(folder.resolve("logs")).resolve("real.xlsx");
    Files.move(scene.xlsx(parts -> {}), real);
    Path link = Files.createSymbolicLink(folder.resolve("log.xlsx"), real);
    Run run = scene.fill(link, "--in-place");
    assertEquals(ExitCode.OK, run.code(), run.err());
    assertTrue(Files.isSymbolicLink(link));
    assertTrue(isFilled(real));
    assertTrue(Files.exists(real.resolveSibling("real.xlsx.bak")));
    Path out = Files.createDirectory(folder.resolve("out"));
    Path before = Files.copy(real, folder.resolve("before.xlsx"));
    Files.createSymbolicLink(out.resolve("before.xlsx"), real);
    scene.plan("Brix", "GRAVITY.TOBRIX([SG])");
    assertEquals(ExitCode.OK, scene.fill(before, "--out", out.toString(), "--force").code());
    assertTrue(Scene.part(real, Parts.LOG).contains("GRAVITY.TOBRIX"));
    assertTrue(Files.isSymbolicLink(out.resolve("before.xlsx")));
  }

  private void isLeft(Path file, String why) throws Exception {
    byte[] before = Files.readAllBytes(file);
    Run run = scene.fill(file, "--in-place");
    assertEquals(ExitCode.REFUSED, run.code(), run.out());
    assertTrue(run.err().contains(why), run.err());
    assertTrue(run.err().contains("--out DIR"), run.err());
    assertArrayEquals(before, Files.readAllBytes(file));
    try (var files = Files.list(folder)) {
      assertFalse(files.anyMatch(path -> path.toString().endsWith(".bak")));
    }
  }

  @Test
  void aWriteProtectedLogIsLeft() throws Exception {
    Path file = scene.xlsx(parts -> {});
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
    isLeft(file, "is write-protected");
    assertTrue(isFilled(scene.filled(file)));
  }

  @Test
  void aLogWithASecondNameIsLeft() throws Exception {
    Path file = scene.xlsx(parts -> {});
    Files.createLink(folder.resolve("second.xlsx"), file);
    isLeft(file, "second name");
  }

  @Test
  void ownerAndPermissionsStay() throws Exception {
    Path file = scene.xlsx(parts -> {});
    assumeTrue(Files.getOwner(folder).getName().equals("root"), "only root can give files away");
    Files.setAttribute(file, "unix:uid", 65534);
    Files.setAttribute(file, "unix:gid", 65534);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw-r--"));
    Run run = scene.fill(file, "--in-place");
    assertEquals(ExitCode.OK, run.code(), run.err());
    assertTrue(isFilled(file));
    assertEquals(65534, Files.getAttribute(file, "unix:uid"));
    assertEquals(65534, Files.getAttribute(file, "unix:gid"));
    assertEquals("rw-rw-r--", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    assertEquals(65534, Files.getAttribute(folder.resolve("log.xlsx.bak"), "unix:uid"));
  }
}
