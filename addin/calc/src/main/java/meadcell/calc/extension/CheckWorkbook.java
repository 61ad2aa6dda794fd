package meadcell.calc.extension;

import java.util.Arrays;
import java.util.List;
import javax.xml.stream.XMLStreamException;
import meadcell.catalogue.CheckRow;

/**
 * A spreadsheet that recalculates every check value: one row each with what the cell gives, what
 * was expected, the tolerance, a verdict and the kind of evidence; one cell on top is true if all
 * verdicts are, the next counts the kinds.
 */
final class CheckWorkbook {
  /** Rows above the first check: the verdict over all, and the headings. */
  private static final int HEAD = 2;

  private static final List<String> HEADINGS =
      List.of("Call", "Gives", "Expected", "Tolerance", "Holds", "Kind", "Source", "Where");

  private final Sheets sheets;
  private int row = HEAD;

  private CheckWorkbook(Sheets sheets) {
    this.sheets = sheets;
  }

  static byte[] write(List<CheckRow> rows) {
    int cells = rows.stream().mapToInt(row -> width(row.expected())).sum();
    return Sheets.write(
        sheets ->
            sheets.sheet(
                "Checks", new String[0], () -> new CheckWorkbook(sheets).table(rows, cells)));
  }

  private static int width(Object expected) {
    return expected instanceof Object[][] cells
        ? Arrays.stream(cells).mapToInt(row -> row.length).sum()
        : 1;
  }

  private void table(List<CheckRow> rows, int cells) throws XMLStreamException {
    sheets.row(
        () -> {
          sheets.text(Sheets.HEADING, "All check values are met:");
          sheets.formula("of:=AND([.E" + (HEAD + 1) + ":.E" + (HEAD + cells) + "])");
          sheets.text(Sheets.PLAIN, CheckRow.totals(rows));
        });
    sheets.row(
        () -> {
          for (String heading : HEADINGS) {
            sheets.text(Sheets.HEADING, heading);
          }
        });
    for (CheckRow check : rows) {
      String call = FormulaText.of(check.call());
      if (check.expected() instanceof Object[][] expected) {
        for (int i = 0; i < expected.length; i++) {
          for (int j = 0; j < expected[i].length; j++) {
            String element = "INDEX(" + call + ";" + (i + 1) + ";" + (j + 1) + ")";
            check(check, element, expected[i][j]);
          }
        }
      } else {
        check(check, call, check.expected());
      }
    }
  }

  private void check(CheckRow check, String call, Object expected) throws XMLStreamException {
    row++;
    sheets.row(
        () -> {
          sheets.text(Sheets.PLAIN, check.call());
          sheets.formula("of:=" + call);
          if (expected instanceof Double number) {
            sheets.number(number);
            sheets.number(check.tolerance());
            sheets.formula("of:=ABS([.B%1$d]-[.C%1$d])<=[.D%1$d]".formatted(row));
          } else {
            sheets.text(Sheets.PLAIN, (String) expected);
            sheets.number(check.tolerance());
            sheets.formula("of:=EXACT([.B%1$d];[.C%1$d])".formatted(row));
          }
          sheets.text(Sheets.PLAIN, check.kind().word());
          sheets.text(Sheets.PLAIN, check.source());
          sheets.text(Sheets.PLAIN, check.where());
        });
  }
}
