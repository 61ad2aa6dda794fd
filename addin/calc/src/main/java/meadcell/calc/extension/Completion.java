package meadcell.calc.extension;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Adds to a built package what is made with its help: the sample workbooks. */
public final class Completion {
  private Completion() {}

  /** Arguments: the package, the folder of the files to add, the package to write. */
  public static void main(String[] arguments) throws IOException {
    Archive archive = new Archive().addZip(Path.of(arguments[0])).addAll("", Path.of(arguments[1]));
    Files.write(Path.of(arguments[2]), archive.bytes());
  }
}
