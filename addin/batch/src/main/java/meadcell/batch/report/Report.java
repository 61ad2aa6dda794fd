package meadcell.batch.report;

import java.util.ArrayList;
import java.util.List;
import meadcell.batch.book.Value;

/** What happened to one workbook. */
public final class Report {
  /** Kinds of remarks; their names are the codes in the report file. */
  public enum Code {
    UNDERSTOOD("a text was read as a number, or a number as another; the result rests on it"),
    LEFT_EMPTY("the result stays empty, because an input is unclear, missing or refused"),
    REFUSED("a function refused its input; the cell shows the error"),
    KEPT("a cell holds what a person typed, and was not touched"),
    STALE("a formula could not be computed again, or shows what it no longer gives"),
    FORMULA_LEFT("a formula could not be frozen, or not be put back, without harm"),
    NOT_FOUND("a line of the plan found nothing on this sheet"),
    UNKNOWN_FUNCTION("a function that is likely a cellar function, misspelt"),
    BLANK_INPUT("a formula with a cellar function reads a blank cell"),
    MISTYPED("a reading that cannot be what was read"),
    FILE("something about the file itself");

    private final String meaning;

    Code(String meaning) {
      this.meaning = meaning;
    }

    public String meaning() {
      return meaning;
    }
  }

  /** One remark; {@code text} is what the cell in question holds. */
  public record Remark(Code code, String sheet, String cell, String text, String sentence) {
    @Override
    public String toString() {
      String at = sheet.isEmpty() ? "" : sheet + "!" + cell + ": ";
      return at + sentence;
    }
  }

  /** One cell that now holds something new, or nothing. */
  public record Change(
      String sheet,
      String cell,
      String result,
      String found,
      String formula,
      Value before,
      Value after) {

    /** A change of a cell that was found by the formula in it. */
    public static Change ofFormula(
        String sheet, String cell, String formula, Value before, Value after) {
      return new Change(sheet, cell, "", "formula", formula, before, after);
    }
  }

  private final List<Change> changes = new ArrayList<>();
  private final List<Remark> remarks = new ArrayList<>();
  private final Notes notes;
  private int unchanged;

  public Report() {
    this(new Notes());
  }

  /** A report that goes on with another's notes. */
  public Report(Notes notes) {
    this.notes = notes;
  }

  public void changed(Change change) {
    changes.add(change);
  }

  public void unchanged() {
    unchanged++;
  }

  public void remark(Code code, String sheet, String cell, String text, String sentence) {
    remark(new Remark(code, sheet, cell, text, sentence));
  }

  public void remark(Remark remark) {
    remarks.add(remark);
  }

  /** The notes put at cells and taken away. */
  public Notes notes() {
    return notes;
  }

  /** Whether the workbook now differs from what it was. */
  public boolean isChanged() {
    return !changes.isEmpty() || notes.areChanged();
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
}
