package meadcell.batch.command;

import java.util.Arrays;
import java.util.List;
import meadcell.catalogue.CallPage;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.LiteralCall;
import meadcell.catalogue.ReferencePage;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A function's page, that of one call, a command's help, or the description of the report file. */
@Command(
    name = "explain",
    header = "Shows the page of a function: arguments, units, ranges, formula, source.",
    description = {"", "Example: meadcell explain BARREL.HEADSPACE"})
public final class Explain implements Runnable {
  private static final int WIDTH = 80;

  @Parameters(
      arity = "1..*",
      paramLabel = "NAME",
      description =
          "Functions, calls with numbers in them, commands, or report (the file of --report).")
  private List<String> names;

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    CommandLine tool = spec.commandLine().getParent();
    Catalogue catalogue = Cellar.catalogue();
    for (String name : names) {
      if (name.equals(JsonReport.NAME)) {
        spec.commandLine().getOut().println(JsonReport.page());
        continue;
      }
      CommandLine command = tool.getSubcommands().get(name);
      if (command != null) {
        command.usage(spec.commandLine().getOut());
      } else {
        spec.commandLine().getOut().println(page(catalogue, name).text(WIDTH));
      }
    }
  }

  private static ReferencePage page(Catalogue catalogue, String name) {
    if (name.indexOf('(') < 0) {
      return ReferencePage.of(catalogue.get(name));
    }
    LiteralCall call = LiteralCall.parse(name);
    return CallPage.of(
        catalogue.get(call.function()),
        Arrays.stream(call.arguments()).map(CallPage.Given::constant).toList(),
        CallPage.Chosen.FIRST,
        Words.ENGLISH);
  }
}
