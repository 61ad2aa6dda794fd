package meadcell.batch.command;

import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import meadcell.batch.ExitCode;
import meadcell.batch.calculation.Calculator;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.CheckRow;
import meadcell.cellar.Cellar;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Every shipped check value through the same evaluator that fills workbooks. */
@Command(
    name = "selfcheck",
    header = "Computes every check value and compares.",
    description = {
      "",
      "Example: meadcell selfcheck",
      "",
      "Prints one line for each value: verdict, call, got, expected, tolerance, kind, source,"
          + " where. Published: a number printed by someone else. Worked: by hand or by an"
          + " independent library, from a published formula. Practice: a rule of the trade without"
          + " a source. Memory: recalled, not read. Ends with 0 only if all hold."
    })
public final class SelfCheck implements Callable<Integer> {
  @Option(names = "--failed", description = "Print only what does not hold.")
  private boolean failedOnly;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() {
    Catalogue catalogue = Cellar.catalogue();
    Calculator calculator = new Calculator(catalogue);
    PrintWriter out = spec.commandLine().getOut();
    List<CheckRow> rows = CheckRow.load(catalogue);
    int holding = 0;
    for (CheckRow row : rows) {
      CheckRow.Verdict verdict = calculator.check(row);
      holding += verdict.holds() ? 1 : 0;
      if (!failedOnly || !verdict.holds()) {
        out.println(
            String.join(
                "\t",
                verdict.holds() ? "ok" : "FAILED",
                row.call(),
                "got " + verdict.gotText(),
                "expected " + verdict.expectedText(),
                "± " + row.tolerance(),
                row.kind().word(),
                row.source(),
                row.where()));
      }
    }
    out.println(holding + " of " + rows.size() + " check values hold: " + CheckRow.totals(rows));
    return holding == rows.size() ? ExitCode.OK : ExitCode.CHECK_FAILED;
  }
}
