package meadcell.batch.command;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import meadcell.batch.ExitCode;
import meadcell.batch.book.Book;
import meadcell.batch.book.Books;
import meadcell.batch.book.Encryption;
import meadcell.batch.book.SafeFile;
import meadcell.batch.plan.PlanMistake;
import meadcell.batch.report.Report;
import meadcell.batch.report.ReportSheet;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What all commands share that read workbooks and write changed ones. */
abstract class WorkbookCommand implements Callable<Integer> {
  @Parameters(arity = "1..*", paramLabel = "WORKBOOK", description = "The workbooks.")
  private List<Path> workbooks;

  @Mixin private Destination destination;

  @Option(names = "--report", paramLabel = "FILE", description = JsonReport.OPTION)
  private Path report;

  @Option(
      names = "--report-sheet",
      description = "Also list what to look at on a sheet of each workbook, \"Meadcell report\".")
  private boolean reportSheet;

  @Option(
      names = "--jobs",
      paramLabel = "N",
      description = "Work on N workbooks at once (default: ${DEFAULT-VALUE}).")
  private int jobs = 1;

  @Option(
      names = "--strict",
      description = "End with exit code " + ExitCode.LEFT + " if anything was left or not filled.")
  private boolean strict;

  @Option(names = "--no-progress", description = "No progress bar.")
  private boolean noProgress;

  @Mixin InputOptions input;

  @Spec CommandSpec spec;

  /**
   * A workbook in memory.
   *
   * @param secret whether its file is protected by a password
   */
  record Opened(Book book, String name, boolean secret) {}

  /** What a command did to one workbook in memory. */
  record Work(Report report, boolean changed) {}

  /** Changes one workbook in memory. Called from several threads at once. */
  abstract Work work(Opened workbook) throws PlanMistake;

  /** Looks for mistakes that should stop the run before any workbook is touched. */
  void prepare(List<Path> files) throws IOException, PlanMistake {
    // most commands have nothing to prepare
  }

  /** Gives back what the run needed. */
  void finish() {
    // most commands need nothing
  }

  @Override
  public Integer call() throws Exception {
    if (jobs < 1) {
      throw new ParameterException(spec.commandLine(), "--jobs must be at least 1.");
    }
    destination.check(workbooks);
    List<FileResult> results;
    try {
      prepare(workbooks);
      results = run();
    } finally {
      finish();
    }
    new Summary(results).print(spec.commandLine().getOut(), spec.commandLine().getErr());
    if (report != null) {
      JsonReport.write(report, spec.name(), results);
    }
    return exitCode(results);
  }

  List<Path> workbooks() {
    return workbooks;
  }

  private List<FileResult> run() throws InterruptedException, ExecutionException {
    ExecutorService pool = Executors.newFixedThreadPool(jobs);
    try (Progress progress = progress()) {
      List<Future<FileResult>> pending = new ArrayList<>();
      for (Path file : workbooks) {
        pending.add(pool.submit(() -> stepped(file, progress)));
      }
      List<FileResult> results = new ArrayList<>();
      for (Future<FileResult> result : pending) {
        results.add(result.get());
      }
      return results;
    } finally {
      pool.shutdown();
    }
  }

  private Progress progress() {
    boolean shown = !noProgress && workbooks.size() > 1 && Progress.isWatched();
    return shown ? new Progress(System.err, spec.name(), workbooks.size()) : null;
  }

  private FileResult stepped(Path file, Progress progress) {
    long start = System.nanoTime();
    FileResult result = one(file).after(System.nanoTime() - start);
    if (progress != null) {
      progress.step();
    }
    return result;
  }

  /** One workbook, whatever it may be: nothing that goes wrong here stops the others. */
  private FileResult one(Path file) {
    Path target = file;
    try {
      target = destination.of(file);
      SafeFile.requireUnlocked(file);
      SafeFile.requireUnlocked(target);
      Encryption source = input.read(file);
      byte[] content = source.clear();
      Work work;
      try (Book book = input.open(source, file)) {
        work = work(new Opened(book, file.getFileName().toString(), source.isEncrypted()));
        work.report().tellOfNotesElsewhere();
        boolean reported = reportSheet && ReportSheet.write(book, work.report());
        boolean isNew =
            work.changed() || reported || Books.isOnlyRead(file.getFileName().toString());
        if (isNew && !destination.isDryRun()) {
          ByteArrayOutputStream written = new ByteArrayOutputStream(content.length + 4096);
          book.write(written);
          content = written.toByteArray();
        }
      }
      return destination.store(file, source, content, work.report(), input);
    } catch (PlanMistake e) {
      return FileResult.failed(file, target, FileResult.Status.REFUSED, e.getMessage());
    } catch (IOException e) {
      return FileResult.failed(file, target, e);
    } catch (UncheckedIOException e) {
      return FileResult.failed(file, target, e.getCause());
    } catch (RuntimeException e) {
      return FileResult.failed(file, target, FileResult.Status.FAULT, Fault.sentence(e, spec));
    } catch (OutOfMemoryError e) {
      return FileResult.failed(
          file,
          target,
          FileResult.Status.REFUSED,
          "The workbook needs more memory; run java with -Xmx8g or more.");
    }
  }

  private int exitCode(List<FileResult> results) {
    List<FileResult> failed = results.stream().filter(result -> !result.isDone()).toList();
    if (failed.isEmpty()) {
      boolean isLeft = results.stream().anyMatch(result -> result.isLeft(strict));
      return isLeft ? ExitCode.LEFT : ExitCode.OK;
    }
    if (failed.size() < results.size()) {
      return ExitCode.SOME_FAILED;
    }
    FileResult.Status status = failed.get(0).status();
    boolean allAlike = failed.stream().allMatch(result -> result.status() == status);
    return !allAlike
        ? ExitCode.SOME_FAILED
        : switch (status) {
          case NOT_WRITTEN -> ExitCode.NOT_WRITTEN;
          case FAULT -> ExitCode.FAULT;
          default -> ExitCode.REFUSED;
        };
  }
}
