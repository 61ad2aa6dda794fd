package meadcell.catalogue;

import meadcell.cellar.Cellar;

/** Tables as functions get them, for tests that call a function's method. */
public final class Tables {
  private Tables() {}

  /** What the catalogue reads from cells for an argument of a function, in metric units. */
  @SuppressWarnings({
    "unchecked",
    "TypeParameterUnusedInFormals"
  }) // the caller knows the argument's type
  public static <T> T read(String function, int place, Object[][] cells) {
    ArgSpec arg = Cellar.catalogue().get(function).args().get(place);
    return (T) arg.reader.argument(cells, UnitSystem.METRIC);
  }
}
