package meadcell.batch;

/** What the process ends with; listed in every command's help. */
public final class ExitCode {
  public static final int OK = 0;
  public static final int FAULT = 1;
  public static final int USAGE = 2;
  public static final int SOME_FAILED = 3;
  public static final int REFUSED = 4;
  public static final int NOT_WRITTEN = 5;
  public static final int CHECK_FAILED = 6;

  /** Something was left or not filled: always where nothing was filled, else with --strict. */
  public static final int LEFT = 7;

  private ExitCode() {}
}
