package meadcell.samples;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A workbook as OpenDocument, computed and stored by an office with the extension. */
final class OpenDocument {
  /** What the office writes anew each time: dates and durations; and its build. */
  private static final String CHANGING =
      "<(dc:date|meta:creation-date|meta:editing-duration|meta:editing-cycles|meta:generator)>[^<]*</\\1>";

  private OpenDocument() {}

  static byte[] from(byte[] xlsx, XSSFWorkbook built, RemoteOffice office) throws Exception {
    Path source = office.home().resolve("source.xlsx");
    Path target = office.home().resolve("target.ods");
    Files.write(source, xlsx);
    Files.deleteIfExists(target);
    try (Workbook book = office.open(source.toUri().toString(), true)) {
      book.recalculate();
      book.store(target, "calc8");
    }
    return Repacked.zip(
        Files.readAllBytes(target), (entry, content) -> kept(entry, content, built));
  }

  private static byte[] kept(String entry, byte[] content, XSSFWorkbook built) {
    String text = new String(content, StandardCharsets.UTF_8);
    return switch (entry) {
      case "meta.xml" -> text.replaceAll(CHANGING, "").getBytes(StandardCharsets.UTF_8);
      case "styles.xml" -> language(text, built).getBytes(StandardCharsets.UTF_8);
      case "settings.xml" -> Views.put(text, built).getBytes(StandardCharsets.UTF_8);
      default -> content;
    };
  }

  /** The office names its own language, and its own font where it has it. */
  private static String language(String styles, XSSFWorkbook built) {
    String own = "fo:language=\"en\" fo:country=\"US\"";
    if (!styles.contains(own)) {
      throw new IllegalStateException("the office stores its language in another way now");
    }
    if (!styles.contains("style:font-name=\"Liberation Sans\"")) {
      throw new IllegalStateException(
          "the office names a font that it found here: install fonts-liberation first");
    }
    return built
        .getProperties()
        .getCoreProperties()
        .getUnderlyingProperties()
        .getLanguageProperty()
        .filter(language -> language.equals("de"))
        .map(language -> styles.replace(own, "fo:language=\"de\" fo:country=\"DE\""))
        .orElse(styles);
  }
}
