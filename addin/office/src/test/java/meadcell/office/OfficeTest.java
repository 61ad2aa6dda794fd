package meadcell.office;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OfficeTest {
  @TempDir Path folder;

  private static Set<Path> leftovers() throws IOException {
    try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
      return files
          .filter(file -> file.getFileName().toString().startsWith("meadcell-recalculation"))
          .collect(Collectors.toSet());
    }
  }

  @Test
  void aWorkbookComesBackComputedInTheFormatAskedFor() throws Exception {
    byte[] sum =
        """
        <?xml version="1.0"?>
        <Workbook xmlns="urn:schemas-microsoft-com:office:spreadsheet"
          xmlns:ss="urn:schemas-microsoft-com:office:spreadsheet">
          <Worksheet ss:Name="log"><Table><Row>
            <Cell><Data ss:Type="Number">40</Data></Cell>
            <Cell ss:Formula="=RC[-1]+2"><Data ss:Type="Number">7</Data></Cell>
          </Row></Table></Worksheet>
        </Workbook>
        """
            .getBytes(StandardCharsets.UTF_8);
    Set<Path> before = leftovers();
    try (Office office = new Office("soffice")) {
      String csv = new String(office.recalculated(sum, "xml", "csv"), StandardCharsets.UTF_8);
      assertEquals("40,42", csv.strip());
      assertFalse(before.equals(leftovers()), "at work");
    }
    assertEquals(before, leftovers());
  }

  @Test
  void anOfficeThatHangsIsEndedWithAllItBegan() throws IOException {
    Path program = Files.writeString(folder.resolve("hangs"), "#!/bin/sh\nsleep 4321 & wait\n");
    Files.setPosixFilePermissions(program, PosixFilePermissions.fromString("rwx------"));
    Set<Path> before = leftovers();
    try (Office office = new Office(program.toString(), 1)) {
      Office.Failed failed =
          assertThrows(Office.Failed.class, () -> office.recalculated(new byte[0], "xls", "xlsx"));
      assertEquals("LibreOffice did not finish within 1 seconds.", failed.getMessage());
    }
    assertEquals(before, leftovers());
    assertTrue(
        ProcessHandle.allProcesses()
            .noneMatch(process -> process.info().commandLine().orElse("").contains("sleep 4321")));
  }
}
