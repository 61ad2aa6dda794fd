package meadcell.batch.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import meadcell.batch.book.FileRefused;
import meadcell.batch.report.Report;

/** How one workbook ended. */
record FileResult(
    Path file, Path target, Status status, Report report, String sentence, long nanoseconds) {

  /** The ways a workbook can end; their names stand in the report file. */
  enum Status {
    WRITTEN("the target is new or was replaced"),
    UNCHANGED("the target was left as it is"),
    DRY_RUN("nothing was to be written"),
    REFUSED("the workbook cannot be worked on; the sentence says why"),
    NOT_WRITTEN("the target could not be written; the sentence says why"),
    FAULT("the tool itself failed; the sentence says how");

    final String meaning;

    Status(String meaning) {
      this.meaning = meaning;
    }
  }

  static FileResult of(Path file, Path target, Status status, Report report) {
    return new FileResult(file, target, status, report, "", 0);
  }

  static FileResult failed(Path file, Path target, Status status, String sentence) {
    return new FileResult(file, target, status, null, sentence, 0);
  }

  /** A file that could not be read or written. */
  static FileResult failed(Path file, Path target, IOException e) {
    Status status = e instanceof FileRefused ? Status.REFUSED : Status.NOT_WRITTEN;
    return failed(file, target, status, FileTrouble.sentence(e));
  }

  FileResult after(long elapsed) {
    return new FileResult(file, target, status, report, sentence, elapsed);
  }

  boolean isDone() {
    return report != null;
  }

  List<Report.Remark> remarks() {
    return report == null ? List.of() : report.remarks();
  }

  long count(Report.Code code) {
    return remarks().stream().filter(remark -> remark.code() == code).count();
  }

  /** The line that the terminal shows. */
  String line() {
    if (!isDone()) {
      return file
          + ": "
          + status.name().toLowerCase(Locale.ROOT).replace('_', ' ')
          + ". "
          + sentence;
    }
    String where = where();
    if (report.nothingFilled().isPresent()) {
      Report.Remark why = report.nothingFilled().get();
      boolean isFrozen = why.code() == Report.Code.NOT_THAWED;
      String nothing = isFrozen ? ": no formula was put back. " : ": nothing was filled. ";
      return file + where + nothing + why;
    }
    List<String> counts = new ArrayList<>();
    int changed = report.changes().size();
    counts.add(changed + (changed == 1 ? " cell changed" : " cells changed"));
    add(counts, report.unchangedCells(), "as before");
    add(counts, count(Report.Code.UNDERSTOOD), "read from unusual input");
    add(counts, count(Report.Code.LEFT_EMPTY), "left empty");
    add(counts, count(Report.Code.REFUSED), "refused");
    add(counts, count(Report.Code.STALE), "could not be computed again");
    return file + where + ": " + String.join(", ", counts);
  }

  private String where() {
    return switch (status) {
      case DRY_RUN -> " (dry run)";
      case UNCHANGED -> target.equals(file) ? " (no change)" : " -> " + target + " (as it was)";
      default -> target.equals(file) ? "" : " -> " + target;
    };
  }

  /** Whether nothing was filled, or, seen strictly, anything was left. */
  boolean isLeft(boolean strictly) {
    return isDone()
        && (report.nothingFilled().isPresent()
            || strictly && remarks().stream().anyMatch(remark -> remark.code().isLeft()));
  }

  private static void add(List<String> counts, long count, String what) {
    if (count > 0) {
      counts.add(count + " " + what);
    }
  }
}
