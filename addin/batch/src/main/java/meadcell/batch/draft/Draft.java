package meadcell.batch.draft;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import meadcell.batch.book.Book;
import meadcell.batch.plan.Concept;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.Unit;

/** One plan for all logs that were surveyed. */
public final class Draft {
  private static final int MOST_TAKEN = 6;

  /** A log, as often as it is to be opened; never stored. */
  public interface Log {
    String name();

    Book open() throws IOException;
  }

  /**
   * A line of the plan with where it is for.
   *
   * @param workbook empty for all
   */
  record Row(String workbook, String sheet, Line line, List<String> doubts, String preview) {
    boolean isSure() {
      return doubts.isEmpty();
    }
  }

  /** A line where it was proposed. */
  private record Proposal(Site site, Line line) {}

  /** How a spelling is to be read, in all logs. */
  private record Spelling(Concept concept, Unit inferred) {
    /** The header as the plan's names have it. */
    String header() {
      boolean isUsual = inferred == null || inferred == concept.scales().get(0).unit();
      return isUsual ? concept.word() : concept.word() + " (" + inferred.word() + ")";
    }
  }

  private final Catalogue catalogue;
  private final List<Log> logs;
  private final List<Site> sites = new ArrayList<>();
  private final List<Proposal> proposals = new ArrayList<>();
  private final List<Unused> unused = new ArrayList<>();
  private final Map<String, Spelling> spellings = new TreeMap<>();
  private final Set<String> used = new LinkedHashSet<>();
  private List<Row> rows = List.of();

  private Draft(List<Log> logs, Catalogue catalogue) {
    this.logs = logs;
    this.catalogue = catalogue;
  }

  /** Drafts a plan for logs; each is opened twice and none is stored. */
  public static Draft of(List<Log> logs, Catalogue catalogue) throws IOException {
    Draft draft = new Draft(logs, catalogue);
    for (Log log : logs) {
      try (Book book = log.open()) {
        Survey survey = Survey.of(log.name(), book, catalogue);
        survey.sites().forEach(draft::propose);
        draft.sites.addAll(survey.sites());
        survey.unused().forEach(draft::unused);
      }
    }
    draft.tellUntaken();
    draft.settle();
    return draft;
  }

  /** Takes the lines of a site whose headers mean the same as elsewhere. */
  private void propose(Site site) {
    for (Line line : Proposals.of(site)) {
      String clash =
          line.takes().stream()
              .filter(input -> !isAsElsewhere(input))
              .map(input -> input.told() + " means something else than in another log or sheet")
              .findFirst()
              .orElse(null);
      boolean isTwice =
          proposals.stream()
              .anyMatch(
                  p ->
                      p.site.log().equals(site.log())
                          && p.site.sheet().equals(site.sheet())
                          && p.line.result().equals(line.result())
                          && !p.line.isSame(line));
      if (clash != null || isTwice) {
        unused.add(
            new Unused(
                site.log(),
                site.sheet(),
                line.result() + " = " + line.formula(),
                clash != null
                    ? clash + "; draft it by itself."
                    : "another table of the sheet has this result by another formula."));
      } else {
        line.takes().forEach(input -> spellings.put(input.name(), spelling(input)));
        proposals.add(new Proposal(site, line));
      }
    }
  }

  /** What was recognised and no line takes. */
  private void tellUntaken() {
    Set<Input> taken = new HashSet<>();
    proposals.forEach(p -> taken.addAll(p.line.takes()));
    for (Site site : sites) {
      site.all()
          .filter(input -> !taken.contains(input) && !input.concept().scales().isEmpty())
          .forEach(
              input ->
                  unused(
                      new Unused(
                          site.log(),
                          input.where(),
                          input.written(),
                          "read as " + input.concept().word() + "; no line needs it here.")));
    }
  }

  private void unused(Unused seen) {
    if (used.add(seen.log() + seen.where() + seen.written())) {
      unused.add(seen);
    }
  }

  private static Spelling spelling(Input input) {
    return new Spelling(input.concept(), input.isUnitWritten() ? null : input.unit());
  }

  private boolean isAsElsewhere(Input input) {
    Spelling here = spelling(input);
    Spelling there = spellings.get(input.name());
    return there == null
        || there.concept == here.concept
            && (Objects.equals(there.inferred, here.inferred)
                || there.inferred == null
                || here.inferred == null);
  }

  private void settle() throws IOException {
    List<Row> first = new ArrayList<>();
    Map<Line, List<Proposal>> byLine = new LinkedHashMap<>();
    proposals.forEach(p -> byLine.computeIfAbsent(p.line, key -> new ArrayList<>()).add(p));
    List<String> results = byLine.keySet().stream().map(Line::result).distinct().toList();
    byLine.entrySet().stream() // a line may use the results of those above it
        .sorted(Comparator.comparingInt(entry -> results.indexOf(entry.getKey().result())))
        .forEach(entry -> first.addAll(rows(entry.getKey(), entry.getValue(), byLine)));
    Preview preview = Preview.of(this, first, logs, catalogue);
    List<Row> narrowed = new ArrayList<>();
    for (Row row : first) {
      if (preview.goesBeyond(row, sheets(row.line))) {
        narrowed.addAll(narrow(row.line, byLine.get(row.line)));
      } else {
        narrowed.add(row);
      }
    }
    Preview second = narrowed.equals(first) ? preview : Preview.of(this, narrowed, logs, catalogue);
    List<Row> kept = new ArrayList<>();
    for (Row row : narrowed) {
      if (second.isAnyFilled(row)) {
        kept.add(second.with(row));
      } else {
        unused.add(
            new Unused(
                row.workbook,
                row.sheet,
                row.line.result() + " = " + row.line.formula(),
                "it gives nothing here. " + second.why(row)));
      }
    }
    rows = kept;
  }

  private Set<String> sheets(Line line) {
    return proposals.stream()
        .filter(p -> p.line.isSame(line))
        .map(p -> p.site.log() + "\n" + p.site.sheet())
        .collect(Collectors.toSet());
  }

  /** For all sheets, where no other line has the same result; else for those it was found on. */
  private List<Row> rows(Line line, List<Proposal> all, Map<Line, List<Proposal>> byLine) {
    boolean isAlone =
        byLine.keySet().stream()
            .noneMatch(other -> other.result().equals(line.result()) && !other.isSame(line));
    return isAlone ? List.of(new Row("", "*", line, doubts(all), "")) : narrow(line, all);
  }

  private List<Row> narrow(Line line, List<Proposal> all) {
    Map<String, Set<String>> logsBySheet = new LinkedHashMap<>();
    all.forEach(
        p ->
            logsBySheet
                .computeIfAbsent(p.site.sheet(), key -> new LinkedHashSet<>())
                .add(p.site.log()));
    List<Row> narrowed = new ArrayList<>();
    logsBySheet.forEach(
        (sheet, in) -> {
          boolean isShared =
              logs.size() > 1
                  && proposals.stream()
                      .anyMatch(
                          p ->
                              p.site.sheet().equals(sheet)
                                  && p.line.result().equals(line.result())
                                  && !p.line.isSame(line));
          for (String log : isShared || logs.size() > 1 ? in : Set.of("")) {
            List<Proposal> here =
                all.stream()
                    .filter(p -> p.site.sheet().equals(sheet))
                    .filter(p -> log.isEmpty() || p.site.log().equals(log))
                    .toList();
            narrowed.add(new Row(log, sheet, line, doubts(here), ""));
          }
        });
    return narrowed;
  }

  private static List<String> doubts(List<Proposal> all) {
    return all.stream().flatMap(p -> p.line.doubts().stream()).distinct().toList();
  }

  List<Row> rows() {
    return rows;
  }

  List<Unused> unused() {
    return unused;
  }

  List<String> logNames() {
    return logs.stream().map(Log::name).toList();
  }

  /** The logs in which a line was proposed. */
  Set<String> logsOf(Row row) {
    return proposals.stream()
        .filter(p -> p.line.isSame(row.line))
        .filter(p -> row.workbook.isEmpty() || row.workbook.equals(p.site.log()))
        .filter(p -> row.sheet.equals("*") || row.sheet.equals(p.site.sheet()))
        .map(p -> p.site.log())
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  /** Where a line found what it takes. */
  String takes(Row row) {
    List<String> all = told(row);
    String first = all.stream().limit(MOST_TAKEN).collect(Collectors.joining("; "));
    return all.size() > MOST_TAKEN ? first + "; and " + (all.size() - MOST_TAKEN) + " more" : first;
  }

  private List<String> told(Row row) {
    return proposals.stream()
        .filter(p -> p.line.isSame(row.line))
        .filter(p -> row.workbook.isEmpty() || row.workbook.equals(p.site.log()))
        .filter(p -> row.sheet.equals("*") || row.sheet.equals(p.site.sheet()))
        .flatMap(p -> p.line.takes().stream().map(i -> told(p.site.log(), i)))
        .distinct()
        .toList();
  }

  private String told(String log, Input input) {
    return (logs.size() > 1 ? log + " " : "") + input.told();
  }

  /** The headers of the plan, each with the spellings that the logs have for it. */
  Map<String, List<String>> names() {
    Map<String, List<String>> names = new LinkedHashMap<>();
    spellings.forEach(
        (spelling, meant) -> {
          String header = meant.header();
          boolean isPlain =
              header.equals(meant.concept.word()) && spelling.equalsIgnoreCase(header);
          if (!isPlain) {
            names.computeIfAbsent(header, key -> new ArrayList<>()).add(spelling);
          }
        });
    return names;
  }

  /** How many lines were drafted. */
  public int size() {
    return rows.size();
  }

  public int sure() {
    return (int) rows.stream().filter(Row::isSure).count();
  }

  public int seenUnused() {
    return unused.size();
  }

  /** What the terminal shows of each line. */
  public List<String> told() {
    return rows.stream()
        .map(
            row ->
                (row.isSure() ? "sure          " : "please check  ")
                    + (row.workbook.isEmpty() ? "" : row.workbook + " ")
                    + row.sheet
                    + "  "
                    + row.line.result()
                    + " = "
                    + row.line.formula())
        .toList();
  }
}
