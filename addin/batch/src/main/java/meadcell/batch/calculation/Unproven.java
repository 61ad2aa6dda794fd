package meadcell.batch.calculation;

/** A formula rests on something of which nobody has shown that it is computed rightly here. */
final class Unproven extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final transient PoiCell cell;

  /** Something in the formula that is computed now. */
  Unproven(String sentence) {
    this(sentence, null);
  }

  private Unproven(String sentence, PoiCell cell) {
    super(sentence, null, false, false);
    this.cell = cell;
  }

  /** The same, in a known cell. */
  Unproven in(PoiCell place) {
    return cell == null ? new Unproven(getMessage(), place) : this;
  }

  /** What to say of another cell that rests on it. */
  String seenFrom(PoiCell other) {
    return cell == null || cell.getIdentityKey().equals(other.getIdentityKey())
        ? getMessage()
        : "it rests on " + cell.address() + ", which cannot be computed here.";
  }
}
