package meadcell.batch.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import meadcell.batch.ExitCode;
import meadcell.batch.book.Book;
import meadcell.batch.book.Encryption;
import meadcell.batch.book.SafeFile;
import meadcell.batch.draft.Draft;
import meadcell.batch.draft.PlanBook;
import meadcell.cellar.Cellar;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A plan for logs of any layout. */
@Command(
    name = "draft",
    header = "Reads logs and writes a plan for them, to look through and give to fill.",
    description = {
      "",
      "Example: meadcell draft logs/*.xlsx --plan my-plan.xlsx",
      "",
      "Finds tables and labelled cells by the trade's words in English and German, their units and"
          + " their values, and proposes the lines that these allow: true gravity, strength, sugar"
          + " left, progress, state, headspace, contents, loss, molecular SO2, the honey's gravity."
          + " Each line says why, where it found what it takes, what it gives in the first rows, and"
          + " is marked sure or please check. What was seen and not used is listed with its cells."
          + " The logs are never written to. Several logs get one plan; it says which lacks what.",
      "",
      "Look through the plan, change or delete what is not right, then:"
          + " meadcell fill logs/*.xlsx --plan my-plan.xlsx --out filled",
      "",
      "Ends with 7, and writes no plan, if no line can be drafted.",
      ""
    })
public final class Drafting implements Callable<Integer> {
  private static final int SHOWN = 40;

  @Parameters(arity = "0..*", paramLabel = "LOG", description = "The logs.")
  private List<Path> logs = List.of();

  @Option(names = "--plan", required = true, paramLabel = "NEW-PLAN", description = "The plan.")
  private Path plan;

  @Option(names = "--empty", description = "Write a plan with examples, without a log.")
  private boolean empty;

  @Option(names = "--force", description = "Replace a file of that name.")
  private boolean force;

  @Mixin private InputOptions input;

  @Spec private CommandSpec spec;

  /** A log as it was read. */
  private record Read(Path file, Encryption content, InputOptions input) implements Draft.Log {
    @Override
    public String name() {
      return file.getFileName().toString();
    }

    @Override
    public Book open() throws IOException {
      return input.open(content, file);
    }
  }

  @Override
  public Integer call() throws IOException {
    if (empty == !logs.isEmpty()) {
      throw new ParameterException(
          spec.commandLine(), "Name the logs, or ask for a plan without any by --empty.");
    }
    if (!plan.getFileName().toString().toLowerCase(java.util.Locale.ROOT).endsWith(".xlsx")) {
      throw new ParameterException(spec.commandLine(), "The plan's name must end with .xlsx.");
    }
    if (Files.exists(plan) && !force) {
      spec.commandLine().getErr().println(plan + " is there already; --force replaces it.");
      return ExitCode.NOT_WRITTEN;
    }
    requireOther();
    PrintWriter out = spec.commandLine().getOut();
    if (empty) {
      SafeFile.write(plan, plan.toAbsolutePath().getParent(), null, PlanBook::writeEmpty);
      out.println(plan + ": a plan with two examples; \"meadcell explain plan\" says more.");
      return ExitCode.OK;
    }
    List<Draft.Log> read = read();
    if (read.isEmpty()) {
      return ExitCode.REFUSED;
    }
    Draft draft = Draft.of(read, Cellar.catalogue());
    if (draft.size() == 0) {
      out.println(
          "Nothing was drafted: no table or label says by its name, unit and values together what a"
              + " cellar function takes. No plan was written.");
      return ExitCode.LEFT;
    }
    SafeFile.write(plan, logs.get(0), null, content -> PlanBook.write(draft, content));
    out.println(
        plan
            + ": "
            + draft.size()
            + (draft.size() == 1 ? " line, " : " lines, ")
            + draft.sure()
            + " sure, "
            + (draft.size() - draft.sure())
            + " to check; "
            + draft.seenUnused()
            + " seen and not used");
    draft.told().stream().limit(SHOWN).forEach(line -> out.println("  " + line));
    if (draft.size() > SHOWN) {
      out.println("  … and " + (draft.size() - SHOWN) + " more in the plan");
    }
    return read.size() < logs.size() ? ExitCode.SOME_FAILED : ExitCode.OK;
  }

  /** A plan is never written over a log. */
  private void requireOther() throws IOException {
    Set<String> names = new HashSet<>();
    for (Path log : logs) {
      if (Files.exists(plan) && Files.exists(log) && Files.isSameFile(plan, log)) {
        throw new ParameterException(
            spec.commandLine(), "The plan would replace the log " + log + ".");
      }
      if (!names.add(log.getFileName().toString())) {
        throw new ParameterException(
            spec.commandLine(),
            "Two logs are called "
                + log.getFileName()
                + "; a plan tells logs by their names. Draft them one after the other.");
      }
    }
  }

  private List<Draft.Log> read() {
    List<Draft.Log> read = new ArrayList<>();
    for (Path log : logs) {
      try {
        Read one = new Read(log, input.read(log), input);
        one.open().close(); // what cannot be opened is told, and the others are drafted
        read.add(one);
      } catch (IOException e) {
        tell(log, FileTrouble.sentence(e));
      } catch (UncheckedIOException e) {
        tell(log, FileTrouble.sentence(e.getCause()));
      }
    }
    return read;
  }

  private void tell(Path log, String sentence) {
    spec.commandLine().getErr().println(log + ": refused. " + sentence);
  }
}
