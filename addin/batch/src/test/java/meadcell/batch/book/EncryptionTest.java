package meadcell.batch.book;

import static meadcell.batch.TestBooks.cell;
import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static meadcell.batch.TestBooks.save;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import meadcell.batch.book.xls.Records;
import meadcell.cellar.Cellar;
import org.apache.poi.hssf.record.crypto.Biff8EncryptionKey;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Workbooks behind a password. */
class EncryptionTest {
  private static final String PASSWORD = "heather & Kölsch";
  private static final double BRIX = (Double) Cellar.catalogue().get("GRAVITY.TOBRIX").call(1.05);

  @TempDir Path folder;
  private Path passwordFile;
  private Path planFile;

  @BeforeEach
  void files() throws IOException {
    passwordFile = Files.writeString(folder.resolve("password"), PASSWORD + "\nnot this\n");
    XSSFWorkbook plan = new XSSFWorkbook();
    rows(plan.createSheet("Fill"), 0, row("Sheet", "Result", "Formula"));
    rows(plan.getSheet("Fill"), 1, row("*", "Brix", "GRAVITY.TOBRIX([SG])"));
    planFile = save(plan, folder.resolve("plan.xlsx"));
  }

  private static <W extends Workbook> W log(W book) {
    rows(book.createSheet("log"), 0, row("SG", "Note"), row(1.05, "a"));
    return book;
  }

  private Path xlsx(EncryptionMode mode, String password) throws Exception {
    ByteArrayOutputStream clear = new ByteArrayOutputStream();
    log(new XSSFWorkbook()).write(clear);
    Encryptor encryptor = new EncryptionInfo(mode).getEncryptor();
    encryptor.confirmPassword(password);
    Path file = folder.resolve("log.xlsx");
    try (POIFSFileSystem container = new POIFSFileSystem();
        OutputStream out = Files.newOutputStream(file)) {
      try (OutputStream data = encryptor.getDataStream(container)) {
        clear.writeTo(data);
      }
      container.writeFilesystem(out);
    }
    return file;
  }

  private Path xls(EncryptionMode mode) throws IOException {
    HSSFWorkbook book = log(new HSSFWorkbook());
    try {
      Biff8EncryptionKey.setCurrentUserPassword(PASSWORD);
      book.setEncryptionMode(mode);
      return save(book, folder.resolve("log.xls"));
    } finally {
      Biff8EncryptionKey.setCurrentUserPassword(null);
    }
  }

  private Run fill(Path file, String... more) {
    String[] args = {"fill", file.toString(), "--plan", planFile.toString()};
    return Run.of(Stream.of(args, more).flatMap(Stream::of).toArray(String[]::new));
  }

  private Run fillInPlace(Path file) {
    return fill(file, "--password-file", passwordFile.toString(), "--in-place");
  }

  /** Fills, and fills again: encrypted as before, the second time left as it is. */
  private void staysProtected(Path file) throws IOException {
    Set<String> temporary = temporaryFiles();
    Run refused = fill(file, "--in-place");
    assertEquals(ExitCode.REFUSED, refused.code());
    assertTrue(refused.err().contains("--password-file FILE opens it"), refused.err());
    Run run = fillInPlace(file);
    assertEquals(ExitCode.OK, run.code(), run.err());
    byte[] once = Files.readAllBytes(file);
    try (Workbook after = WorkbookFactory.create(new ByteArrayInputStream(once), PASSWORD)) {
      assertEquals(BRIX, cell(after, "log", "C2").getNumericCellValue());
    }
    Run again = fillInPlace(file);
    assertTrue(again.out().contains("no change"), again.out() + again.err());
    assertArrayEquals(once, Files.readAllBytes(file));
    // from the old content to the new, encrypted with other salt than what is there already
    Path filled = Files.createDirectory(folder.resolve("out")).resolve(file.getFileName());
    Files.move(file, filled);
    Files.move(file.resolveSibling(file.getFileName() + ".bak"), file);
    Run same =
        fill(
            file,
            "--password-file",
            passwordFile.toString(),
            "--out",
            filled.getParent().toString());
    assertTrue(same.out().contains("(as it was)"), same.out() + same.err());
    assertArrayEquals(once, Files.readAllBytes(filled));
    assertEquals(temporary, temporaryFiles());
    assertTrue(
        Run.of("check", file.toString(), "--password-file", passwordFile.toString())
            .out()
            .contains("nothing to look at"));
  }

  private static Set<String> temporaryFiles() throws IOException {
    Path poi = Path.of(System.getProperty("java.io.tmpdir"), "poifiles");
    if (!Files.exists(poi)) {
      return Set.of();
    }
    try (Stream<Path> files = Files.list(poi)) {
      return files.map(Path::toString).collect(Collectors.toSet());
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"agile", "standard"})
  void xlsx(EncryptionMode mode) throws Exception {
    Path file = xlsx(mode, PASSWORD);
    staysProtected(file);
    try (POIFSFileSystem after = new POIFSFileSystem(file.toFile(), true)) {
      assertEquals(mode, new EncryptionInfo(after).getEncryptionMode());
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"binaryRC4", "cryptoAPI", "xor"})
  void oldFormat(EncryptionMode mode) throws Exception {
    Path file = xls(mode);
    staysProtected(file);
    fillInPlace(file);
    try {
      Biff8EncryptionKey.setCurrentUserPassword(PASSWORD);
      try (HSSFWorkbook after = new HSSFWorkbook(Files.newInputStream(file))) {
        assertEquals(mode, after.getEncryptionMode());
        assertEquals(BRIX, cell(after, "log", "C2").getNumericCellValue());
      }
    } finally {
      Biff8EncryptionKey.setCurrentUserPassword(null);
    }
  }

  private static byte[] stream(byte[] file) throws IOException {
    try (POIFSFileSystem container = new POIFSFileSystem(new ByteArrayInputStream(file));
        var in = container.getRoot().createDocumentInputStream("Workbook")) {
      return in.readAllBytes();
    }
  }

  /** Rewritten by nobody: what POI makes of a workbook is not what stands in it. */
  @ParameterizedTest
  @EnumSource(names = {"binaryRC4", "cryptoAPI", "xor"})
  void recordsOfTheOldFormatAreDecryptedAsTheyStand(EncryptionMode mode) throws Exception {
    byte[] plain = stream(Files.readAllBytes(save(log(new HSSFWorkbook()), folder.resolve("p"))));
    byte[] clear = stream(Encryption.open(Files.readAllBytes(xls(mode)), PASSWORD).clear());
    assertArrayEquals(plain, clear);
  }

  /** Held against the original like one without a password: charts stay, and notes give way. */
  @ParameterizedTest
  @EnumSource(names = {"binaryRC4", "cryptoAPI", "xor"})
  void chartsOfTheOldFormatStay(EncryptionMode mode) throws Exception {
    HSSFWorkbook book = log(new HSSFWorkbook());
    rows(book.getSheet("log"), 0, row("SG", "Note"), row("1,05 sg", "a"));
    Path file = save(book, folder.resolve("log.xls"));
    Records.edit(file, Records::addChart);
    try (HSSFWorkbook again = new HSSFWorkbook(Files.newInputStream(file))) {
      Biff8EncryptionKey.setCurrentUserPassword(PASSWORD);
      again.setEncryptionMode(mode);
      save(again, file);
    } finally {
      Biff8EncryptionKey.setCurrentUserPassword(null);
    }
    byte[] before = Files.readAllBytes(file);
    long parts = Records.count(file, Records.BEGIN);
    assertEquals(3, parts);
    Run run = fillInPlace(file);
    if (mode == EncryptionMode.xor) { // POI does not encrypt the records of charts as they were
      assertEquals(ExitCode.REFUSED, run.code());
      assertTrue(run.err().contains("without the password, and use that"), run.err());
      assertArrayEquals(before, Files.readAllBytes(file));
      return;
    }
    assertEquals(ExitCode.OK, run.code(), run.err());
    assertTrue(run.err().contains("would lose its charts"), run.err());
    assertEquals(parts, Records.count(file, Records.BEGIN));
  }

  @Test
  void wrongPasswordsAndPasswordFilesAreRefused() throws Exception {
    Path file = xlsx(EncryptionMode.agile, "another");
    byte[] before = Files.readAllBytes(file);
    Run wrong = fillInPlace(file);
    assertEquals(ExitCode.REFUSED, wrong.code());
    assertTrue(wrong.err().contains("another password than the one given"), wrong.err());
    assertArrayEquals(before, Files.readAllBytes(file));
    Run empty =
        fill(
            file,
            "--in-place",
            "--password-file",
            Files.createFile(folder.resolve("e")).toString());
    assertEquals(ExitCode.USAGE, empty.code());
    Run missing = fill(file, "--in-place", "--password-file", folder.resolve("none").toString());
    assertEquals(ExitCode.USAGE, missing.code());
    assertTrue(missing.err().contains("cannot be read"), missing.err());
  }

  @Test
  void othersOfTheSameRunStayInTheClear() throws Exception {
    Path file = save(log(new HSSFWorkbook()), folder.resolve("clear.xls"));
    assertEquals(ExitCode.OK, fillInPlace(file).code());
    assertFalse(Encryption.open(Files.readAllBytes(file), null).isEncrypted());
  }

  @Test
  void theProgramsOwnPasswordIsNotAskedFor() throws Exception {
    Path file = xlsx(EncryptionMode.agile, "VelvetSweatshop");
    assertEquals(ExitCode.OK, fill(file, "--in-place").code());
    assertTrue(Encryption.open(Files.readAllBytes(file), null).isEncrypted());
  }

  @Test
  void openDocumentsWithAPasswordAreRefused() throws IOException {
    Path file = folder.resolve("log.ods");
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      zip.putNextEntry(new ZipEntry("META-INF/manifest.xml"));
      zip.write("<manifest:encryption-data/>".getBytes(StandardCharsets.UTF_8));
    }
    Run run = fillInPlace(file);
    assertEquals(ExitCode.REFUSED, run.code());
    assertTrue(run.err().contains("save it without one first"), run.err());
  }

  @Test
  void noCopyForTheOffice() throws Exception {
    XSSFWorkbook book = log(new XSSFWorkbook());
    rows(book.getSheet("log"), 0, row("SG", "Note", null, "=SKEW(C2:C4)"));
    ByteArrayOutputStream clear = new ByteArrayOutputStream();
    book.write(clear);
    Path file = xlsx(EncryptionMode.agile, PASSWORD);
    Encryption source = Encryption.open(Files.readAllBytes(file), PASSWORD);
    Files.write(file, source.sealed(clear.toByteArray()));
    Run run =
        fill(
            file,
            "--in-place",
            "--with-office=no-such-office",
            "--password-file",
            passwordFile.toString());
    assertEquals(ExitCode.OK, run.code());
    assertTrue(run.err().contains("LibreOffice gets no copy of it"), run.err());
    assertFalse(run.err().contains("no-such-office"), run.err());
  }

  @Test
  void damagedProtectionIsRefused() throws Exception {
    byte[] bytes = Files.readAllBytes(xlsx(EncryptionMode.agile, PASSWORD));
    Path file = folder.resolve("short.xlsx");
    Files.write(file, java.util.Arrays.copyOf(bytes, 2000));
    Run run = fillInPlace(file);
    assertEquals(ExitCode.REFUSED, run.code());
    assertTrue(run.err().contains("damaged"), run.err());
  }
}
