package meadcell.batch.command;

import picocli.CommandLine.Model.CommandSpec;

/** A failure of the tool itself: told to its user, shown only to programmers. */
public final class Fault {
  private Fault() {}

  /** The user's sentence; {@code --debug} prints where it happened. */
  public static String sentence(Throwable failure, CommandSpec command) {
    boolean debug = command.root().findOption("--debug").getValue();
    if (debug) {
      failure.printStackTrace(command.commandLine().getErr());
    }
    return "A fault in this tool stopped the work; --debug shows where it happened.";
  }
}
