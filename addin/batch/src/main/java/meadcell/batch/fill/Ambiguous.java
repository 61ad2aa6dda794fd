package meadcell.batch.fill;

/** More than one place fits, so none is taken. */
final class Ambiguous extends Exception {
  private static final long serialVersionUID = 1;

  Ambiguous(String sentence) {
    super(sentence, null, false, false);
  }
}
