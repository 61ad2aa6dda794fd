package meadcell.batch.book;

import java.io.IOException;
import java.util.List;

/** A file format of workbooks. Each is listed under {@code META-INF/services}. */
public interface Format {
  /** The endings of its file names, in lower case and without the point. */
  List<String> endings();

  /** Whether a file begins like one of these. */
  boolean fits(byte[] bytes);

  /** Whether such a file is only read, and the workbook in it written as {@code .xlsx}. */
  default boolean isOnlyRead() {
    return false;
  }

  /** Reads a file that fits. */
  Book read(byte[] bytes, Limits limits) throws IOException;
}
