package meadcell.batch.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.TestBooks;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class FileTroubleTest {
  @TempDir Path folder;
  private String log;
  private String missing;

  @BeforeEach
  void writeLog() throws IOException {
    XSSFWorkbook book = new XSSFWorkbook();
    book.createSheet("log");
    log = TestBooks.save(book, folder.resolve("log.xlsx")).toString();
    missing = folder.resolve("missing.xlsx").toString();
  }

  private static void says(int code, String sentence, String... args) {
    Run run = Run.of(args);
    assertEquals(code, run.code(), run.err());
    assertTrue(run.err().contains(sentence), run.err());
    assertFalse(run.err().contains("Exception"), run.err());
  }

  @Test
  void whatIsNotThereIsNamed() {
    String sentence = "There is no such file: " + missing;
    says(ExitCode.REFUSED, sentence, "check", missing);
    says(ExitCode.REFUSED, sentence, "recalc", "--dry-run", missing);
    says(ExitCode.REFUSED, sentence, "fill", "--dry-run", log, "--plan", missing);
    says(ExitCode.USAGE, sentence, "check", log, "--password-file", missing);
  }

  @Test
  void foldersAndFilesAreNotConfused() {
    String in = folder.toString();
    String folderForFile = in + " is a folder; name the workbooks in it.";
    says(ExitCode.REFUSED, folderForFile, "check", in);
    says(ExitCode.REFUSED, folderForFile, "recalc", "--dry-run", in);
    says(ExitCode.REFUSED, folderForFile, "fill", "--dry-run", log, "--plan", in);
    says(
        ExitCode.USAGE,
        in + " is a folder where a file is due; name a file.",
        "check",
        log,
        "--password-file",
        in);
    String fileForFolder = log + " is a file, not a folder; choose a folder.";
    says(ExitCode.NOT_WRITTEN, fileForFolder, "recalc", log, "--out", log);
    says(ExitCode.NOT_WRITTEN, fileForFolder, "samples", log + "/samples");
    says(
        ExitCode.NOT_WRITTEN,
        "The report was not written. " + in + " is a folder where a file is due",
        "check",
        log,
        "--report",
        in);
  }

  @Test
  void aFolderWithoutPermissionIsNamedAndNotTheTemporaryFile() {
    assertEquals(
        "You have no permission for the folder " + folder + "; choose another.",
        FileTrouble.sentence(
            new AccessDeniedException(folder.resolve(".meadcell-398.tmp").toString())));
    assertEquals(
        "You have no permission for the file " + log + "; have it changed.",
        FileTrouble.sentence(new AccessDeniedException(log)));
    assertEquals(
        folder + ": Read-only file system",
        FileTrouble.sentence(
            new FileSystemException(
                folder.resolve(".meadcell-398.tmp").toString(), null, "Read-only file system")));
  }

  @Test
  void whatIsNoTextIsSaid() throws IOException {
    Path password = Files.write(folder.resolve("password"), new byte[] {(byte) 0xe4, '\n'});
    says(ExitCode.USAGE, "no text in UTF-8", "check", log, "--password-file", password.toString());
    assertTrue(FileTrouble.sentence(new MalformedInputException(1)).contains("UTF-8"));
  }

  /** As cron jobs run: where the locale knows only ASCII, Java can make no path of an umlaut. */
  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aNameWithAnUmlautWhereTheLocaleHasNone() throws Exception {
    Path file = Files.move(Path.of(log), folder.resolve("Fass Köln.xlsx"));
    ProcessBuilder tool =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            "meadcell.batch.Main",
            "check",
            file.toString());
    tool.environment().put("LC_ALL", "C");
    Process run = tool.redirectErrorStream(true).start();
    String said = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(said.contains("set LC_ALL=C.UTF-8"), said);
    assertFalse(said.contains("java.nio"), said);
    assertEquals(ExitCode.USAGE, run.waitFor());
  }
}
