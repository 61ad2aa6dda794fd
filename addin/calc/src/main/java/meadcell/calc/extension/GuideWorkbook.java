package meadcell.calc.extension;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLStreamException;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.ReferencePage;
import meadcell.catalogue.Words;

/** The function guide: a list of all functions, and one sheet a family with a page a function. */
final class GuideWorkbook {
  private static final String[] COLUMNS = {Sheets.NARROW, Sheets.WIDE};

  private final Catalogue catalogue;
  private final List<String> families;
  private final Words words;

  private GuideWorkbook(Catalogue catalogue, List<String> families, Words words) {
    this.catalogue = catalogue;
    this.families = families;
    this.words = words;
  }

  static byte[] write(Catalogue catalogue, List<String> families, Words words) {
    GuideWorkbook guide = new GuideWorkbook(catalogue, families, words);
    return Sheets.write(
        sheets -> {
          sheets.sheet("Functions", COLUMNS, () -> guide.list(sheets));
          for (String family : families) {
            sheets.sheet(family, COLUMNS, () -> guide.pages(sheets, family));
          }
        });
  }

  private void list(Sheets sheets) throws XMLStreamException {
    for (String family : families) {
      String about = catalogue.families().get(family).about(words);
      sheets.row(
          () -> {
            sheets.text(Sheets.HEADING, family);
            sheets.text(Sheets.HEADING, about);
          });
      Map<String, Integer> rows = rows(family);
      for (FunctionSpec function : catalogue.functions(family)) {
        sheets.row(
            () -> {
              sheets.link(function.name(), family + ".A" + rows.get(function.name()));
              sheets.text(Sheets.PLAIN, function.summary(words));
            });
      }
    }
  }

  /** The row where each function's page begins. */
  private Map<String, Integer> rows(String family) {
    Map<String, Integer> rows = new HashMap<>();
    int row = 1;
    for (FunctionSpec function : catalogue.functions(family)) {
      rows.put(function.name(), row);
      row += 1;
      for (ReferencePage.Section section : ReferencePage.of(function, words).sections()) {
        row += section.lines().size();
      }
    }
    return rows;
  }

  private void pages(Sheets sheets, String family) throws XMLStreamException {
    for (FunctionSpec function : catalogue.functions(family)) {
      sheets.row(Sheets.NEW_PAGE, () -> sheets.text(Sheets.TITLE, function.name()));
      for (ReferencePage.Section section : ReferencePage.of(function, words).sections()) {
        String heading = section.heading();
        for (int i = 0; i < section.lines().size(); i++) {
          String line = section.lines().get(i);
          boolean first = i == 0;
          sheets.row(
              () -> {
                sheets.text(Sheets.HEADING, first ? heading : "");
                sheets.text(Sheets.PLAIN, line);
              });
        }
      }
    }
  }
}
