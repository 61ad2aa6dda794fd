package meadcell.release;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import meadcell.batch.Main;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.codegen.docgen.manpage.ManPageGenerator;

/** Completion for shells, and the sources of the manual's pages, all from the commands. */
public final class ShellPages {
  private static final String NAME = "meadcell";

  /** Zsh runs the completion of bash; the first time it calls this, it also wants an answer. */
  private static final String ZSH =
      """
      #compdef meadcell
      (( $+functions[compopt] )) || compopt() { :; } # bash alone has it
      %s
      _bash_complete -o default -F _complete_meadcell
      """;

  private ShellPages() {}

  /** Argument: the folder to write into. */
  public static void main(String[] arguments) throws IOException {
    Path folder = Path.of(arguments[0]);
    PrintWriter nowhere = new PrintWriter(PrintWriter.nullWriter());
    CommandLine commands = Main.commandLine(nowhere, nowhere);
    Path completion = Files.createDirectories(folder.resolve("completion"));
    String bash = AutoComplete.bash(NAME, commands);
    Files.writeString(completion.resolve("meadcell.bash"), bash);
    Files.writeString(completion.resolve("_meadcell"), ZSH.formatted(bash));
    Path manual = Files.createDirectories(folder.resolve("manual"));
    int code =
        ManPageGenerator.generateManPage(
            manual.toFile(), null, new boolean[0], true, commands.getCommandSpec());
    if (code != 0) {
      throw new IOException("the manual was not written: " + code);
    }
  }
}
