package meadcell.batch.proof;

import static java.util.stream.Collectors.joining;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.CheckRow;
import meadcell.catalogue.Evidence;
import meadcell.catalogue.FamilySpec;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Standing;
import meadcell.catalogue.Words;

/** Every function with its formula and source, every check value and what came out, as a page. */
public final class ProofPage {
  private static final String STYLE =
      """
      body { font: 14px/1.45 sans-serif; color: #1c1c1c; max-width: 70rem; margin: 2rem auto; \
      padding: 0 1rem }
      h2 { border-bottom: 2px solid #6b4e16; margin-top: 2.5rem }
      h3 { margin: 1.8rem 0 0.2rem } h3 + p { margin-top: 0 }
      table { border-collapse: collapse; margin: 0.6rem 0 }
      th, td { border: 1px solid #cfcfcf; padding: 0.15rem 0.5rem; text-align: left; \
      vertical-align: top; overflow-wrap: anywhere }
      th { background: #f3efe6; white-space: nowrap } td.n { text-align: right } td.n, td.k { white-space: nowrap }
      tr.failed td { background: #ffd9d4; font-weight: bold }
      summary { cursor: pointer } dt { font-weight: bold } dd { margin: 0 0 0.3rem 1.5rem }
      svg { display: block; margin: 0.4rem 0 } svg text { font-size: 10px; fill: #444 }
      svg .axis { stroke: #777 } svg .limit { stroke: #b0b0b0; stroke-dasharray: 4 3 }
      .published { fill: #1b5e9b } .worked { fill: #2f7d32 } .practice { fill: #b26a00 } \
      .memory { fill: #b3261e }
      """;

  private static final Map<Evidence, String> MEANING =
      Map.of(
          Evidence.PUBLISHED,
          "a number printed by someone else, at a place that can be found again",
          Evidence.WORKED,
          "by hand or by an independent library, from a published formula",
          Evidence.PRACTICE,
          "a rule of the trade without a source",
          Evidence.MEMORY,
          "recalled, not read: not evidence until it is found in print");

  private static final Comparator<String> BY_NAME =
      String.CASE_INSENSITIVE_ORDER.thenComparing(Comparator.naturalOrder());

  private static final int MOST_WEAK = 20;

  private final Catalogue catalogue;
  private final List<CheckRow.Verdict> verdicts;
  private final List<CheckRow> rows;
  private final List<String> sources;
  private final Html html = new Html();

  private ProofPage(Catalogue catalogue, List<CheckRow.Verdict> verdicts) {
    this.catalogue = catalogue;
    this.verdicts = verdicts;
    this.rows = verdicts.stream().map(CheckRow.Verdict::row).toList();
    this.sources = rows.stream().map(CheckRow::source).distinct().sorted(BY_NAME).toList();
  }

  /**
   * {@return the page}
   *
   * @param catalogue the functions
   * @param verdicts what came out for each check row
   * @param host what it came out on: what, and which
   */
  public static String of(
      Catalogue catalogue, List<CheckRow.Verdict> verdicts, Map<String, String> host) {
    return new ProofPage(catalogue, verdicts).write(host);
  }

  private String write(Map<String, String> host) {
    html.in(
        "html",
        () -> {
          html.in(
              "head",
              () -> {
                html.in("meta", () -> {}, "charset", "UTF-8");
                html.put("title", "Meadcell: what its numbers rest on");
                html.put("style", STYLE);
              });
          html.in("body", () -> body(host));
        },
        "lang",
        "en");
    return html.toString();
  }

  private void body(Map<String, String> host) {
    long holding = verdicts.stream().filter(CheckRow.Verdict::holds).count();
    html.put("h1", "Meadcell: what its numbers rest on");
    html.put("p", holding + " of " + rows.size() + " check values hold: " + CheckRow.totals(rows));
    table(host.entrySet().stream().map(e -> List.of(e.getKey(), e.getValue())).toList());
    html.put("h2", "Kinds of evidence");
    html.in(
        "dl",
        () -> {
          for (Evidence kind : Evidence.values()) {
            html.in("dt", () -> html.put("span", kind.word(), "style", "color:" + colour(kind)));
            html.put("dd", MEANING.get(kind));
          }
        });
    weakest();
    for (FamilySpec family : catalogue.families().values()) {
      html.put("h2", family.name(), "id", family.name());
      html.put("p", family.about(Words.ENGLISH));
      catalogue.functions(family.name()).forEach(this::function);
    }
    bibliography();
  }

  /** Each source once, with what it carries; the rows lead here. */
  private void bibliography() {
    html.put("h2", "Bibliography", "id", "bibliography");
    html.in(
        "ol",
        () -> {
          for (String source : sources) {
            List<CheckRow> carried = rows.stream().filter(r -> r.source().equals(source)).toList();
            String functions =
                carried.stream().map(CheckRow::function).distinct().collect(joining(", "));
            html.put(
                "li",
                source + ": " + CheckRow.totals(carried) + " (" + functions + ")",
                "id",
                key(source));
          }
        });
  }

  private String key(String source) {
    return "source-" + (sources.indexOf(source) + 1);
  }

  private static String colour(Evidence kind) {
    return switch (kind) {
      case PUBLISHED -> "#1b5e9b";
      case WORKED -> "#2f7d32";
      case PRACTICE -> "#b26a00";
      case MEMORY -> "#b3261e";
    };
  }

  private void table(List<List<String>> cells) {
    html.in(
        "table",
        () ->
            cells.forEach(
                row -> html.in("tr", () -> html.put("th", row.get(0)).put("td", row.get(1)))));
  }

  private void weakest() {
    List<Standing> standings = Standing.weakestFirst(rows);
    html.put("h2", "Functions by weakest evidence");
    html.put(
        "p",
        standings.stream().filter(standing -> !standing.isProven()).count()
            + " of "
            + standings.size()
            + " functions have neither a published nor a worked value behind them. The "
            + MOST_WEAK
            + " weakest:");
    html.in(
        "table",
        () -> {
          html.in(
              "tr",
              () -> {
                html.put("th", "Function");
                for (Evidence kind : Evidence.values()) {
                  html.put("th", kind.word());
                }
              });
          standings.stream()
              .limit(MOST_WEAK)
              .forEach(
                  standing ->
                      html.in(
                          "tr",
                          () -> {
                            html.in(
                                "td",
                                () ->
                                    html.put(
                                        "a",
                                        standing.function(),
                                        "href",
                                        "#" + standing.function()));
                            for (Evidence kind : Evidence.values()) {
                              html.put("td", "" + standing.count(kind), "class", "n");
                            }
                          }));
        });
  }

  private void function(FunctionSpec function) {
    List<CheckRow.Verdict> own =
        verdicts.stream().filter(v -> v.row().function().equals(function.name())).toList();
    html.put("h3", function.signature(), "id", function.name());
    html.put("p", function.declaration().summary());
    table(
        List.of(
            List.of("Formula", function.declaration().formula()),
            List.of("Source", function.declaration().source())));
    if (own.isEmpty()) {
      html.put("p", "It answers about other functions; tests of its own hold it.");
      return;
    }
    DeviationPlot plot = new DeviationPlot(own);
    if (plot.showsSomething()) {
      plot.write(html);
    }
    html.in(
        "details",
        () -> {
          html.put(
              "summary",
              own.stream()
                  .map(CheckRow.Verdict::row)
                  .collect(
                      Collectors.collectingAndThen(
                          Collectors.toList(),
                          found -> found.size() + " check values: " + CheckRow.totals(found))));
          values(own);
        });
  }

  private void values(List<CheckRow.Verdict> own) {
    html.in(
        "table",
        () -> {
          html.in(
              "tr",
              () ->
                  List.of(
                          "Call",
                          "Got",
                          "Expected",
                          "Tolerance",
                          "Holds",
                          "Kind",
                          "Source",
                          "Where")
                      .forEach(heading -> html.put("th", heading)));
          for (CheckRow.Verdict verdict : own) {
            CheckRow row = verdict.row();
            html.in(
                "tr",
                () ->
                    html.put("td", row.call())
                        .put("td", verdict.gotText(), "class", "n")
                        .put("td", verdict.expectedText(), "class", "n")
                        .put("td", "" + row.tolerance(), "class", "n")
                        .put("td", verdict.holds() ? "yes" : "NO")
                        .put("td", row.kind().word(), "class", "k")
                        .in(
                            "td",
                            () -> html.put("a", row.source(), "href", "#" + key(row.source())))
                        .put("td", row.where()),
                "class",
                verdict.holds() ? "holds" : "failed");
          }
        });
  }
}
