package meadcell.batch.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import meadcell.batch.book.Place;
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
    NOT_THAWED("a frozen formula was not put back; the sentence says why"),
    NOT_FOUND("a line of the plan found nothing on this sheet"),
    PROTECTED("a protected sheet was left as it is"),
    UNKNOWN_FUNCTION("a function that is likely a cellar function, misspelt"),
    BLANK_INPUT("a formula with a cellar function reads a blank cell"),
    OLDER("an older version filled this number in, and a later one gives another"),
    MISTYPED("a reading that cannot be what was read"),
    FILE("something about the file itself");

    private final String meaning;

    Code(String meaning) {
      this.meaning = meaning;
    }

    /** Whether a cell that was to be filled was not. */
    boolean isUnfilled() {
      return switch (this) {
        case LEFT_EMPTY, KEPT, NOT_THAWED, NOT_FOUND, PROTECTED -> true;
        default -> false;
      };
    }

    /** Whether something was left, or not filled, that was to be. */
    public boolean isLeft() {
      return switch (this) {
        case LEFT_EMPTY, REFUSED, KEPT, STALE, NOT_THAWED, NOT_FOUND, PROTECTED, UNKNOWN_FUNCTION ->
            true;
        case UNDERSTOOD, BLANK_INPUT, OLDER, MISTYPED, FILE -> false;
      };
    }

    public String meaning() {
      return meaning;
    }
  }

  /** One remark; {@code text} is what the cell in question holds. */
  public record Remark(Code code, String sheet, String cell, String text, String sentence) {
    @Override
    public String toString() {
      String at = sheet.isEmpty() ? "" : sheet + (cell.isEmpty() ? "" : "!" + cell) + ": ";
      return at + sentence;
    }
  }

  /** One cell that now holds something new, or nothing. */
  public record Change(
      String sheet,
      Place place,
      String result,
      String found,
      String formula,
      Value before,
      Value after) {

    /** A change of a cell that was found by the formula in it. */
    public static Change ofFormula(
        String sheet, Place place, String formula, Value before, Value after) {
      return new Change(sheet, place, "", "formula", formula, before, after);
    }

    public String cell() {
      return place.a1();
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

  /** What was left, where nothing at all was filled. */
  public Optional<Remark> nothingFilled() {
    return changes.isEmpty() && unchanged == 0
        ? remarks.stream().filter(remark -> remark.code().isUnfilled()).findFirst()
        : Optional.empty();
  }

  /** Tells of sheets whose notes could not be put at their cells. */
  public void tellOfNotesElsewhere() {
    for (String sheet : notes.elsewhere()) {
      remark(
          Code.FILE,
          sheet,
          "",
          "",
          "No notes were put at its cells, because an .xls sheet would lose its charts by them;"
              + " --report-sheet puts them on a sheet of their own, and a copy saved as .xlsx can"
              + " have them at its cells.");
    }
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
