package meadcell.batch.book;

/** A rectangle of cells of one sheet, both corners included. */
public record Span(Place first, Place last) {
  public boolean contains(Place place) {
    return place.row() >= first.row()
        && place.row() <= last.row()
        && place.column() >= first.column()
        && place.column() <= last.column();
  }
}
