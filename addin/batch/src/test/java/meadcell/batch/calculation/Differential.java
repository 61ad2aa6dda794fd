package meadcell.batch.calculation;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import meadcell.batch.Run;
import meadcell.batch.book.Book;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.Books;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.cellar.Cellar;
import meadcell.office.uno.RemoteOffice;
import meadcell.office.uno.Workbook;

/**
 * The corpus in one file format: computed and stored by an office with our extension, then given
 * other inputs, and computed again by the office, which is the truth, and by this tool.
 */
final class Differential {
  /** What became of a formula. */
  enum Outcome {
    EQUAL,
    LISTED,
    WRONG
  }

  /** One cell of a formula; values as a spreadsheet holds them. */
  record Result(
      Corpus.Line line,
      String ending,
      Place place,
      Value stored,
      Value truth,
      Value ours,
      Outcome outcome,
      String said) {
    /** Whether the changed inputs change it. */
    boolean isChanged() {
      return !isEqual(stored, truth);
    }
  }

  private static final Map<String, String> FILTERS =
      Map.of("xlsx", "Calc MS Excel 2007 XML", "ods", "calc8", "xls", "MS Excel 97");

  /** An .xls can lose texts, an .ods numbers that look like truth values. */
  private static final String ANSWER = "xlsx";

  private static final Set<String> INVALID = Set.of("#NUM!", "#REF!");
  private static final double ROUNDING = 1e-9;
  private static final double SECOND = 1.2e-5;

  private final RemoteOffice office;
  private final Path folder;
  private final List<Corpus.Line> lines;
  private final ProofBook source;

  Differential(RemoteOffice office, Path folder, List<Corpus.Line> lines) {
    this.office = office;
    this.folder = folder;
    this.lines = lines;
    this.source = new ProofBook(lines);
  }

  /** The workbook with its results as first stored, the inputs changed since. */
  private byte[] stored(String ending) throws Exception {
    return ending.equals("xlsx") ? withValues() : computed(source.bytes(), "xlsx", ending);
  }

  private byte[] changed(byte[] stored, String ending) throws Exception {
    try (Book book = open(stored, ending)) {
      for (ProofData.Input input : source.inputs()) {
        sheet(book, input.sheet()).putValue(input.place(), Value.of(input.after()));
      }
      return bytes(book);
    }
  }

  /** As a program would store it that writes tables, names and shared formulas unchanged. */
  private byte[] withValues() throws Exception {
    try (Book values = open(computed(source.bytes(), "xlsx", "xlsx"), "xlsx");
        Book book = open(source.bytes(), "xlsx")) {
      for (BookSheet sheet : book.sheets()) {
        for (int row = 0; row <= sheet.lastRow(); row++) {
          for (int column = 0; column <= sheet.lastColumn(row); column++) {
            Place place = new Place(row, column);
            if (sheet.content(place).isFormula() || sheet.array(place) != null) {
              Value value = sheet(values, sheet.name()).content(place).value();
              sheet.putValue(place, value.isBlank() ? Value.of("") : value);
            }
          }
        }
      }
      return bytes(book);
    }
  }

  /** What the office makes of a workbook. */
  byte[] computed(byte[] workbook, String from, String to) throws Exception {
    Path file = office.home().resolve("proof." + from);
    Path result = office.home().resolve("result." + to);
    Files.write(file, workbook);
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw-rw-"));
    try (Workbook open = office.open(file.toUri().toString(), true)) {
      open.recalculate();
      open.store(result, FILTERS.get(to));
    }
    return Files.readAllBytes(result);
  }

  /** The workbook in one format, and what the office gives after its inputs changed. */
  record Case(String ending, byte[] stored, byte[] changed, byte[] truth, Set<Place> unknown) {}

  Case prepare(String ending) throws Exception {
    byte[] stored = stored(ending);
    byte[] changed = changed(stored, ending);
    Set<Place> unknown = new HashSet<>();
    try (Book first = open(stored, ending);
        Book again = open(computed(stored, ending, ANSWER), ANSWER)) {
      for (Corpus.Line line : lines) {
        for (Place place : source.places(line)) {
          CellContent cell = log(first).content(place);
          boolean isThere = cell.isFormula() || log(first).array(place) != null;
          if (!isThere || !isEqual(cell.value(), log(again).content(place).value())) {
            unknown.add(place);
          }
        }
      }
    }
    return new Case(ending, stored, changed, computed(changed, ending, ANSWER), unknown);
  }

  /** What each formula by itself shows of its calls, from the office's values around it. */
  void prove(Case given, Evidence evidence) throws Exception {
    try (Book book = open(given.stored, given.ending)) {
      prove(given, book, evidence);
    }
    try (Book book = open(given.changed, given.ending);
        Book truth = open(given.truth, ANSWER)) {
      for (BookSheet sheet : book.sheets()) {
        for (int row = 0; row <= sheet.lastRow(); row++) {
          for (int column = 0; column <= sheet.lastColumn(row); column++) {
            Place place = new Place(row, column);
            if (sheet.content(place).isFormula() || sheet.array(place) != null) {
              Value value = sheet(truth, sheet.name()).content(place).value();
              sheet.putValue(place, value.isBlank() ? Value.of("") : value);
            }
          }
        }
      }
      prove(given, book, evidence);
    }
  }

  private void prove(Case given, Book book, Evidence evidence) {
    PoiFunctions functions = new PoiFunctions(Cellar.catalogue(), evidence);
    CellSet ours = new CellSet();
    for (int i = 0; i < book.sheets().size(); i++) {
      BookSheet sheet = book.sheets().get(i);
      for (int row = 0; row < ProofBook.FIRST_ROW; row++) {
        for (int column = 0; column < ProofBook.COLUMN; column++) {
          String formula = sheet.content(new Place(row, column)).formula();
          if (formula != null
              && formula.toUpperCase(Locale.ROOT).matches("(ALCOHOL|GRAVITY)\\..*")) {
            ours.add(i, row, column);
          }
        }
      }
    }
    Place[] proved = {null};
    int log = book.sheets().indexOf(log(book));
    Live live =
        (sheet, row, column) ->
            sheet == log && new Place(row, column).equals(proved[0])
                || ours.isLive(sheet, row, column);
    Calculation calculation = new Calculation(book, functions, live);
    for (Corpus.Line line : lines) {
      for (Place place : source.places(line)) {
        CellContent cell = log(book).content(place);
        if (given.unknown.contains(place) || isUnknown(cell.value())) {
          continue;
        }
        proved[0] = place;
        calculation
            .outcome(log, place)
            .shown()
            .ifPresentOrElse(
                value -> evidence.conclude(line.formula(), isRight(cell, value)),
                evidence::abandon);
      }
    }
  }

  /** The outcomes in one format. */
  List<Result> run(Case given, String... options) throws Exception {
    String ending = given.ending;
    byte[] changed = given.changed;
    byte[] truth = given.truth;
    Path file = folder.resolve("proof." + ending);
    Path report = folder.resolve("report.json");
    Files.write(file, changed);
    String[] command = {
      "recalc", file.toString(), "--in-place", "--report", report.toString(), "--no-progress"
    };
    Run run = Run.of(Stream.of(command, options).flatMap(Stream::of).toArray(String[]::new));
    if (!Files.exists(report)) {
      throw new IOException(run.out() + run.err());
    }
    Map<String, String> listed = listed(report);
    List<Result> results = new ArrayList<>();
    try (Book before = open(changed, ending);
        Book right = open(truth, ANSWER);
        Book after = open(Files.readAllBytes(file), ending)) {
      for (Corpus.Line line : lines) {
        for (Place place : source.places(line)) {
          CellContent stored = log(before).content(place);
          if (given.unknown.contains(place)) {
            continue; // the format cannot hold it
          }
          CellContent truthful = log(right).content(place);
          Value ours = log(after).content(place).value();
          String said = listed.get(place.a1());
          results.add(
              new Result(
                  line,
                  ending,
                  place,
                  stored.value(),
                  truthful.value(),
                  ours,
                  outcome(stored.value(), truthful, ours, said),
                  said == null ? "" : said));
        }
      }
    }
    return results;
  }

  private static Outcome outcome(Value stored, CellContent truth, Value ours, String said) {
    if (said != null) {
      return isEqual(stored, ours) ? Outcome.LISTED : Outcome.WRONG;
    }
    boolean known = !isUnknown(truth.value());
    return known && isRight(truth, ours) || !known && isEqual(stored, ours)
        ? Outcome.EQUAL
        : Outcome.WRONG;
  }

  static boolean isUnknown(Value truth) {
    return truth instanceof Value.Error error && error.code().equals("#NAME?");
  }

  private static boolean isRight(CellContent truth, Value ours) {
    return isEqual(truth.value(), ours)
        || truth.look() == CellContent.Look.DATE
            && truth.value() instanceof Value.Number a
            && ours instanceof Value.Number b
            && Math.abs(a.number() - b.number()) < SECOND;
  }

  private static Map<String, String> listed(Path report) throws IOException {
    JsonObject file =
        JsonParser.parseString(Files.readString(report))
            .getAsJsonObject()
            .getAsJsonArray("files")
            .get(0)
            .getAsJsonObject();
    Map<String, String> listed = new java.util.HashMap<>();
    for (JsonElement element : file.getAsJsonArray("remarks")) {
      JsonObject remark = element.getAsJsonObject();
      if (remark.get("sheet").getAsString().equals(ProofBook.LOG)
          && remark.get("code").getAsString().equals("STALE")) {
        listed.put(remark.get("cell").getAsString(), remark.get("sentence").getAsString());
      }
    }
    return listed;
  }

  /** Equal as far as programs agree on: an office's TRUE is 1, its errors are of fewer kinds. */
  static boolean isEqual(Value a, Value b) {
    Value x = plain(a);
    Value y = plain(b);
    if (x instanceof Value.Number p && y instanceof Value.Number q) {
      return Math.abs(p.number() - q.number())
          <= ROUNDING * Math.max(Math.abs(p.number()), Math.abs(q.number()));
    }
    return x.equals(y);
  }

  private static Value plain(Value value) {
    if (value.isBlank()) {
      return Value.of("");
    }
    if (value instanceof Value.Truth truth) {
      return Value.of(truth.isTrue() ? 1.0 : 0.0);
    }
    if (value instanceof Value.Error error) {
      boolean invalid = error.code().startsWith("Err:") || INVALID.contains(error.code());
      return new Value.Error(invalid ? "#VALUE!" : error.code());
    }
    return value;
  }

  private static BookSheet log(Book book) {
    return sheet(book, ProofBook.LOG);
  }

  private static BookSheet sheet(Book book, String name) {
    return book.sheets().stream().filter(s -> s.name().equals(name)).findFirst().orElseThrow();
  }

  static Book open(byte[] bytes, String ending) throws Exception {
    return Books.open(bytes, "proof." + ending);
  }

  private static byte[] bytes(Book book) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    book.write(bytes);
    return bytes.toByteArray();
  }
}
