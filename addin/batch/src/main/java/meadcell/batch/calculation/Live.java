package meadcell.batch.calculation;

import java.util.Optional;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;

/** Which formulas a calculation computes anew; all others stand for their stored results. */
public interface Live {
  boolean isLive(int sheet, int row, int column);

  /** Why a live formula must not be computed all the same; nothing if it may. */
  default Optional<String> obstacle(int sheet, Place place) {
    return Optional.empty();
  }

  /** What a cell is taken to hold. */
  default CellContent taken(int sheet, Place place, CellContent held) {
    return held;
  }
}
