package meadcell.batch.draft;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Place;
import meadcell.batch.freeze.Keeping;
import meadcell.batch.layout.Ambiguous;
import meadcell.batch.layout.Grid;
import meadcell.batch.layout.Headings;
import meadcell.batch.layout.Headings.Heading;
import meadcell.batch.layout.Labels;
import meadcell.batch.layout.Table;
import meadcell.batch.layout.Tables;
import meadcell.batch.plan.Concept;
import meadcell.batch.plan.Header;
import meadcell.batch.plan.Names;
import meadcell.batch.plan.Vocabulary;
import meadcell.batch.plan.Vocabulary.Meaning;
import meadcell.batch.report.ReportSheet;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.Unit;

/** Looks through one log for what the trade's words and the values below them say together. */
final class Survey {
  private static final String OTHER_TRADE =
      "its gravities do not fall as a ferment's do, and no other word of a cellar stands by them;"
          + " write the original gravity beside the table if they are a mead's.";

  private static final String OF_HYDROMETER =
      "so low only a hydrometer reads, for a refractometer reads alcohol, too; is it one?";

  private final String log;
  private final Catalogue catalogue;
  private final List<Site> sites = new ArrayList<>();
  private final List<Unused> unused = new ArrayList<>();

  private Survey(String log, Catalogue catalogue) {
    this.log = log;
    this.catalogue = catalogue;
  }

  static Survey of(String log, Book book, Catalogue catalogue) {
    Survey survey = new Survey(log, catalogue);
    for (BookSheet sheet : book.sheets()) {
      if (!ReportSheet.is(sheet.name()) && !Keeping.isPlace(sheet.name())) {
        survey.look(sheet);
      }
    }
    return survey;
  }

  List<Site> sites() {
    return sites;
  }

  /** What was seen that no input was made of. */
  List<Unused> unused() {
    return unused;
  }

  private void look(BookSheet sheet) {
    Names names = new Names();
    Grid grid = new Grid(sheet, false);
    Headings headings = new Headings(grid, names);
    List<Table> tables = new ArrayList<>();
    Set<Place> headers = new HashSet<>();
    List<Map<Concept, Input>> found =
        new ArrayList<>(tables(sheet, grid, headings, names, tables, headers));
    if (found.isEmpty() && Grid.mayTurn(sheet)) {
      Grid turned = new Grid(sheet, true);
      found.addAll(tables(sheet, turned, new Headings(turned, names), names, tables, headers));
    }
    List<Input> labels = labels(sheet, headings, names, headers, tables);
    for (int i = 0; i < found.size(); i++) {
      if (isOfAnotherTrade(found.get(i), labels)) {
        found.get(i).values().forEach(input -> unused(input, OTHER_TRADE));
        found.set(i, Map.of());
      }
      sites.add(new Site(log, sheet.name(), found.get(i), serving(labels, tables.get(i))));
    }
    if (found.isEmpty() && !labels.isEmpty() || found.stream().allMatch(Map::isEmpty)) {
      sites.add(new Site(log, sheet.name(), Map.of(), Site.byConcept(labels)));
    } else if (!labels.isEmpty()) {
      sites.add(new Site(log, sheet.name(), Map.of(), unique(labels)));
    }
  }

  /** Gravities are measured of batteries and of sea water, too. */
  private static boolean isOfAnotherTrade(Map<Concept, Input> table, List<Input> labels) {
    Input gravity = table.get(Concept.GRAVITY);
    return gravity != null
        && gravity.unit() == Unit.GRAVITY
        && !gravity.falls()
        && table.keySet().stream().noneMatch(Concept::isOfCellars)
        && labels.stream().map(Input::concept).noneMatch(Concept::isOfCellars);
  }

  /** Of labels that stand more than once none can be taken without a table below it. */
  private static Map<Concept, Input> unique(List<Input> labels) {
    Map<Concept, List<Input>> all = labels.stream().collect(Collectors.groupingBy(Input::concept));
    return Site.byConcept(
        all.values().stream().filter(same -> same.size() == 1).map(same -> same.get(0)).toList());
  }

  /** Of each label the nearest above a table; where none is above, the only one. */
  private static Map<Concept, Input> serving(List<Input> labels, Table table) {
    Map<Concept, List<Input>> all = labels.stream().collect(Collectors.groupingBy(Input::concept));
    List<Input> serving = new ArrayList<>();
    for (List<Input> same : all.values()) {
      int top = table.place(table.headerRow(), table.firstColumn()).row();
      Optional<Input> above =
          same.stream()
              .filter(input -> table.grid().isTurned() || input.place().row() < top)
              .reduce((first, second) -> second);
      if (above.isPresent()) {
        serving.add(above.get());
      } else if (same.size() == 1) {
        serving.add(same.get(0));
      }
    }
    return Site.byConcept(serving);
  }

  private List<Map<Concept, Input>> tables(
      BookSheet sheet,
      Grid grid,
      Headings headings,
      Names names,
      List<Table> found,
      Set<Place> headers) {
    List<Map<Concept, Input>> all = new ArrayList<>();
    Tables tables = new Tables(grid, names, headings);
    for (List<Heading> row : headings.rows()) {
      for (List<Heading> run : Tables.runs(row)) {
        List<Heading> known =
            run.stream().filter(h -> Vocabulary.meaning(h.header()).isPresent()).toList();
        boolean isTable =
            known.size() >= 2
                && known.stream().anyMatch(h -> Vocabulary.sure(h.header()).isPresent());
        Table table = isTable ? table(tables, run, known) : null;
        if (table == null || table.rows().size() < (grid.isTurned() ? 2 : 1)) {
          continue;
        }
        run.forEach(heading -> headers.add(grid.turn(heading.place())));
        Map<Concept, Input> columns = columns(sheet, table, run);
        if (!columns.isEmpty()) {
          all.add(columns);
          found.add(table);
        }
      }
    }
    return all;
  }

  private Table table(Tables tables, List<Heading> run, List<Heading> known) {
    Set<String> names =
        known.stream()
            .map(heading -> heading.header().name())
            .filter(name -> run.stream().filter(heading -> heading.has(name)).count() == 1)
            .collect(Collectors.toSet());
    if (names.size() < 2) {
      return null;
    }
    // a word in the first column is then no reading: a total, or a label below the table
    names.remove(run.get(0).header().name());
    try {
      return tables.below(run, names);
    } catch (Ambiguous neverForNamesThatStandOnce) {
      return null;
    }
  }

  private Map<Concept, Input> columns(BookSheet sheet, Table table, List<Heading> run) {
    Map<Concept, List<Input>> byConcept = new LinkedHashMap<>();
    boolean hasGravity =
        run.stream()
            .flatMap(heading -> Vocabulary.meaning(heading.header()).stream())
            .map(Meaning::concept)
            .anyMatch(c -> c == Concept.GRAVITY || c == Concept.TRUE_GRAVITY);
    for (Heading heading : run) {
      Table.Column column = table.columns().get(heading.header().name());
      Header header =
          new Header(heading.header().name(), Optional.ofNullable(column.unit()), column.strange());
      Readings readings = new Readings(catalogue);
      table
          .rows()
          .forEach(
              r -> readings.add(sheet.content(table.place(r, heading.place().column())), null));
      Place first = table.place(table.rows().get(0), heading.place().column());
      Place last = table.place(table.lastRow(), heading.place().column());
      String where = sheet.name() + "!" + first + ":" + last;
      Input input =
          input(
              header,
              column.unit() != null,
              heading.text(),
              where,
              table.grid().turn(heading.place()),
              readings,
              hasGravity);
      if (input != null) {
        byConcept.computeIfAbsent(input.concept(), key -> new ArrayList<>()).add(input);
      }
    }
    List<Input> chosen = new ArrayList<>();
    byConcept.values().forEach(same -> one(same).ifPresent(chosen::add));
    return Site.byConcept(chosen);
  }

  /** Of several columns for one thing the one whose name says so; else none, and a question. */
  private Optional<Input> one(List<Input> same) {
    List<Input> sure =
        same.stream()
            .filter(input -> Vocabulary.sure(Header.of(input.written())).isPresent())
            .toList();
    List<Input> left = sure.isEmpty() ? same : sure;
    if (left.size() == 1) {
      same.stream()
          .filter(input -> !input.equals(left.get(0)))
          .forEach(i -> unused(i, "\"" + left.get(0).written() + "\" was taken instead."));
      return Optional.of(left.get(0));
    }
    String all =
        left.stream().map(input -> "\"" + input.written() + "\"").collect(Collectors.joining(", "));
    same.forEach(
        input -> unused(input, "which of " + all + " is the " + input.concept().word() + "?"));
    return Optional.empty();
  }

  private void unused(Input input, String why) {
    unused.add(new Unused(log, input.where(), input.written(), why));
  }

  /** What a column or a labelled cell is; null, and listed, where name and values disagree. */
  private Input input(
      Header header,
      boolean isUnitWritten,
      String written,
      String where,
      Place place,
      Readings readings,
      boolean hasGravity) {
    Optional<Meaning> meaning = Vocabulary.meaning(header);
    boolean isOfHydrometer =
        !hasGravity
            && meaning.filter(m -> m.concept() == Concept.BRIX).isPresent()
            && readings.areOfHydrometer();
    if (isOfHydrometer) {
      meaning = Optional.of(new Meaning(Concept.GRAVITY, Unit.BRIX, false));
    }
    if (meaning.isEmpty()) {
      if (readings.count() > 0 && !written.isBlank()) {
        unused.add(new Unused(log, where, written, "not a word that is known here."));
      }
      return null;
    }
    Concept concept = meaning.get().concept();
    boolean isTime =
        concept == Concept.DATE || concept == Concept.DAY || concept == Concept.HOURS;
    boolean isNumber = !concept.scales().isEmpty() || isTime;
    if (isNumber && readings.count() == 0) {
      unused.add(new Unused(log, where, written, "it holds no number."));
      return null;
    }
    if (isTime && !readings.areDates() && !readings.areRising()) {
      unused.add(new Unused(log, where, written, "its days do not follow each other."));
      return null;
    }
    Readings.Verdict verdict = readings.verdict(meaning.get(), header, isUnitWritten);
    if (!verdict.contradiction().isEmpty()) {
      unused.add(new Unused(log, where, written, verdict.contradiction()));
      return null;
    }
    return new Input(
        concept,
        written,
        header.name(),
        where,
        place,
        verdict.unit(),
        isUnitWritten,
        readings.haveTemperature(),
        readings.fall(verdict.unit()),
        readings.different(),
        isOfHydrometer && verdict.doubt().isEmpty() ? OF_HYDROMETER : verdict.doubt());
  }

  private List<Input> labels(
      BookSheet sheet,
      Headings headings,
      Names names,
      Set<Place> headers,
      Collection<Table> tables) {
    Labels labels = new Labels(sheet, headings, names);
    List<Input> all = new ArrayList<>();
    for (List<Heading> row : headings.rows()) {
      for (Heading heading : row) {
        boolean isElsewhere =
            headers.contains(heading.place())
                || tables.stream().anyMatch(table -> isData(table, heading.place()));
        if (isElsewhere) {
          continue;
        }
        Labels.Value value =
            Vocabulary.meaning(heading.header()).isPresent()
                ? labels.value(heading)
                : labels.inline(heading);
        if (value == null) {
          continue;
        }
        Header written = value.inline() == null ? heading.header() : labels.inlineHeader(heading);
        Header header =
            new Header(written.name(), Optional.ofNullable(value.unit()), value.strange());
        if (Vocabulary.meaning(header).filter(m -> !m.concept().scales().isEmpty()).isEmpty()) {
          continue;
        }
        Readings readings = new Readings(catalogue);
        readings.add(sheet.content(value.place()), value.inline());
        if (readings.count() == 0) {
          continue;
        }
        Input input =
            input(
                header,
                value.unit() != null,
                value.inline() == null ? heading.text() : written.name(),
                sheet.name() + "!" + value.place(),
                heading.place(),
                readings,
                true);
        if (input != null) {
          all.add(input);
        }
      }
    }
    return all;
  }

  private static boolean isData(Table table, Place place) {
    Place onGrid = table.grid().turn(place);
    return onGrid.row() > table.headerRow()
        && onGrid.row() <= table.lastRow()
        && onGrid.column() >= table.firstColumn()
        && onGrid.column() <= table.lastColumn();
  }
}
