package meadcell.batch.book;

import java.io.IOException;
import java.io.UncheckedIOException;

/** A file that is not worked on; the message is a sentence for its owner. */
public final class FileRefused extends IOException {
  private static final long serialVersionUID = 1;

  public FileRefused(String sentence) {
    super(sentence);
  }

  public FileRefused(String sentence, Throwable cause) {
    super(sentence, cause);
  }

  /**
   * A file whose content cannot be read.
   *
   * @param what is wrong with it, as the end of a sentence
   */
  public static FileRefused damaged(String what, Throwable cause) {
    return new FileRefused("The file is damaged: " + what + ".", cause);
  }

  /**
   * Whatever a reader of a file format threw while it read: a sentence of ours, or what only
   * programmers understand.
   */
  static FileRefused of(Exception thrown) {
    return thrown instanceof FileRefused refused
        ? refused
        : thrown instanceof UncheckedIOException late && late.getCause() instanceof FileRefused part
            ? part
            : damaged("a part of it cannot be understood", thrown);
  }
}
