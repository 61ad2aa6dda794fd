package meadcell.batch.freeze;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import meadcell.batch.book.Book;
import meadcell.batch.book.Place;
import meadcell.batch.calculation.Reads;

/** Cells by the names that formulas on another sheet use. */
record Addresses(Book book) {
  /** {@code 'My log'!$B$2:$B$9}. */
  String of(Reads.Area area) {
    Place first = new Place(area.firstRow(), area.firstColumn());
    Place last = new Place(area.lastRow(), area.lastColumn());
    return "'"
        + book.sheets().get(area.sheet()).name().replace("'", "''")
        + "'!"
        + first.fixed()
        + (first.equals(last) ? "" : ":" + last.fixed());
  }

  String of(List<Reads.Area> areas) {
    return areas.stream().map(this::of).collect(Collectors.joining(" "));
  }

  /** A formula that follows its cells wherever a program moves them: how many rows they are. */
  String follower(List<Reads.Area> areas) {
    return areas.stream().map(area -> "ROWS(" + of(area) + ")").collect(Collectors.joining("+"));
  }

  /** The position of a sheet; nothing if there is none of this name. */
  Optional<Integer> sheet(String name) {
    for (int i = 0; i < book.sheets().size(); i++) {
      if (book.sheets().get(i).name().equals(name)) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  static Reads.Area area(int sheet, Place place) {
    return new Reads.Area(sheet, place.row(), place.row(), place.column(), place.column());
  }
}
