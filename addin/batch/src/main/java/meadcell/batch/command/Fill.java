package meadcell.batch.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import meadcell.batch.book.Book;
import meadcell.batch.book.Books;
import meadcell.batch.book.FileRefused;
import meadcell.batch.calculation.PoiFunctions;
import meadcell.batch.fill.Filler;
import meadcell.batch.plan.Plan;
import meadcell.batch.plan.PlanMistake;
import meadcell.batch.plan.PlanRow;
import meadcell.batch.recalc.OfficeResults;
import meadcell.cellar.Cellar;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Computed columns and cells for logs that have none, or old ones. */
@Command(
    name = "fill",
    header = "Fills computed columns and cells of existing workbooks, by a plan.",
    description = {
      "",
      "Example: meadcell fill old-log.xlsx --plan old-log-plan.xlsx --out filled",
      "",
      "A plan is a workbook with a sheet Fill. Its columns are Sheet (a name, or a pattern with *),"
          + " Result (the header of the column, or the label of the cell, to fill), Formula, Format"
          + " (a number format; optional) and Note (for people). In a formula [Header] is this row's"
          + " value under that header, [all Header] the whole column, {Label} the value beside or"
          + " below that label. A formula with a [Header] fills a column, any other the labelled"
          + " cell. A sheet Names may give other spellings: a header, then its spellings. Each line"
          + " of the plan must find its place in at least one of the workbooks.",
      "",
      "A unit in a header, as in Temp (°F) or Vol (gal), is converted to the one that the function"
          + " takes. Readings typed as text (1.085 sg, 78F, 18,5) are read where they can mean only"
          + " one thing, and the cell gets a note; otherwise the result stays empty and a note says"
          + " why. What a person typed is never overwritten unless --overwrite says so.",
      ""
    })
public final class Fill extends WorkbookCommand {
  @Option(names = "--plan", required = true, paramLabel = "PLAN", description = "The plan.")
  private Path planFile;

  @Option(names = "--overwrite", description = "Also replace what a person typed.")
  private boolean overwrite;

  @Option(
      names = "--write",
      paramLabel = "WHAT",
      description = "${COMPLETION-CANDIDATES} (default: ${DEFAULT-VALUE}).")
  private Written write = Written.formulas;

  @Option(names = "--ignore-protection", description = "Also fill protected sheets.")
  private boolean ignoreProtection;

  @Mixin private OfficeOption office;

  /** What is put into the cells. */
  enum Written {
    formulas,
    values
  }

  private Plan plan;

  @Override
  void prepare(List<Path> files) throws IOException, FileRefused, PlanMistake {
    plan = Plan.read(planFile, Cellar.catalogue());
    if (files.size() == 1) {
      return; // the one workbook is checked before it is written
    }
    Map<PlanRow, String> missing = new LinkedHashMap<>();
    plan.rows().forEach(row -> missing.put(row, ""));
    boolean anyRead = false;
    for (Path file : files) {
      if (missing.isEmpty()) {
        return;
      }
      PoiFunctions functions = new PoiFunctions(Cellar.catalogue());
      try (Book book =
          Books.open(input.read(file).clear(), file.getFileName().toString(), functions)) {
        Filler filler = filler(book, functions, null);
        filler.find();
        anyRead = true;
        missing.keySet().removeAll(filler.found());
        missing.replaceAll(
            (row, said) -> said.contains("Did you mean") ? said : filler.whyNotFound(row));
      } catch (IOException | FileRefused | RuntimeException e) {
        continue; // reported when its turn comes
      }
    }
    if (anyRead) {
      requireNone(missing);
    }
  }

  private static void requireNone(Map<PlanRow, String> missing) throws PlanMistake {
    if (!missing.isEmpty()) {
      PlanRow first = missing.keySet().iterator().next();
      throw new PlanMistake(first.where(), missing.get(first));
    }
  }

  @Override
  Work work(Opened workbook) throws PlanMistake {
    Filler filler = filler(workbook.book(), workbook.functions(), office.resultsFor(workbook));
    var report = filler.run();
    if (workbooks().size() == 1) {
      Map<PlanRow, String> missing = new LinkedHashMap<>();
      for (PlanRow row : plan.rows()) {
        if (!filler.found().contains(row)) {
          missing.put(row, filler.whyNotFound(row));
        }
      }
      requireNone(missing);
    }
    return new Work(report, filler.isChanged());
  }

  private Filler filler(Book book, PoiFunctions functions, OfficeResults results) {
    return new Filler(
        book,
        plan,
        functions,
        new Filler.Options(overwrite, write == Written.values, ignoreProtection, results));
  }

  @Override
  void finish() {
    office.close();
  }
}
