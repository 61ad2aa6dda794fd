package meadcell.release;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import meadcell.batch.Main;

/** Calls the tool several times in one process: it lies in the tool's own module for that. */
public final class UsualRuns {
  static final String NAME = "meadcell.release.UsualRuns";

  private UsualRuns() {}

  /** Arguments: each the words of a command line, one a line. */
  public static void main(String[] runs) {
    PrintWriter out = new PrintWriter(System.out);
    PrintWriter err = new PrintWriter(System.err);
    boolean isDone =
        Arrays.stream(runs)
            .allMatch(run -> Main.commandLine(out, err).execute(run.split("\n")) == 0);
    out.flush();
    err.flush();
    System.exit(isDone ? 0 : 1);
  }

  /** Adds this class to a folder of classes. */
  static void copyTo(Path classes) throws IOException {
    String file = NAME.replace('.', '/') + ".class";
    Path copy = classes.resolve(file);
    Files.createDirectories(copy.getParent());
    try (InputStream in = UsualRuns.class.getResourceAsStream("/" + file)) {
      Files.copy(in, copy);
    }
  }
}
