package meadcell.batch.draft;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import meadcell.batch.book.Book;
import meadcell.batch.book.Books;
import meadcell.batch.book.Value;
import meadcell.batch.draft.Draft.Row;
import meadcell.batch.fill.Filler;
import meadcell.batch.plan.Plan;
import meadcell.batch.plan.PlanMistake;
import meadcell.batch.report.Report;
import meadcell.catalogue.Catalogue;

/** What the lines of a draft give: each log is filled by them in memory, as fill does it. */
final class Preview {
  private static final int SHOWN = 3;
  private static final int DIGITS = 6;

  /** What one line gave. */
  private static final class Given {
    final List<String> results = new ArrayList<>();
    final Set<String> sheets = new LinkedHashSet<>();
    final List<String> problems = new ArrayList<>();
    int filled;
  }

  private final Map<Row, Given> given = new LinkedHashMap<>();

  static Preview of(Draft draft, List<Row> rows, List<Draft.Log> logs, Catalogue catalogue)
      throws IOException {
    Preview preview = new Preview();
    rows.forEach(row -> preview.given.put(row, new Given()));
    if (rows.isEmpty()) {
      return preview;
    }
    ByteArrayOutputStream written = new ByteArrayOutputStream();
    PlanBook.write(draft, rows, written);
    Plan plan;
    try (Book book = Books.open(written.toByteArray(), "draft.xlsx")) {
      plan = Plan.read(book, "draft", catalogue);
    } catch (PlanMistake own) {
      throw new IllegalStateException(own);
    }
    for (Draft.Log log : logs) {
      try (Book book = log.open()) {
        Filler.Options options = new Filler.Options(false, false, true, null);
        Report report =
            new Filler(book, plan.forWorkbook(log.name()), catalogue, options).run().report();
        rows.forEach(row -> preview.add(row, log.name(), report));
      }
    }
    return preview;
  }

  private void add(Row row, String log, Report report) {
    if (!row.workbook().isEmpty() && !row.workbook().equals(log)) {
      return;
    }
    Given line = given.get(row);
    for (Report.Change change : report.changes()) {
      boolean isHere =
          change.result().equals(row.line().result())
              && !change.formula().isEmpty()
              && !change.after().isBlank()
              && (row.sheet().equals("*") || row.sheet().equals(change.sheet()));
      if (isHere) {
        line.filled++;
        line.sheets.add(log + "\n" + change.sheet());
        if (line.results.size() < SHOWN) {
          line.results.add(change.cell() + " " + shown(change.after()));
        }
      }
    }
    String problem = row.line().result() + " stays empty: ";
    for (Report.Remark remark : report.remarks()) {
      if (remark.sentence().startsWith(problem)
          && (row.sheet().equals("*") || row.sheet().equals(remark.sheet()))) {
        line.problems.add(remark.sentence().substring(problem.length()));
      } else if (remark.code() == Report.Code.NOT_FOUND
          && remark.sentence().startsWith(row.line().result() + ": ")) {
        line.problems.add(remark.sentence());
      }
    }
  }

  private static String shown(Value value) {
    if (value instanceof Value.Number number) {
      return Double.toString(
          new java.math.BigDecimal(number.number())
              .round(new java.math.MathContext(DIGITS))
              .doubleValue());
    }
    return value.toString();
  }

  /** Whether it also filled sheets that it was not proposed for. */
  boolean goesBeyond(Row row, Set<String> proposed) {
    return !proposed.containsAll(given.get(row).sheets);
  }

  boolean isAnyFilled(Row row) {
    return given.get(row).filled > 0;
  }

  String why(Row row) {
    return given.get(row).problems.stream().findFirst().orElse("");
  }

  /** The line with its first results; where many stay empty, with that to look at. */
  Row with(Row row) {
    Given line = given.get(row);
    List<String> doubts = new ArrayList<>(row.doubts());
    if (line.problems.size() > line.filled) {
      doubts.add(line.problems.size() + " rows stay empty: " + line.problems.get(0));
    }
    String results = line.results.stream().collect(Collectors.joining("; "));
    return new Row(row.workbook(), row.sheet(), row.line(), doubts, results);
  }
}
