package meadcell.catalogue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import meadcell.cellar.Cellar;

/**
 * The manual of all functions as one page, written from the declarations: {@code mvn -q -pl
 * functions test-compile exec:java -Dexec.classpathScope=test
 * -Dexec.mainClass=meadcell.catalogue.ReferenceManual}.
 */
final class ReferenceManual {
  static final Path FILE = Path.of("REFERENCE.md");

  private ReferenceManual() {}

  public static void main(String[] arguments) throws IOException {
    Path module = Files.exists(Path.of("functions")) ? Path.of("functions") : Path.of("");
    Files.writeString(module.resolve(FILE), text(Cellar.catalogue()));
  }

  static String text(Catalogue catalogue) {
    StringBuilder out = new StringBuilder("# All functions\n\n");
    out.append("Written from the declarations in the code; `meadcell.jar explain NAME` shows the")
        .append(" same page. Arguments in brackets may be left out. Arguments are separated by")
        .append(" `;` here; use `,` where your spreadsheet does.\n\n");
    catalogue
        .families()
        .forEach(
            (family, type) -> {
              out.append("**").append(family).append("** ");
              out.append(type.about(Words.ENGLISH)).append('\n');
              for (FunctionSpec function : catalogue.functions(family)) {
                out.append("[").append(function.member().toUpperCase(Locale.ROOT)).append("](#");
                out.append(anchor(function.name())).append(")\n");
              }
              out.append('\n');
            });
    for (String family : catalogue.families().keySet()) {
      for (FunctionSpec function : catalogue.functions(family)) {
        page(out, ReferencePage.of(function));
      }
    }
    return out.toString().stripTrailing() + "\n";
  }

  private static String anchor(String name) {
    return name.toLowerCase(Locale.ROOT).replace(".", "");
  }

  private static void page(StringBuilder out, ReferencePage page) {
    out.append("## ").append(page.title()).append("\n\n");
    for (ReferencePage.Section section : page.sections()) {
      boolean list = section.lines().size() > 1;
      out.append("**").append(section.heading()).append("**").append(list ? "\n\n" : " ");
      for (String line : section.lines()) {
        out.append(list ? "- " : "").append(escaped(line)).append('\n');
      }
      out.append('\n');
    }
  }

  /** Characters that Markdown would take as marks. */
  private static String escaped(String line) {
    return line.replaceAll("([*_<|\\[\\]])", "\\\\$1");
  }
}
