package meadcell.batch.book;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import meadcell.batch.calculation.PoiFunctions;
import meadcell.batch.calculation.Reads;

/** A workbook in memory, independent of the file it came from. */
public interface Book extends AutoCloseable {

  /**
   * Computes formulas of one workbook as it stands now; after a change a new one is needed. Sheets
   * are meant by their position.
   */
  interface Calculation {
    /**
     * The result of a cell's formula: {@code Double}, {@code String}, {@code Boolean} or {@link
     * CellError}.
     *
     * @throws CannotCalculate when the formula, or what it depends on, is beyond this tool
     */
    Object result(int sheet, Place place) throws CannotCalculate;

    /** What a cell's formula reads. */
    Reads reads(int sheet, Place place);
  }

  /** Which formulas a calculation computes anew; all others stand for their stored results. */
  interface Live {
    boolean isLive(int sheet, int row, int column);
  }

  /** A formula that this tool cannot compute, with the reason. */
  final class CannotCalculate extends Exception {
    private static final long serialVersionUID = 1;

    public CannotCalculate(String reason) {
      super(reason, null, false, false);
    }
  }

  List<? extends BookSheet> sheets();

  /** A new, empty sheet behind the others. */
  BookSheet addSheet(String name);

  Calculation calculation(PoiFunctions functions, Live live);

  Optional<String> property(String name);

  void property(String name, String value);

  /** What a user should know about the file, such as a signature that a change makes invalid. */
  List<String> caveats();

  /**
   * Writes the workbook.
   *
   * @throws FileRefused when it cannot be written without harm, with the reason for its owner
   */
  void write(OutputStream out) throws IOException, FileRefused;

  @Override
  void close() throws IOException;
}
