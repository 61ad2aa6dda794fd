package meadcell.batch.command;

import java.util.ArrayList;
import java.util.List;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.ChangedNumber;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.ReferencePage;
import meadcell.cellar.Cellar;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A function's page, a command's help, or the description of the report file. */
@Command(
    name = "explain",
    header = "Shows the page of a function: arguments, units, ranges, formula, source.",
    description = {"", "Example: meadcell explain BARREL.HEADSPACE"})
public final class Explain implements Runnable {
  private static final int WIDTH = 80;

  @Parameters(
      arity = "1..*",
      paramLabel = "NAME",
      description = "Functions, commands, or report (the file of --report).")
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
        spec.commandLine().getOut().println(page(catalogue.get(name)).text(WIDTH));
      }
    }
  }

  private static ReferencePage page(FunctionSpec function) {
    ReferencePage page = ReferencePage.of(function);
    List<String> changes =
        ChangedNumber.all().stream()
            .filter(change -> change.function().equals(function.name()))
            .map(ChangedNumber::toString)
            .toList();
    if (changes.isEmpty()) {
      return page;
    }
    List<ReferencePage.Section> sections = new ArrayList<>(page.sections());
    sections.add(new ReferencePage.Section("Changed numbers", changes));
    return new ReferencePage(page.title(), sections);
  }
}
