package meadcell.batch.book.xls;

import java.util.HashSet;
import java.util.Set;
import meadcell.batch.book.Place;

/** What was to change on a sheet. */
final class Changes {
  /** Cells that hold something else. */
  final Set<Place> cells = new HashSet<>();

  /** Formulas whose stored result is another. */
  final Set<Place> values = new HashSet<>();

  /** Cells whose note came, went or reads otherwise. */
  final Set<Place> notes = new HashSet<>();

  /** Columns with a new width. */
  final Set<Integer> widened = new HashSet<>();
}
