package meadcell.catalogue;

/** A cell of a table whose number is read, and refused, only when it is needed. */
public final class Cell {
  private final CellReader reader;
  private final Object raw;
  private final Place place;
  private final UnitSystem system;

  Cell(CellReader reader, Object raw, Place place, UnitSystem system) {
    this.reader = reader;
    this.raw = CellReader.blankToNull(raw);
    this.place = place;
    this.system = system;
  }

  /** {@return whether it holds nothing} */
  public boolean isBlank() {
    return raw == null;
  }

  /** {@return what it holds: a number as it stands there or a text; null for nothing} */
  public Object content() {
    return raw;
  }

  /** {@return the number it holds, in the metric unit; a blank and a text are refused} */
  public double number() {
    if (raw == null) {
      throw reader.blank(place);
    }
    return reader.number(raw, place, system);
  }
}
