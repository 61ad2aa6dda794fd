package meadcell.batch.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import meadcell.batch.ExitCode;
import meadcell.batch.book.Book;
import meadcell.batch.check.Inspection;
import meadcell.batch.report.Alike;
import meadcell.batch.report.Report;
import meadcell.cellar.Cellar;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What a workbook's owner should look at. */
@Command(
    name = "check",
    header = "Reads workbooks and lists what should be looked at; writes nothing.",
    description = {
      "",
      "Example: meadcell check logs/*.xlsx",
      "",
      "Lists misspelt functions, refused inputs with the reason, blank inputs, stored values that"
          + " are not what the formula gives now, gravities that look mistyped, and in a filled"
          + " workbook the cells that an older version computed whose numbers changed since. Ends"
          + " with 6 if it lists anything.",
      ""
    })
public final class Check implements Callable<Integer> {
  @Parameters(arity = "1..*", paramLabel = "WORKBOOK", description = "The workbooks.")
  private List<Path> workbooks;

  @Option(names = "--report", paramLabel = "FILE", description = JsonReport.OPTION)
  private Path report;

  @Mixin private InputOptions input;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    List<FileResult> results = new ArrayList<>();
    for (Path file : workbooks) {
      FileResult result = one(file);
      results.add(result);
      if (!result.isDone()) {
        spec.commandLine().getErr().println(result.line());
        continue;
      }
      out.println(file + ":" + (result.remarks().isEmpty() ? " nothing to look at" : ""));
      Alike.of(result.remarks()).forEach(remarks -> out.println("  " + remarks));
    }
    if (report != null) {
      JsonReport.write(report, spec.name(), results);
    }
    if (results.stream().anyMatch(result -> !result.isDone())) {
      return results.size() == 1 ? ExitCode.REFUSED : ExitCode.SOME_FAILED;
    }
    boolean clean = results.stream().allMatch(result -> result.remarks().isEmpty());
    return clean ? ExitCode.OK : ExitCode.CHECK_FAILED;
  }

  private FileResult one(Path file) {
    try (Book book = input.open(input.read(file), file)) {
      Report findings = new Inspection(book, Cellar.catalogue()).run();
      return FileResult.of(file, file, FileResult.Status.UNCHANGED, findings);
    } catch (IOException e) {
      return FileResult.failed(file, file, e);
    } catch (UncheckedIOException e) {
      return FileResult.failed(file, file, e.getCause());
    } catch (RuntimeException e) {
      return FileResult.failed(file, file, FileResult.Status.FAULT, Fault.sentence(e, spec));
    }
  }
}
