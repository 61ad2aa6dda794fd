package meadcell.batch.command;

/** What people do first. */
public final class FirstSteps {
  /** Shown to who names no command. */
  public static final String TEXT =
      """
      Cellar arithmetic for the spreadsheets that a cellar keeps. Three things to begin with:

      A number: the litres in a barrel of 50 cm head, 64 cm bilge and 81 cm length
        meadcell eval "BARREL.VOLUME(50;64;81)"

      An old log: a plan is drafted beside it; once you have looked at that, the same fills the log
        meadcell drop my-log.xlsx

      Workbooks to learn from, in a folder of their own
        meadcell samples try-it

      "meadcell --help" lists all commands, "meadcell explain BARREL.VOLUME" shows a function's page.
      """;

  private FirstSteps() {}
}
