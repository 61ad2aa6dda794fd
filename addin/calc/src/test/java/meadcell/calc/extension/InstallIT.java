package meadcell.calc.extension;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import meadcell.catalogue.Catalogue;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.TestOffice;
import meadcell.office.uno.Workbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A second version, to which a family was added by nothing but its class and its line in the list
 * of families, installs over the first; removed, it leaves sheets with their numbers.
 */
class InstallIT {
  private static final String CALL = "=GRAVITY.TOBRIX(1.05)";
  private static final String ADDED = "=PROVING.HALF(84)";

  private static final String CHECKS = "meadcell/check/proving.tsv";

  private static final int COLUMNS = 7;

  @TempDir Path folder;

  @Test
  void aSecondVersionReplacesTheFirstAndLeavesNumbersBehind() throws Exception {
    try (RemoteOffice office = new RemoteOffice()) {
      office.install(TestOffice.extension());
      office.install(secondVersion());
      office.start();
      Path xlsx = office.home().resolve("kept.xlsx");
      try (Workbook book = office.newWorkbook()) {
        book.type(0, ADDED, CALL);
        assertEquals(42.0, book.cell("A1").getValue());
        assertTrue(book.cell("A2").getValue() > 0);
        columnsComeInOneCall(book);
        book.store(xlsx, "Calc MS Excel 2007 XML");
      }
      office.stop();
      office.remove("meadcell.calc");
      office.recalculateNever();
      office.start();
      try (Workbook book = office.open(xlsx.toUri().toString(), true)) {
        assertEquals("42", book.shown("A1"));
        assertEquals(ADDED, book.cell("A1").getFormula().toUpperCase(Locale.ROOT));
      }
    }
  }

  /**
   * However many columns a variable number of arguments takes, and in whichever place they stand.
   */
  private static void columnsComeInOneCall(Workbook book) {
    List<String> columns = new ArrayList<>();
    for (int count = 1; count <= COLUMNS; count++) {
      columns.add("D1:D100");
      book.typeArray("C1:C100", "=PROVING.CALLS()");
      double before = (Double) book.values("C1:C1")[0][0];
      book.typeArray("C1:C100", "=PROVING.CALLS(" + String.join(";", columns) + ")");
      assertEquals(before + 1, book.values("C1:C100")[99][0], count + " columns");
      book.clear("C1:C100");
    }
  }

  private Path secondVersion() throws Exception {
    Path first = TestOffice.extension().resolveSibling("extension");
    Path fixed = folder.resolve("fixed");
    try (Stream<Path> files = Files.walk(first)) {
      for (Path file : files.toList()) {
        Files.copy(file, fixed.resolve(first.relativize(file).toString()));
      }
    }
    Path description = fixed.resolve("description.xml");
    String text = Files.readString(description);
    assertTrue(text.contains("<version value=\"1."), "a version to count up");
    Files.writeString(description, text.replace("<version value=\"1.", "<version value=\"2."));

    Path family = Files.write(folder.resolve("proving.jar"), familyJar());
    List<Path> libraries = new ArrayList<>(Extension.libraries());
    libraries.add(family);
    Path target = folder.resolve("meadcell-second.oxt");
    try (URLClassLoader loader =
        new URLClassLoader(new URL[] {family.toUri().toURL()}, InstallIT.class.getClassLoader())) {
      Files.write(
          target,
          new Extension(loader, libraries, folder).archive(fixed, PackageIT.SOURCES).bytes());
    }
    return target;
  }

  private static byte[] familyJar() throws Exception {
    String type = Proving.class.getName().replace('.', '/') + ".class";
    return new Archive()
        .add(type, Proving.class.getClassLoader().getResourceAsStream(type).readAllBytes())
        .add(Catalogue.FAMILIES, Proving.class.getName().getBytes(StandardCharsets.UTF_8))
        .add(CHECKS, Proving.class.getResourceAsStream("/" + CHECKS).readAllBytes())
        .bytes();
  }
}
