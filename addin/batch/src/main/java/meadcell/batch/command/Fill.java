package meadcell.batch.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import meadcell.batch.book.Book;
import meadcell.batch.book.Encryption;
import meadcell.batch.fill.Filler;
import meadcell.batch.fill.Placement;
import meadcell.batch.plan.Plan;
import meadcell.batch.plan.PlanMistake;
import meadcell.batch.plan.PlanRow;
import meadcell.batch.recalc.OfficeResults;
import meadcell.batch.report.Origin;
import meadcell.batch.report.Report;
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
      "A plan is a workbook with a sheet Fill; draft writes one. Its columns are Sheet (a name, or"
          + " a pattern with *), Result (the header of the column, or the label of the cell, to fill), Formula, Format"
          + " (a number format; optional), Workbook (a file's name or a pattern; optional) and Note"
          + " (for people). In a formula [Header] is this"
          + " row's value under that header, [all Header] the whole column, [so far Header] its part"
          + " down to this row, {Label} the value beside or below that label. A formula with a"
          + " [Header] fills a column, any other the labelled cell. A sheet Names may give other spellings: a header, then its spellings."
          + " A line that finds no place in any of the workbooks is listed.",
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

  @Option(
      names = "--date",
      paramLabel = "DATE",
      description =
          "The date to keep in the workbook's properties, beside this tool's version and the plan's"
              + " name and checksum; without it, none.")
  private String date;

  @Mixin private OfficeOption office;

  /** What is put into the cells. */
  enum Written {
    formulas,
    values
  }

  private final Set<PlanRow> somewhere = new HashSet<>();
  private Plan plan;
  private Origin origin;

  @Override
  void prepare(List<Path> files) throws IOException, PlanMistake {
    Encryption content = input.read(planFile);
    String name = planFile.getFileName().toString();
    try (Book book = input.open(content, planFile)) {
      plan = Plan.read(book, name, Cellar.catalogue());
    }
    origin = new Origin(Cellar.version(), name, Sha256.of(content.clear()), date);
    if (files.size() > 1) {
      findPlaces(files);
    }
  }

  /** Which lines of the plan find a place in any of the workbooks. */
  private void findPlaces(List<Path> files) {
    for (Path file : files) {
      try (Book book = input.open(input.read(file), file)) {
        somewhere.addAll(filler(book, name(file), null).place().found());
      } catch (IOException | RuntimeException e) {
        continue; // reported when its turn comes
      }
      if (somewhere.containsAll(plan.rows())) {
        return;
      }
    }
  }

  @Override
  Work work(Opened workbook) {
    Book book = workbook.book();
    Filler.Filled filled = filler(book, workbook.name(), office.resultsFor(workbook, input)).run();
    tellMissing(filled, workbook);
    boolean isNoted = origin.store(book, filled.isChanged());
    return new Work(filled.report(), filled.isChanged() || isNoted);
  }

  /** Lists the lines that find no place, neither here nor in another of the workbooks. */
  private void tellMissing(Filler.Filled filled, Opened workbook) {
    Placement placement = filled.placement();
    boolean isAnyFound = !placement.found().isEmpty();
    for (PlanRow row : plan.forWorkbook(workbook.name()).rows()) {
      boolean isTold = isAnyFound && somewhere.contains(row) || placement.found().contains(row);
      Placement.Missing why = placement.whyMissing(row, workbook.book());
      if (!isTold && !why.isNear()) {
        String sentence = row.result() + " (" + row.where() + " of the plan): " + why.sentence();
        filled.report().remark(Report.Code.NOT_FOUND, "", "", row.formula().toString(), sentence);
      }
    }
  }

  private static String name(Path file) {
    return file.getFileName().toString();
  }

  private Filler filler(Book book, String name, OfficeResults results) {
    return new Filler(
        book,
        plan.forWorkbook(name),
        Cellar.catalogue(),
        new Filler.Options(overwrite, write == Written.values, ignoreProtection, results));
  }

  @Override
  void finish() {
    office.close();
  }
}
