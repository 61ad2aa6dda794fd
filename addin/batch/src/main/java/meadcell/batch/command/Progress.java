package meadcell.batch.command;

import java.io.Console;
import java.io.PrintStream;

/** One line that counts, for a person at a terminal. */
final class Progress implements AutoCloseable {
  private final PrintStream terminal;
  private final String task;
  private final int all;
  private int done;

  Progress(PrintStream terminal, String task, int all) {
    this.terminal = terminal;
    this.task = task;
    this.all = all;
    show();
  }

  /** Whether a person looks on. */
  @SuppressWarnings("SystemConsoleNull") // from Java 22 on, a console that may be no terminal
  static boolean isWatched() {
    Console console = System.console();
    try {
      return console != null && (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (NoSuchMethodException e) {
      return true; // before Java 22 every console is a terminal
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  /** One more is done. */
  synchronized void step() {
    done++;
    show();
  }

  private void show() {
    terminal.print("\r" + task + ": " + done + " of " + all);
    terminal.flush();
  }

  @Override
  public synchronized void close() {
    terminal.println();
  }
}
