package meadcell.catalogue;

/**
 * Input that a function does not answer, with the sentence that says why. Each host maps the {@link
 * Kind} to its own error; the sentence is what {@code CELLAR.WHY} gives.
 */
public final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1;

  /** The causes, told apart because hosts show different errors for them. */
  public enum Kind {
    /** A value outside the stated range. */
    OUT_OF_RANGE,
    /** A text where a number is due, several cells where one is due, and the like. */
    WRONG_KIND,
    /** Values that are each in range but cannot be true together. */
    INCONSISTENT,
    /** Nothing satisfies what was asked for. */
    NO_SOLUTION,
    /** The search for the answer did not settle. */
    NOT_CONVERGED,
    /** Too few or too many arguments. */
    WRONG_COUNT,
    /** A function, ingredient or other name that is not known. */
    UNKNOWN_NAME
  }

  private final Kind kind;

  public Refusal(Kind kind, String sentence) {
    super(sentence, null, false, false); // no stack trace: refusals are answers, and frequent
    this.kind = kind;
  }

  public Kind kind() {
    return kind;
  }

  public static Refusal outOfRange(String sentence) {
    return new Refusal(Kind.OUT_OF_RANGE, sentence);
  }

  public static Refusal wrongKind(String sentence) {
    return new Refusal(Kind.WRONG_KIND, sentence);
  }

  public static Refusal inconsistent(String sentence) {
    return new Refusal(Kind.INCONSISTENT, sentence);
  }

  public static Refusal noSolution(String sentence) {
    return new Refusal(Kind.NO_SOLUTION, sentence);
  }

  public static Refusal notConverged(String sentence) {
    return new Refusal(Kind.NOT_CONVERGED, sentence);
  }

  /** An unknown name, with the nearest known one as a suggestion where one is near. */
  public static Refusal unknownName(String what, String given, Iterable<String> known) {
    String hint = Nearest.to(given, known).map(near -> " Did you mean " + near + "?").orElse("");
    return new Refusal(Kind.UNKNOWN_NAME, what + " \"" + given + "\" is not known." + hint);
  }
}
