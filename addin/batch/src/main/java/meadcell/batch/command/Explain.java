package meadcell.batch.command;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import meadcell.batch.draft.PlanPage;
import meadcell.catalogue.CallPage;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.ChangedNumber;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.LiteralCall;
import meadcell.catalogue.ReferencePage;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A function's page, that of one call, a command's help, or the description of the report file. */
@Command(
    name = "explain",
    header = "Shows the page of a function: arguments, units, ranges, formula, source.",
    description = {"", "Example: meadcell explain BARREL.HEADSPACE"})
public final class Explain implements Runnable {
  private static final int WIDTH = 80;
  private static final String PLAN = "plan";

  @Parameters(
      arity = "1..*",
      paramLabel = "NAME",
      description =
          "Functions, calls with numbers in them, commands, report (the file of --report), or plan"
              + " (the workbook that fill takes).")
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
      if (name.equals(PLAN)) {
        PlanPage.lines().forEach(line -> spec.commandLine().getOut().println(wrapped(line)));
        continue;
      }
      CommandLine command = tool.getSubcommands().get(name);
      if (command != null) {
        command.usage(spec.commandLine().getOut());
      } else {
        ReferencePage page = name.indexOf('(') < 0 ? page(catalogue.get(name)) : call(name);
        spec.commandLine().getOut().println(page.text(WIDTH));
      }
    }
  }

  /** A paragraph in lines, with a blank one behind it. */
  private static String wrapped(String paragraph) {
    StringBuilder text = new StringBuilder();
    int length = 0;
    for (String word : paragraph.split(" ")) {
      boolean isFull = length + word.length() >= WIDTH;
      text.append(length == 0 ? "" : isFull ? System.lineSeparator() : " ").append(word);
      length = isFull || length == 0 ? word.length() : length + 1 + word.length();
    }
    return text.append(System.lineSeparator()).toString();
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

  /** What a call with numbers in it was given and gives. */
  private ReferencePage call(String text) {
    LiteralCall call;
    try {
      call = LiteralCall.parse(text);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage(), e);
    }
    return CallPage.of(
        Cellar.catalogue().get(call.function()),
        Arrays.stream(call.arguments()).map(CallPage.Given::constant).toList(),
        CallPage.Chosen.FIRST,
        Words.ENGLISH);
  }
}
