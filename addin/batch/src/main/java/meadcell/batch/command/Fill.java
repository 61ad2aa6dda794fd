package meadcell.batch.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import meadcell.batch.book.Book;
import meadcell.batch.book.Encryption;
import meadcell.batch.fill.Filler;
import meadcell.batch.fill.Placement;
import meadcell.batch.plan.Plan;
import meadcell.batch.plan.PlanMistake;
import meadcell.batch.plan.PlanRow;
import meadcell.batch.recalc.OfficeResults;
import meadcell.batch.report.Origin;
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
          + " (a number format; optional) and Note (for people). In a formula [Header] is this"
          + " row's value under that header, [all Header] the whole column, {Label} the value"
          + " beside or below that label. A formula with a [Header] fills a column, any other the"
          + " labelled cell. A sheet Names may give other spellings: a header, then its spellings."
          + " Each line of the plan must find its place in at least one of the workbooks.",
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
    if (files.size() == 1) {
      return; // the one workbook is checked before it is written
    }
    Map<PlanRow, Placement.Missing> missing = new LinkedHashMap<>();
    boolean anyRead = false;
    for (Path file : files) {
      try (Book book = input.open(input.read(file), file)) {
        Placement placement = filler(book, null).place();
        missing = missing(placement, anyRead ? missing : null);
        anyRead = true;
      } catch (IOException | RuntimeException e) {
        continue; // reported when its turn comes
      }
      if (missing.isEmpty()) {
        return;
      }
    }
    requireNone(missing);
  }

  /**
   * The lines that found no place.
   *
   * @param before those that found none in other workbooks; null where there is no other
   */
  private Map<PlanRow, Placement.Missing> missing(
      Placement placement, Map<PlanRow, Placement.Missing> before) {
    Map<PlanRow, Placement.Missing> missing = new LinkedHashMap<>();
    for (PlanRow row : before == null ? plan.rows() : before.keySet()) {
      if (!placement.found().contains(row)) {
        Placement.Missing why = placement.whyMissing(row);
        missing.put(row, before != null && before.get(row).isNear() ? before.get(row) : why);
      }
    }
    return missing;
  }

  private static void requireNone(Map<PlanRow, Placement.Missing> missing) throws PlanMistake {
    if (!missing.isEmpty()) {
      PlanRow first = missing.keySet().iterator().next();
      throw new PlanMistake(first.where(), missing.get(first).sentence());
    }
  }

  @Override
  Work work(Opened workbook) throws PlanMistake {
    Filler.Filled filled = filler(workbook.book(), office.resultsFor(workbook, input)).run();
    if (workbooks().size() == 1) {
      requireNone(missing(filled.placement(), null));
    }
    boolean isNoted = origin.store(workbook.book(), filled.isChanged());
    return new Work(filled.report(), filled.isChanged() || isNoted);
  }

  private Filler filler(Book book, OfficeResults results) {
    return new Filler(
        book,
        plan,
        Cellar.catalogue(),
        new Filler.Options(overwrite, write == Written.values, ignoreProtection, results));
  }

  @Override
  void finish() {
    office.close();
  }
}
