package meadcell.batch.book;

/**
 * How far a file may unpack.
 *
 * @param leastRatio of a part's stored size to its real one
 * @param mostParts how many parts it may have
 */
public record Limits(double leastRatio, int mostParts) {
  /** What no workbook needs to exceed (as Apache POI has them). */
  public static final Limits USUAL = new Limits(0.01, 1000);

  /** For files that their owner trusts. */
  public static final Limits NONE = new Limits(0, Integer.MAX_VALUE);
}
