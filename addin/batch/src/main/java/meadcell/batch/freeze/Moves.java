package meadcell.batch.freeze;

import java.util.List;
import java.util.Optional;
import meadcell.batch.book.Place;
import meadcell.batch.calculation.Reads;

/** Whether the cells of a kept formula are still where they were, and why not. */
record Moves(Addresses addresses) {
  /** Whether rows or columns were moved since the line was written. */
  boolean isMoved(FormulaSheet.Line line) {
    Frozen frozen = line.frozen();
    List<Reads.Area> there =
        addresses
            .sheet(frozen.sheet())
            .map(index -> List.of(Addresses.area(index, frozen.place())))
            .orElse(List.of());
    return !line.cellNow().equals(there) || !addresses.of(line.readsNow()).equals(frozen.reads());
  }

  /**
   * Why a formula's cells are not where they were when it was frozen; nothing if they are.
   *
   * @param sheetIndex position of its sheet
   */
  Optional<String> why(FormulaSheet.Line line, int sheetIndex, Landmarks landmarks) {
    Frozen frozen = line.frozen();
    Place place = frozen.place();
    if (isMoved(line)) {
      List<Reads.Area> cell = List.of(Addresses.area(sheetIndex, place));
      return Optional.of(
          !line.cellNow().equals(cell)
              ? whereNow("the cell " + place, line.cellNow())
              : whereNow("what " + place + " reads, " + frozen.reads() + ",", line.readsNow()));
    }
    if (landmarks.isRowElsewhere(frozen.row(), sheetIndex, place.row())) {
      return Optional.of(
          "\"" + frozen.row().text() + "\" is no longer in row " + (place.row() + 1));
    }
    if (landmarks.isColumnElsewhere(frozen.column(), sheetIndex, place)) {
      return Optional.of("\"" + frozen.column().text() + "\" is no longer above " + place);
    }
    for (int i = 0; i < line.readsNow().size() && 2 * i + 1 < frozen.labels().size(); i++) {
      Reads.Area area = line.readsNow().get(i);
      Place first = new Place(area.firstRow(), area.firstColumn());
      Label column = frozen.labels().get(2 * i);
      Label row = frozen.labels().get(2 * i + 1);
      if (landmarks.isColumnElsewhere(column, area.sheet(), first)) {
        return Optional.of("\"" + column.text() + "\" is no longer above " + addresses.of(area));
      }
      if (landmarks.isRowElsewhere(row, area.sheet(), first.row())) {
        return Optional.of(
            "\"" + row.text() + "\" is no longer in the row of " + addresses.of(area));
      }
    }
    return Optional.empty();
  }

  private String whereNow(String what, List<Reads.Area> now) {
    return now.isEmpty()
        ? what + " was deleted, or is not followed any more"
        : what + " is " + addresses.of(now) + " now";
  }
}
