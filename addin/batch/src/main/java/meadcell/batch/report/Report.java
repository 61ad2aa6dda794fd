package meadcell.batch.report;

import java.util.ArrayList;
import java.util.List;

/** What happened to one workbook. */
public final class Report {
  /** Kinds of remarks; their names are the codes in the report file. */
  public enum Code {
    /** A text was read as a number, or a number as another: the result rests on it. */
    UNDERSTOOD,
    /** The result stays empty, because an input is unclear, missing or refused. */
    LEFT_EMPTY,
    /** A function refused its input; the cell shows the error. */
    REFUSED,
    /** A cell holds what a person typed, and was not touched. */
    KEPT,
    /** A formula elsewhere could not be computed again; its old value is shown. */
    STALE,
    /** A line of the plan found nothing on this sheet. */
    NOT_FOUND,
    /** A function that is likely one of ours, misspelt. */
    UNKNOWN_FUNCTION,
    /** A formula of ours reads a blank cell. */
    BLANK_INPUT,
    /** A reading that cannot be what was read. */
    MISTYPED,
    /** Something about the file itself. */
    FILE
  }

  /** One remark; {@code text} is what the cell in question holds. */
  public record Remark(Code code, String sheet, String cell, String text, String sentence) {
    @Override
    public String toString() {
      String at = sheet.isEmpty() ? "" : sheet + "!" + cell + ": ";
      return at + sentence;
    }
  }

  /** One cell that now holds something new. */
  public record Change(
      String sheet,
      String cell,
      String result,
      String found,
      String formula,
      Object before,
      Object after) {}

  private final List<Change> changes = new ArrayList<>();
  private final List<Remark> remarks = new ArrayList<>();
  private int unchanged;

  public void changed(Change change) {
    changes.add(change);
  }

  public void unchanged() {
    unchanged++;
  }

  public void remark(Code code, String sheet, String cell, String text, String sentence) {
    remarks.add(new Remark(code, sheet, cell, text, sentence));
  }

  public List<Change> changes() {
    return changes;
  }

  public List<Remark> remarks() {
    return remarks;
  }

  public int unchangedCells() {
    return unchanged;
  }

  public long count(Code code) {
    return remarks.stream().filter(remark -> remark.code() == code).count();
  }
}
