package meadcell.batch.command;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import meadcell.batch.ExitCode;
import meadcell.batch.book.Book;
import meadcell.batch.book.Books;
import meadcell.batch.book.Encryption;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.SafeFile;
import meadcell.batch.calculation.PoiFunctions;
import meadcell.batch.plan.PlanMistake;
import meadcell.batch.report.Report;
import meadcell.batch.report.ReportSheet;
import meadcell.cellar.Cellar;
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

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Folder for the results; the workbooks themselves stay as they are.")
  private Path out;

  @Option(
      names = "--in-place",
      description = "Change the workbooks themselves; each keeps a copy with .bak behind its name.")
  private boolean inPlace;

  @Option(names = "--force", description = "Replace a different file of the same name in --out.")
  private boolean force;

  @Option(names = "--dry-run", description = "Report the same, write nothing.")
  private boolean dryRun;

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

  @Option(names = "--no-progress", description = "No progress bar.")
  private boolean noProgress;

  @Mixin InputOptions input;

  @Spec CommandSpec spec;

  /**
   * A workbook in memory.
   *
   * @param secret whether its file is protected by a password
   */
  record Opened(Book book, PoiFunctions functions, String name, boolean secret) {}

  /** What a command did to one workbook in memory. */
  record Work(Report report, boolean changed) {}

  /** Changes one workbook in memory. Called from several threads at once. */
  abstract Work work(Opened workbook) throws PlanMistake;

  /** Looks for mistakes that should stop the run before any workbook is touched. */
  void prepare(List<Path> files) throws IOException, FileRefused, PlanMistake {
    // most commands have nothing to prepare
  }

  /** Gives back what the run needed. */
  void finish() {
    // most commands need nothing
  }

  @Override
  public Integer call() throws Exception {
    checkDestination();
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

  private void checkDestination() throws IOException {
    if (inPlace == (out != null) && !(dryRun && !inPlace)) {
      throw usage("Say where the results go: either --out DIR or --in-place.");
    }
    if (jobs < 1) {
      throw usage("--jobs must be at least 1.");
    }
    Set<Path> targets = new HashSet<>();
    for (Path file : workbooks) {
      if (!targets.add(target(file).toAbsolutePath().normalize())) {
        throw usage("Two workbooks would both become " + target(file) + ".");
      }
      if (out != null
          && Files.exists(target(file))
          && Files.exists(file)
          && Files.isSameFile(target(file), file)) {
        throw usage("--out is the workbook's own folder; use --in-place for that.");
      }
    }
    if (out != null && !dryRun) {
      Files.createDirectories(out);
    }
  }

  private ParameterException usage(String sentence) {
    return new ParameterException(spec.commandLine(), sentence);
  }

  private Path target(Path file) {
    return out == null ? file : out.resolve(file.getFileName());
  }

  // ---- running ----------------------------------------------------------------------------

  private List<FileResult> run() throws InterruptedException, ExecutionException {
    ExecutorService pool = Executors.newFixedThreadPool(jobs);
    try (ProgressBar bar = progressBar()) {
      List<Future<FileResult>> pending = new ArrayList<>();
      for (Path file : workbooks) {
        pending.add(pool.submit(() -> stepped(file, bar)));
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

  private ProgressBar progressBar() {
    boolean shown = !noProgress && workbooks.size() > 1 && System.console() != null;
    return shown
        ? new ProgressBarBuilder()
            .setTaskName(spec.name())
            .setInitialMax(workbooks.size())
            .setStyle(ProgressBarStyle.UNICODE_BLOCK) // without colours
            .setUpdateIntervalMillis(200)
            .build()
        : null;
  }

  private FileResult stepped(Path file, ProgressBar bar) {
    long start = System.nanoTime();
    FileResult result = one(file).after(System.nanoTime() - start);
    if (bar != null) {
      bar.step();
    }
    return result;
  }

  /** One workbook, whatever it may be: nothing that goes wrong here stops the others. */
  private FileResult one(Path file) {
    Path target = target(file);
    try {
      SafeFile.requireUnlocked(file);
      SafeFile.requireUnlocked(target);
      Encryption source = input.read(file);
      String name = file.getFileName().toString();
      PoiFunctions functions = new PoiFunctions(Cellar.catalogue());
      byte[] result = source.clear();
      Work work;
      try (Book book = Books.open(source.clear(), name, functions)) {
        work = work(new Opened(book, functions, name, source.isEncrypted()));
        boolean reported = reportSheet && ReportSheet.write(book, work.report());
        if ((work.changed() || reported) && !dryRun) {
          ByteArrayOutputStream written = new ByteArrayOutputStream(result.length + 4096);
          book.write(written);
          result = written.toByteArray();
        }
      } catch (RuntimeException e) {
        throw Books.damage(e);
      }
      return dryRun
          ? FileResult.of(file, target, FileResult.Status.DRY_RUN, work.report())
          : store(file, target, source, result, work.report());
    } catch (FileRefused | PlanMistake e) {
      return FileResult.failed(file, target, FileResult.Status.REFUSED, e.getMessage());
    } catch (IOException e) {
      return FileResult.failed(
          file, target, FileResult.Status.NOT_WRITTEN, FileTrouble.sentence(e));
    } catch (RuntimeException e) {
      return FileResult.failed(file, target, FileResult.Status.FAULT, "A fault in this tool: " + e);
    } catch (OutOfMemoryError e) {
      return FileResult.failed(
          file,
          target,
          FileResult.Status.REFUSED,
          "The workbook needs more memory; run java with -Xmx8g or more.");
    }
  }

  private FileResult store(Path file, Path target, Encryption source, byte[] result, Report report)
      throws IOException, FileRefused {
    boolean exists = Files.exists(target);
    if (exists && holds(target, result, source)) {
      return FileResult.of(file, target, FileResult.Status.UNCHANGED, report);
    }
    if (exists && !inPlace && !force) {
      return FileResult.failed(
          file,
          target,
          FileResult.Status.NOT_WRITTEN,
          target + " is there already and differs; --force replaces it.");
    }
    byte[] sealed = source.sealed(result);
    SafeFile.write(target, file, inPlace ? freeBackup(file) : null, s -> s.write(sealed));
    return FileResult.of(file, target, FileResult.Status.WRITTEN, report);
  }

  /** Compares what the files hold: the same content is encrypted differently each time. */
  private boolean holds(Path target, byte[] content, Encryption like) {
    try {
      return input.read(target).holds(content, like);
    } catch (FileRefused e) {
      return false; // another password, or no workbook
    }
  }

  private static Path freeBackup(Path file) {
    Path backup = file.resolveSibling(file.getFileName() + ".bak");
    for (int i = 2; Files.exists(backup); i++) {
      backup = file.resolveSibling(file.getFileName() + ".bak" + i);
    }
    return backup;
  }

  private static int exitCode(List<FileResult> results) {
    List<FileResult> failed = results.stream().filter(result -> !result.isDone()).toList();
    if (failed.isEmpty()) {
      return ExitCode.OK;
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
