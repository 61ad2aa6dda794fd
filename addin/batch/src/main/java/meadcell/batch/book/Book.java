package meadcell.batch.book;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A workbook in memory, independent of the file it came from. */
public interface Book extends AutoCloseable {
  List<? extends BookSheet> sheets();

  /** Whether its author protected it against adding, renaming and moving sheets. */
  boolean isStructureProtected();

  /** A new, empty sheet behind the others. */
  BookSheet addSheet(String name);

  /** The names that formulas may use. */
  List<DefinedName> names();

  /** The tables that formulas may address. */
  List<NamedTable> tables();

  /** The settings that are not those of most workbooks. */
  Set<Setting> settings();

  /** How many rows a sheet of this format can have. */
  int mostRows();

  Optional<String> property(String name);

  void property(String name, String value);

  /** What a user should know about the file, such as a signature that a change makes invalid. */
  List<String> caveats();

  /**
   * Writes the workbook.
   *
   * @throws FileRefused when it cannot be written without harm, with the reason for its owner
   */
  void write(OutputStream out) throws IOException;

  @Override
  void close() throws IOException;
}
