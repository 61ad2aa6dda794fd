package meadcell.batch.command;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import meadcell.batch.ExitCode;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The sample workbooks, out of the jar. */
@Command(
    name = "samples",
    header = "Writes the sample workbooks.",
    description = {
      "",
      "Example: meadcell samples try-it",
      "",
      "Files that are there already stay as they are.",
      ""
    })
public final class Samples implements Callable<Integer> {
  /** The files of the folder sample-workbooks, which the build puts into the jar. */
  static final List<String> NAMES =
      List.of(
          "first-week.xlsx",
          "first-week.ods",
          "erste-woche.xlsx",
          "erste-woche.ods",
          "cellar-book.xlsx",
          "cellar-book.ods",
          "old-log.xlsx",
          "old-log-plan.xlsx");

  @Parameters(paramLabel = "DIR", description = "The folder to write into.")
  private Path folder;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    Files.createDirectories(folder);
    boolean all = true;
    for (String name : NAMES) {
      Path file = folder.resolve(name);
      if (Files.exists(file)) {
        spec.commandLine().getErr().println(file + " is there already; left as it is.");
        all = false;
      } else {
        try (InputStream in = Samples.class.getResourceAsStream("/meadcell/samples/" + name)) {
          Files.copy(in, file);
        }
        spec.commandLine().getOut().println(file);
      }
    }
    return all ? ExitCode.OK : ExitCode.NOT_WRITTEN;
  }
}
