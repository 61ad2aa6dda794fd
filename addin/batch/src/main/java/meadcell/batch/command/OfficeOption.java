package meadcell.batch.command;

import java.util.Map;
import java.util.Stack;
import meadcell.batch.recalc.OfficeResults;
import meadcell.office.Office;
import picocli.CommandLine.IParameterPreprocessor;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** The help of an office, if it is asked for. */
final class OfficeOption implements AutoCloseable {
  private static final String PROGRAM = "soffice";

  private Office office;

  @Option(
      names = "--with-office",
      arity = "0..1",
      paramLabel = "PROGRAM",
      fallbackValue = PROGRAM,
      preprocessor = OnlyAttached.class,
      description =
          "Have an installed LibreOffice compute the formulas that rest on the cellar functions and"
              + " cannot be computed here. It gets a copy, without windows, and a profile of its"
              + " own; no extension is needed. PROGRAM is its command, if not ${FALLBACK-VALUE}.")
  void program(String program) {
    office = new Office(program);
  }

  /** A word behind the option is a workbook; a program is given with = only. */
  static final class OnlyAttached implements IParameterPreprocessor {
    @Override
    public boolean preprocess(
        Stack<String> args, CommandSpec command, ArgSpec option, Map<String, Object> info) {
      if (" ".equals(info.get("separator"))) {
        args.push(PROGRAM);
      }
      return false;
    }
  }

  /** The office's results for one workbook, or null where none are wanted. */
  OfficeResults resultsFor(WorkbookCommand.Opened workbook, InputOptions input) {
    return office == null
        ? null
        : new OfficeResults(office, workbook.name(), workbook.secret(), input.limits());
  }

  @Override
  public void close() {
    if (office != null) {
      office.close();
    }
  }
}
