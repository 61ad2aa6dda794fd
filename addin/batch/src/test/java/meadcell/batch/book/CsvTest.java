package meadcell.batch.book;

import static meadcell.batch.TestBooks.cell;
import static meadcell.batch.TestBooks.open;
import static meadcell.batch.TestBooks.row;
import static meadcell.batch.TestBooks.rows;
import static meadcell.batch.TestBooks.save;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.zip.ZipFile;
import meadcell.batch.ExitCode;
import meadcell.batch.Run;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CsvTest {
  @TempDir Path folder;
  private Path plan;

  @BeforeEach
  void plan() throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      rows(
          book.createSheet("Fill"),
          0,
          row("Sheet", "Result", "Formula"),
          row("*", "True SG", "GRAVITY.CORRECT([SG]; [Temp])"));
      plan = save(book, folder.resolve("plan.xlsx"));
    }
  }

  private Run fill(Path... logs) {
    String[] command = new String[logs.length + 5];
    command[0] = "fill";
    for (int i = 0; i < logs.length; i++) {
      command[i + 1] = logs[i].toString();
    }
    command[logs.length + 1] = "--plan";
    command[logs.length + 2] = plan.toString();
    command[logs.length + 3] = "--out";
    command[logs.length + 4] = folder.resolve("out").toString();
    return Run.of(command);
  }

  private Workbook filled(String text, Charset charset) throws IOException {
    Path log = Files.write(folder.resolve("log.csv"), text.getBytes(charset));
    byte[] before = Files.readAllBytes(log);
    Run run = fill(log);
    assertEquals(ExitCode.OK, run.code(), run.out() + run.err());
    assertArrayEquals(before, Files.readAllBytes(log));
    return open(folder.resolve("out/log.xlsx"));
  }

  @Test
  void equalTextsGiveEqualBytesWhateverTheTimeOfDay() throws IOException {
    filled("SG,Temp\n1.080,20\n", StandardCharsets.UTF_8).close();
    try (ZipFile zip = new ZipFile(folder.resolve("out/log.xlsx").toFile())) {
      Set<Integer> years =
          zip.stream()
              .map(entry -> entry.getTimeLocal().getYear())
              .collect(Collectors.toCollection(TreeSet::new));
      assertEquals(Set.of(1980), years);
    }
  }

  @Test
  void isReadAndWrittenAsAWorkbook() throws IOException {
    Workbook filled =
        filled(
            "Date,SG,Temp,Note\n2024-10-01,1.080,20,\"a, b\"\n\n2024-10-05,1.050,20,007\n",
            StandardCharsets.UTF_8);
    assertEquals(1.08, cell(filled, "Log", "E2").getNumericCellValue(), 1e-12);
    assertEquals("GRAVITY.CORRECT(B4, C4)", cell(filled, "Log", "E4").getCellFormula());
    assertEquals(45566, cell(filled, "Log", "A2").getNumericCellValue());
    assertEquals("a, b", cell(filled, "Log", "D2").getStringCellValue());
    assertEquals("007", cell(filled, "Log", "D4").getStringCellValue());
    Run again = fill(folder.resolve("log.csv"));
    assertTrue(again.out().contains("as it was"), again.out());
  }

  /** Semicolons between, commas as decimal marks, and the letters of an older Windows. */
  @Test
  void asAGermanProgramWritesIt() throws IOException {
    Workbook filled =
        filled(
            "Datum;Dichte;Temp (°C)\n01.10.2024;1,080;20,0\n05.10.2024;1,050;20\n",
            Charset.forName("windows-1252"));
    assertEquals(45566, cell(filled, "Log", "A2").getNumericCellValue());
    assertEquals(1.08, cell(filled, "Log", "D2").getNumericCellValue(), 1e-12);
    assertEquals(CellType.FORMULA, cell(filled, "Log", "D3").getCellType());
  }

  /** 10/11/2024 is another day elsewhere, 1,080 another number. */
  @Test
  void whatMayMeanTwoThingsStaysAText() throws IOException {
    Workbook filled = filled("Date,SG,Temp\n10/11/2024,\"1,080\",20\n", StandardCharsets.UTF_8);
    assertEquals("10/11/2024", cell(filled, "Log", "A2").getStringCellValue());
    assertEquals("1,080", cell(filled, "Log", "B2").getStringCellValue());
  }

  @Test
  void equalNamesFromSeveralFoldersStayApart() throws IOException {
    for (String year : new String[] {"2023", "2024"}) {
      Files.createDirectories(folder.resolve(year));
      Files.writeString(folder.resolve(year + "/log.csv"), "SG,Temp\n1.05,20\n1.04,20\n");
    }
    Files.writeString(folder.resolve("other.csv"), "SG,Temp\n1.05,20\n1.04,20\n");
    Run run =
        fill(
            folder.resolve("2023/log.csv"),
            folder.resolve("2024/log.csv"),
            folder.resolve("other.csv"));
    assertEquals(ExitCode.OK, run.code(), run.out() + run.err());
    assertTrue(Files.exists(folder.resolve("out/2023/log.xlsx")));
    assertTrue(Files.exists(folder.resolve("out/2024/log.xlsx")));
    assertTrue(Files.exists(folder.resolve("out/other.xlsx")));
  }

  @Test
  void aWorkbookOfTheSameNameIsNotReplaced() throws IOException {
    Path log = Files.writeString(folder.resolve("log.csv"), "SG,Temp\n1.05,20\n1.04,20\n");
    Path other = Files.writeString(folder.resolve("log.xlsx"), "of a person");
    Run run = Run.of("fill", log.toString(), "--plan", plan.toString(), "--in-place");
    assertEquals(ExitCode.NOT_WRITTEN, run.code(), run.out());
    assertEquals("of a person", Files.readString(other));
    assertFalse(Files.exists(folder.resolve("log.xlsx.bak")));
  }

  @Test
  void aQuoteThatDoesNotCloseIsRefused() throws IOException {
    Path log = Files.writeString(folder.resolve("log.csv"), "SG,Temp\n\"1.05,20\n1.04,20\n");
    Run run = fill(log);
    assertEquals(ExitCode.REFUSED, run.code(), run.out());
    assertTrue(run.err().contains("its quotes do not close"), run.err());
  }
}
