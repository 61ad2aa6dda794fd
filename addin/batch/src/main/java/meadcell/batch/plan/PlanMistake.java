package meadcell.batch.plan;

/** Something wrong in a plan; stops the run before any workbook is touched. */
public final class PlanMistake extends Exception {
  private static final long serialVersionUID = 1;

  public PlanMistake(String where, String sentence) {
    super("Plan, " + where + ": " + sentence);
  }
}
