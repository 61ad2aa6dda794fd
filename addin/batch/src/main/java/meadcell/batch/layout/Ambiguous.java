package meadcell.batch.layout;

/** More than one place fits, so none is taken. */
public final class Ambiguous extends Exception {
  private static final long serialVersionUID = 1;

  public Ambiguous(String sentence) {
    super(sentence, null, false, false);
  }
}
