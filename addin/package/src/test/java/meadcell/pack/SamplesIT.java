package meadcell.pack;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.star.task.XJobExecutor;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import meadcell.batch.ExitCode;
import meadcell.calc.menu.Menu;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Both packages hand out the sample workbooks. */
class SamplesIT {
  private static final Path CHECKED_IN = Path.of("../../sample-workbooks");

  @TempDir Path folder;

  @Test
  void theJarWritesEverySampleAndNeverOverOne() throws Exception {
    assertEquals(ExitCode.OK, PackedTool.run("samples", folder.toString()).code());
    assertEquals(names(CHECKED_IN), names(folder));
    for (String name : names(folder)) {
      assertArrayEquals(
          Files.readAllBytes(CHECKED_IN.resolve(name)), Files.readAllBytes(folder.resolve(name)));
    }
    Files.writeString(folder.resolve("old-log.xlsx"), "mine");
    assertEquals(ExitCode.NOT_WRITTEN, PackedTool.run("samples", folder.toString()).code());
    assertEquals("mine", Files.readString(folder.resolve("old-log.xlsx")));
  }

  private static Set<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> name.matches(".*\\.(xlsx|ods)"))
          .collect(Collectors.toCollection(TreeSet::new));
    }
  }

  @Test
  void theMenuOpensUntitledCopiesWithTheCellarBookInFront() throws Exception {
    RemoteOffice office = TestOffice.get();
    office.service(XJobExecutor.class, Menu.SERVICE).trigger("sample");
    List<List<String>> samples = new ArrayList<>();
    for (Workbook book : office.openWorkbooks()) {
      assertEquals("", book.url(), "untitled");
      samples.add(book.sheets());
      book.close();
    }
    assertEquals(2, samples.size());
    assertTrue(samples.get(0).contains("This cask"), samples.toString());
    assertTrue(samples.get(1).contains("Triangle"), samples.toString());
  }
}
