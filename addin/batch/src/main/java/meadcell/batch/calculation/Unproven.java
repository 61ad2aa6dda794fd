package meadcell.batch.calculation;

/** A formula rests on something of which nobody has shown that it is computed rightly here. */
final class Unproven extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final transient PoiCell cell;
  private final String unknown;

  /** Something in the formula that is computed now. */
  Unproven(String sentence) {
    this(sentence, "", null);
  }

  private Unproven(String sentence, String unknown, PoiCell cell) {
    super(sentence, null, false, false);
    this.unknown = unknown;
    this.cell = cell;
  }

  /** A function that nobody knows here. */
  static Unproven unknown(String function) {
    String name = function.replaceFirst("(?i)^_xl(fn|l)\\.", "");
    return new Unproven("its function " + name + " is not known.", name, null);
  }

  /** The function that nobody knows; empty if it is something else. */
  String unknownFunction() {
    return unknown;
  }

  /** The same, in a known cell. */
  Unproven in(PoiCell place) {
    return cell == null ? new Unproven(getMessage(), unknown, place) : this;
  }

  /** What to say of another cell that rests on it. */
  String seenFrom(PoiCell other) {
    return cell == null || cell.getIdentityKey().equals(other.getIdentityKey())
        ? getMessage()
        : "it rests on " + cell.address() + ", which cannot be computed here.";
  }
}
