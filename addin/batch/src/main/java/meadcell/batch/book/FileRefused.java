package meadcell.batch.book;

/** A file that cannot be worked on, with a sentence for its owner. */
public final class FileRefused extends Exception {
  private static final long serialVersionUID = 1;

  public FileRefused(String sentence) {
    super(sentence);
  }

  public FileRefused(String sentence, Throwable cause) {
    super(sentence, cause);
  }
}
