package meadcell.batch.command;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToLongFunction;
import meadcell.batch.report.Alike;
import meadcell.batch.report.Report;

/** What the terminal shows at the end of a run: never more than a screen, however many files. */
final class Summary {
  private static final int SHOWN = 20;
  private static final int NAME_WIDTH = 22;
  private static final String ROW = "%-" + NAME_WIDTH + "s  %-11s%8s%8s%8s%6s%8s%6s";

  private static final List<ToLongFunction<FileResult>> COUNTS =
      List.of(
          result -> result.isDone() ? result.report().changes().size() : 0,
          result -> result.isDone() ? result.report().unchangedCells() : 0,
          result -> result.count(Report.Code.UNDERSTOOD),
          result -> result.count(Report.Code.LEFT_EMPTY),
          result -> result.count(Report.Code.REFUSED),
          result -> result.count(Report.Code.STALE));

  private final List<FileResult> results;

  Summary(List<FileResult> results) {
    this.results = results;
  }

  /** Writes what was done to {@code out}, and what to look at to {@code err}. */
  void print(PrintWriter out, PrintWriter err) {
    if (results.size() > 1) {
      table(out);
    } else {
      results.stream().filter(FileResult::isDone).map(FileResult::line).forEach(out::println);
    }
    List<String> problems = new ArrayList<>();
    results.stream().filter(result -> !result.isDone()).forEach(r -> problems.add(r.line()));
    for (FileResult result : results) {
      String file = results.size() > 1 ? result.file() + ": " : "";
      Report.Remark told = // in the line of the workbook
          results.size() > 1 || !result.isDone()
              ? null
              : result.report().nothingFilled().orElse(null);
      Alike.of(result.remarks().stream().filter(remark -> !remark.equals(told)).toList())
          .forEach(remarks -> problems.add("  " + file + remarks));
    }
    problems.stream().limit(SHOWN).forEach(err::println);
    if (problems.size() > SHOWN) {
      err.println("  … and " + (problems.size() - SHOWN) + " more; --report FILE lists all.");
    }
  }

  /** A row for each workbook; of very many, only for those to look at. */
  private void table(PrintWriter out) {
    out.println(row("workbook", "", "changed", "same", "unusual", "empty", "refused", "stale"));
    List<FileResult> shown =
        results.stream()
            .filter(r -> results.size() <= SHOWN || !r.isDone() || !r.remarks().isEmpty())
            .limit(SHOWN)
            .toList();
    for (FileResult result : shown) {
      String status =
          result.isLeft(false)
              ? "not filled"
              : result.status().name().toLowerCase(Locale.ROOT).replace('_', ' ');
      out.println(row(result.file().toString(), status, List.of(result)));
    }
    if (shown.size() < results.size()) {
      out.println("… and " + (results.size() - shown.size()) + " more");
    }
    long failed = results.stream().filter(result -> !result.isDone()).count();
    long left = results.stream().filter(result -> result.isLeft(false)).count();
    String outcome = failed > 0 ? failed + " failed" : left > 0 ? left + " not filled" : "all done";
    out.println(row(results.size() + " workbooks", outcome, results));
  }

  private static String row(String name, String status, List<FileResult> counted) {
    List<Object> cells = new ArrayList<>(List.of(name, status));
    COUNTS.forEach(count -> cells.add(counted.stream().mapToLong(count).sum()));
    return row(cells.toArray());
  }

  private static String row(Object... cells) {
    String name = cells[0].toString();
    cells[0] =
        name.length() <= NAME_WIDTH ? name : "…" + name.substring(name.length() - NAME_WIDTH + 1);
    return String.format(Locale.ROOT, ROW, cells).stripTrailing();
  }
}
