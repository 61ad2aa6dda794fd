package meadcell.batch;

import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import meadcell.batch.book.FileRefused;
import meadcell.batch.command.Check;
import meadcell.batch.command.Drafting;
import meadcell.batch.command.Drop;
import meadcell.batch.command.Eval;
import meadcell.batch.command.Explain;
import meadcell.batch.command.Fault;
import meadcell.batch.command.FileTrouble;
import meadcell.batch.command.Fill;
import meadcell.batch.command.FirstSteps;
import meadcell.batch.command.Freeze;
import meadcell.batch.command.Functions;
import meadcell.batch.command.Recalc;
import meadcell.batch.command.Samples;
import meadcell.batch.command.SelfCheck;
import meadcell.batch.command.Thaw;
import meadcell.batch.plan.PlanMistake;
import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The command line of the batch tool. */
@Command(
    name = "meadcell",
    scope = CommandLine.ScopeType.INHERIT,
    mixinStandardHelpOptions = true,
    versionProvider = Main.Version.class,
    usageHelpAutoWidth = true,
    synopsisSubcommandLabel = "COMMAND",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:all done",
      "1:a fault in the tool itself",
      "2:the command line was not understood",
      "3:some files failed, the others are done",
      "4:input was refused",
      "5:an output was not written",
      "6:a check failed",
      "7:something was left or not filled: nothing at all, or, with --strict, anything"
    })
public final class Main implements Runnable {
  @Option(
      names = "--debug",
      scope = CommandLine.ScopeType.INHERIT,
      description = "Show where in the program a failure happened.")
  @SuppressWarnings("UnusedVariable")
  private boolean debug; // read by Fault

  /** Shown by {@code --version}. */
  static final class Version implements CommandLine.IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {"meadcell " + Cellar.version()};
    }
  }

  @Spec private CommandLine.Model.CommandSpec spec;

  private Main() {}

  @Override
  public void run() {
    spec.commandLine().getOut().println(FirstSteps.TEXT);
  }

  /** Every command by its name, in the order of the help. */
  private static final Map<String, Supplier<Object>> COMMANDS = commands();

  private static final Set<String> SPEAK_OF_OTHERS = Set.of("drop", "explain", "help");

  private static Map<String, Supplier<Object>> commands() {
    Map<String, Supplier<Object>> commands = new LinkedHashMap<>();
    commands.put("draft", Drafting::new);
    commands.put("fill", Fill::new);
    commands.put("recalc", Recalc::new);
    commands.put("freeze", Freeze::new);
    commands.put("thaw", Thaw::new);
    commands.put("check", Check::new);
    commands.put("eval", Eval::new);
    commands.put("functions", Functions::new);
    commands.put("explain", Explain::new);
    commands.put("selfcheck", SelfCheck::new);
    commands.put("samples", Samples::new);
    commands.put("drop", Drop::new);
    commands.put("help", CommandLine.HelpCommand::new);
    return commands;
  }

  /** The whole tool, ready to run; {@code out} and {@code err} are where it writes. */
  public static CommandLine commandLine(PrintWriter out, PrintWriter err) {
    return commandLine(out, err, COMMANDS.keySet());
  }

  /** The tool with some of its commands: setting up all of them takes longer than a short run. */
  private static CommandLine commandLine(PrintWriter out, PrintWriter err, Set<String> names) {
    CommandLine commands = new CommandLine(new Main());
    names.forEach(name -> commands.addSubcommand(name, COMMANDS.get(name).get()));
    commands.registerConverter(Path.class, Main::path);
    commands.setOut(out);
    commands.setErr(err);
    commands.setParameterExceptionHandler(
        (exception, args) -> {
          err.println("meadcell: " + exception.getMessage());
          CommandLine.UnmatchedArgumentException.printSuggestions(exception, err);
          CommandLine.Model.CommandSpec command = exception.getCommandLine().getCommandSpec();
          err.println("\"" + command.qualifiedName() + " --help\" has the rest.");
          return ExitCode.USAGE;
        });
    commands.setExecutionExceptionHandler(
        (exception, command, parsed) -> {
          err.println("meadcell: " + sentence(exception, command.getCommandSpec()));
          return code(exception);
        });
    return commands;
  }

  private static String sentence(Exception exception, CommandLine.Model.CommandSpec command) {
    if (exception instanceof UncheckedIOException late) {
      return FileTrouble.sentence(late.getCause());
    }
    if (exception instanceof IOException trouble) {
      return FileTrouble.sentence(trouble);
    }
    boolean refused = exception instanceof Refusal || exception instanceof PlanMistake;
    return refused ? exception.getMessage() : Fault.sentence(exception, command);
  }

  private static int code(Exception exception) {
    if (exception instanceof UncheckedIOException late) {
      return code(late.getCause());
    }
    if (exception instanceof IOException trouble) {
      boolean isInput = trouble instanceof FileRefused || trouble instanceof NoSuchFileException;
      return isInput ? ExitCode.REFUSED : ExitCode.NOT_WRITTEN;
    }
    boolean refused = exception instanceof Refusal || exception instanceof PlanMistake;
    return refused ? ExitCode.REFUSED : ExitCode.FAULT;
  }

  public static void main(String[] args) {
    System.exit(SecondJava.run(args).orElseGet(() -> execute(args)));
  }

  private static int execute(String[] args) {
    PrintWriter out = writer(System.out);
    PrintWriter err = writer(System.err);
    int code = commandLine(out, err, needed(args)).execute(dropped(args));
    out.flush();
    err.flush();
    return code;
  }

  /**
   * A file where a command is due was dropped on the program's icon; where the icon has a start of
   * its own, that says so.
   */
  private static String[] dropped(String[] args) {
    boolean isFile =
        args.length > 0 && !COMMANDS.containsKey(args[0]) && new File(args[0]).exists();
    Stream<String> before =
        Boolean.getBoolean("meadcell.icon")
            ? Stream.of("drop", "--window")
            : isFile ? Stream.of("drop") : Stream.empty();
    return Stream.concat(before, Stream.of(args)).toArray(String[]::new);
  }

  /** The command that is called, alone unless it speaks of the others. */
  private static Set<String> needed(String[] args) {
    String called = args.length == 0 ? "" : args[0];
    boolean isAlone = COMMANDS.containsKey(called) && !SPEAK_OF_OTHERS.contains(called);
    return isAlone ? Set.of(called) : COMMANDS.keySet();
  }

  /** A file name; where the locale knows only ASCII, Java can make none of an umlaut. */
  private static Path path(String name) {
    try {
      return Path.of(name);
    } catch (InvalidPathException e) {
      throw new CommandLine.TypeConversionException(
          "this name has letters that the locale of the terminal does not know; set LC_ALL=C.UTF-8,"
              + " or another locale with UTF-8, and try again");
    }
  }

  /** The terminal's own encoding; UTF-8 where the locale knows only ASCII, so that ° survives. */
  private static PrintWriter writer(PrintStream stream) {
    Charset terminal = Charset.forName(System.getProperty("native.encoding", "UTF-8"));
    Charset used = terminal.equals(StandardCharsets.US_ASCII) ? StandardCharsets.UTF_8 : terminal;
    return new PrintWriter(stream, false, used);
  }
}
