package meadcell.batch.calculation;

/** A formula rests on something of which nobody has shown that it is computed rightly here. */
final class Unproven extends RuntimeException {
  private static final long serialVersionUID = 1;

  Unproven(String sentence) {
    super(sentence, null, false, false);
  }
}
