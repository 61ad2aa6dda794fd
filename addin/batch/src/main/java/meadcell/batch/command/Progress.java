package meadcell.batch.command;

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
