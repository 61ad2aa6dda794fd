package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A season of 60 casks, typed into the book cell by cell; its answers against a sum of our own. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class SeasonIT {
  /** Numbers of a sentence that are rounded; all others, of days, are whole. */
  private static final Pattern ROUNDED = Pattern.compile("\\d+\\.\\d+|\\d+(?= mg/L| are needed)");

  /** Of casks, in the order that the page has them. */
  private static final List<String> KINDS = List.of("top up", "taste", "sulfite", "analyse");

  private final Facts facts = Season.facts();
  private CellarFile book;

  @BeforeAll
  void type() throws Exception {
    book = CellarFile.open("season").waiting();
    book.emptyAllLogs();
    facts.type(book);
    on(Season.TODAY);
    book.recalculate();
  }

  @AfterAll
  void close() throws Exception {
    book.close();
  }

  private Ledger on(LocalDate day) throws Exception {
    book.set("today_typed", day);
    return new Ledger(facts, day);
  }

  @Test
  void everyPageIsProtected() throws Exception {
    for (String page : CellarFile.PAGES) {
      assertTrue(book.isProtected(page), page);
    }
    assertEquals(List.of(), book.errors());
  }

  @ParameterizedTest
  @ValueSource(ints = {62, 115, 250})
  void whatIsWhere(int after) throws Exception {
    LocalDate day = Season.FILLED.plusDays(after);
    checkCasksNow(book, facts, on(day), day);
  }

  static void checkCasksNow(CellarFile book, Facts facts, Ledger ledger, LocalDate day)
      throws Exception {
    Map<Object, Object[]> lines = new HashMap<>();
    book.below("Casks now", "Vessel", "Mostly").forEach(line -> lines.put(line[0], line));
    for (Facts.Vessel vessel : facts.vessels) {
      Object[] line = lines.get(vessel.name());
      if (!ledger.holdsAnything(vessel.name())) {
        assertEquals("", line[4], vessel.name());
        continue;
      }
      String mostly =
          ledger.shares(vessel.name()).entrySet().stream()
              .max(Map.Entry.comparingByValue())
              .orElseThrow()
              .getKey();
      assertEquals(mostly, line[1], vessel.name());
      assertEquals(CellarFile.serial(ledger.since(vessel.name())), line[2], vessel.name());
      assertEquals(
          CellarFile.serial(day) - CellarFile.serial(ledger.since(vessel.name())), line[3]);
      assertEquals(ledger.litres(vessel.name()), (Double) line[4], 0.01, vessel.name());
      if (vessel.isCask()) {
        double space = vessel.size().full() - ledger.litres(vessel.name());
        assertEquals(space, (Double) line[5], 0.01, vessel.name());
        assertEquals(
            (double) ledger.fills(vessel.name()) + vessel.fillsBefore(), line[7], vessel.name());
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {62, 115, 250})
  void whatTheCellarWants(int after) throws Exception {
    LocalDate day = Season.FILLED.plusDays(after);
    on(day);
    checkToday(book, Wants.of(facts, day, Wants.House.AS_SHIPPED));
  }

  @Test
  void whatItWantsByOtherRulesOfTheHouse() throws Exception {
    rules(400, 400, 0.3);
    on(Season.TODAY);
    List<Wants.Task> wanted =
        Wants.of(facts, Season.TODAY, new Wants.House(2, 4, 400, 400, 4, 0.3));
    Set<String> kinds = wanted.stream().map(Wants.Task::what).collect(Collectors.toSet());
    assertEquals(
        Set.of("top up", "sulfite", "analyse", "read", "rack or close", "wake or decide"), kinds);
    checkToday(book, wanted);
    rules(60, 60, 0.5);
  }

  /** Everything is due in every cask, and two ferments stalled: not one is out of sight. */
  @Test
  void whatItWantsAfterHalfAYearOfNeglect() throws Exception {
    LocalDate day = Season.TODAY.plusDays(180);
    rules(60, 60, 0.8);
    on(day);
    List<Wants.Task> wanted = Wants.of(facts, day, new Wants.House(2, 4, 60, 60, 4, 0.8));
    assertTrue(wanted.size() > 200, () -> wanted.size() + " tasks");
    assertTrue(wanted.stream().filter(Wants.Task::now).count() > 60, "more than paper has");
    assertEquals(1, wanted.stream().filter(t -> t.what().equals("wake or decide")).count());
    checkToday(book, wanted);
    checkChosen(wanted);
    rules(60, 60, 0.5);
  }

  private void rules(int taste, int analyse, double molecular) throws Exception {
    book.waiting();
    book.set("house_taste", taste).set("house_analyse", analyse).set("house_molecular", molecular);
    book.resume();
  }

  /** Every line in its order, each with its reason; and how many there are of each kind of work. */
  static void checkToday(CellarFile book, List<Wants.Task> wanted) throws Exception {
    checkLines(book, wanted);
    assertEquals(
        wanted.size() > 60 ? "These are all; paper has the first 60." : "These are all.",
        book.text("today_more"));
    assertEquals(counts(wanted), book.text("today_counts"));
  }

  private static String counts(List<Wants.Task> wanted) {
    if (wanted.isEmpty()) {
      return "Nothing is wanted up to a week ahead.";
    }
    List<Wants.Task> now = wanted.stream().filter(Wants.Task::now).toList();
    return (now.isEmpty()
            ? "Cannot wait: nothing"
            : "Cannot wait: %d stalled, %d for sulfite, %d to top up"
                .formatted(of(now, 4), of(now, 2), of(now, 0)))
        + ". In all, up to a week ahead: %d to top up, %d to taste, %d for sulfite, %d to analyse, of ferments %d."
            .formatted(of(wanted, 0), of(wanted, 1), of(wanted, 2), of(wanted, 3), of(wanted, 4));
  }

  private static long of(List<Wants.Task> tasks, int kind) {
    return tasks.stream().filter(task -> kind(task) == kind).count();
  }

  /** Where its kind stands in the page's list; all of a ferment come last. */
  private static int kind(Wants.Task task) {
    int kind = KINDS.indexOf(task.what());
    return kind < 0 ? KINDS.size() : kind;
  }

  /** By the kinds of work that can be chosen, and what cannot wait. */
  private void checkChosen(List<Wants.Task> wanted) throws Exception {
    for (int kind = 0; kind <= KINDS.size(); kind++) {
      String chosen = kind < KINDS.size() ? KINDS.get(kind) : "ferments";
      int k = kind;
      book.set("today_show", chosen);
      checkLines(book, wanted.stream().filter(task -> kind(task) == k).toList());
      assertTrue(
          book.text("today_more").startsWith("These are all of this: " + chosen),
          book.text("today_more"));
      assertEquals(counts(wanted), book.text("today_counts"), "of all work still");
    }
    book.set("today_show", "cannot wait");
    checkLines(book, wanted.stream().filter(Wants.Task::now).toList());
    book.set("today_show", "all");
  }

  private static void checkLines(CellarFile book, List<Wants.Task> wanted) throws Exception {
    List<Object[]> lines =
        book.below("Today", "Due", "Days late").stream()
            .filter(line -> line[0] instanceof Double)
            .toList();
    assertEquals(wanted.size(), lines.size());
    double today = book.number("today");
    Set<Wants.Task> open = new HashSet<>(wanted);
    for (int i = 0; i < lines.size(); i++) {
      Object[] line = lines.get(i);
      assertEquals(CellarFile.serial(wanted.get(i).due()), line[0], "line " + i);
      Wants.Task task =
          open.stream()
              .filter(t -> t.where().equals(line[2]) && t.what().equals(line[3]))
              .findFirst()
              .orElseThrow(() -> new AssertionError(line[2] + " " + line[3] + " is not wanted"));
      open.remove(task);
      double late = today - CellarFile.serial(task.due());
      assertEquals(late >= 0 ? (Object) late : "", line[1], task::toString);
      assertEquals(CellarFile.serial(task.due()), line[0], task::toString);
      assertTrue(same(task.why(), (String) line[4]), task + " but " + line[4]);
    }
  }

  private static String difference(List<Wants.Task> ones, List<Wants.Task> others) {
    return difference(
        ones.stream().map(t -> t.where() + " " + t.what()).collect(Collectors.toSet()),
        others.stream().map(t -> t.where() + " " + t.what()).collect(Collectors.toSet()));
  }

  private static String difference(Set<String> ones, Set<String> others) {
    Set<String> first = new HashSet<>(ones);
    first.removeAll(others);
    Set<String> second = new HashSet<>(others);
    second.removeAll(ones);
    return first.isEmpty() && second.isEmpty() ? "" : "only " + first + ", only " + second;
  }

  /** The same words and days, and the same numbers but for how they round. */
  private static boolean same(String expected, String shown) {
    if (!ROUNDED.matcher(expected).replaceAll("#").equals(ROUNDED.matcher(shown).replaceAll("#"))) {
      return false;
    }
    Matcher ones = ROUNDED.matcher(expected);
    Matcher others = ROUNDED.matcher(shown);
    while (ones.find() && others.find()) {
      int dot = ones.group().indexOf('.');
      double step = dot < 0 ? 1 : Math.pow(10, dot + 1 - ones.group().length());
      double off = Math.abs(Double.parseDouble(ones.group()) - Double.parseDouble(others.group()));
      if (off > 1.001 * step) {
        return false;
      }
    }
    return true;
  }

  @ParameterizedTest
  @ValueSource(strings = {"Blend", "Shore", "No. 103", "No. 120", "Rest"})
  void storyOfALot(String lot) throws Exception {
    checkStory(book, on(Season.TODAY), lot);
  }

  /** Shares of each source, and its days in every vessel, as page Story has them. */
  static void checkStory(CellarFile book, Ledger ledger, String lot) throws Exception {
    book.set("story_lot", lot);
    Map<String, Double> shares = new TreeMap<>();
    Map<String, Map<String, Double>> days = new TreeMap<>();
    String source = "";
    for (Object[] line : book.below("Story", "Liquid, and where it was", "Share")) {
      String what = ((String) line[0]).replace("\u00A0", " ");
      if (what.startsWith(" ")) {
        days.get(source).put(what.trim(), (Double) line[2]);
      } else {
        source = what;
        shares.put(source, (Double) line[1]);
        days.put(source, new TreeMap<>());
      }
    }
    assertClose(ledger.shares(lot), shares, 0.01, lot);
    for (String liquid : shares.keySet()) {
      Map<String, Double> expected = ledger.days(lot, liquid);
      expected.values().removeIf(d -> d < 1e-6);
      assertClose(expected, days.get(liquid), 0.05, lot + " of " + liquid);
    }
  }

  private static void assertClose(
      Map<String, Double> expected, Map<String, Double> found, double within, String what) {
    assertEquals(expected.keySet(), found.keySet(), what);
    expected.forEach(
        (key, value) -> assertEquals(value, found.get(key), within, () -> what + ": " + key));
  }

  /** Sold in the middle of the season, and filled again with another mead. */
  @Test
  void aCaskEmptiedLeavesThePastRight() throws Exception {
    book.set("cask", Season.REFILLED);
    LocalDate before = Season.FILLED.plusDays(70);
    Ledger then = on(before);
    LocalDate first = Season.FILLED.plusDays(60);
    List<Object[]> tastings = book.below("This cask", "Tasted on", "Months in it");
    assertEquals(1, tastings.size());
    checkTasting(tastings.get(0), first, Season.REFILLED);
    assertEquals(
        then.litres(Season.REFILLED), (Double) book.beside("This cask", "Holds by the log"), 0.01);

    Ledger now = on(Season.TODAY);
    tastings = book.below("This cask", "Tasted on", "Months in it");
    assertEquals(1, tastings.size(), "those of this filling alone");
    checkTasting(tastings.get(0), Season.FILLED.plusDays(205), Season.REFILLED);
    List<Object[]> fills = book.below("This cask", "Liquid", "No.");
    assertEquals(List.of("Bochet", "Heather"), fills.stream().map(fill -> fill[0]).toList());
    assertEquals(
        List.of(
            CellarFile.serial(Season.FILLED.plusDays(30)),
            CellarFile.serial(Season.FILLED.plusDays(130))),
        fills.stream().map(fill -> fill[2]).toList());
    assertEquals(now.fills(Season.REFILLED), 2);

    book.set("cask", Season.SOLD);
    assertTrue(
        Arrays.stream(book.page("This cask"))
            .anyMatch(row -> row[0].equals("No. 121 is empty on this day.")));
    assertEquals("", book.beside("This cask", "Holds by the log"));
    on(before);
    assertEquals(
        new Ledger(facts, before).litres(Season.SOLD),
        (Double) book.beside("This cask", "Holds by the log"),
        0.01);
  }

  private void checkTasting(Object[] line, LocalDate day, String cask) throws Exception {
    assertEquals(CellarFile.serial(day), line[0]);
    assertEquals(new Ledger(facts, day).months(cask), (Double) line[1], 0.01, "months in it");
    List<Facts.Tasting> scores =
        facts.tastings.stream()
            .filter(t -> t.vessel().equals(cask) && t.day().equals(day))
            .toList();
    assertEquals(
        scores.stream().mapToDouble(Facts.Tasting::score).average().orElseThrow(),
        (Double) line[2],
        1e-9);
    assertEquals((double) scores.size(), line[3]);
  }

  /** Of every cask tasted: the months that its mead had been in its wood on each day. */
  @Test
  void monthsInWood() throws Exception {
    on(Season.TODAY);
    for (int i = 0; i < Season.CASKS; i += 16) {
      String cask = Season.name(i);
      book.set("cask", cask);
      List<Object[]> tastings = book.below("This cask", "Tasted on", "Months in it");
      List<LocalDate> days =
          facts.tastings.stream()
              .filter(t -> t.vessel().equals(cask))
              .map(Facts.Tasting::day)
              .distinct()
              .toList();
      assertEquals(days.size(), tastings.size(), cask);
      for (int t = 0; t < days.size(); t++) {
        checkTasting(tastings.get(t), days.get(t), cask);
      }
      assertEquals(
          new Ledger(facts, Season.TODAY).lost(cask),
          (Double) book.beside("This cask", "Lost since filling"),
          0.01,
          cask);
    }
  }

  @Test
  void aRowHalfTypedStaysOutAndIsTold() throws Exception {
    Ledger ledger = on(Season.TODAY);
    assertEquals("All rows are complete.", book.text("book_sound"));
    int line = book.type("Movements", Season.TODAY);
    String told = book.text("book_sound");
    assertTrue(told.contains("1 in Movements, first in line " + line), told);
    checkCasksNow(book, facts, ledger, Season.TODAY);
    book.clear("Movements", line - 1);
  }

  /** By source and by volume, up and down, and by day again: nothing that a page shows changes. */
  @Test
  void sortedAnyhowTheLogSaysTheSame() throws Exception {
    on(Season.TODAY);
    book.set("cask", Season.name(0));
    List<String> pages = List.of("Today", "Casks now", "This cask");
    Map<String, Object[][]> before = new TreeMap<>();
    for (String page : pages) {
      before.put(page, book.page(page));
    }
    Object[][] typed = book.rows("Movements", facts.moves.size());
    for (int[] by : new int[][] {{1, 1}, {3, 0}, {2, 1}, {0, 0}, {0, 1}}) {
      book.waiting().sort("Movements", by[0], by[1] == 1);
      book.resume();
      for (String page : pages) {
        Object[][] now = book.page(page);
        for (int r = 0; r < now.length; r++) {
          for (int c = 0; c < now[r].length; c++) {
            assertTrue(
                Samples.sameValue(before.get(page)[r][c], now[r][c]),
                page + " row " + (r + 1) + ": " + before.get(page)[r][c] + ", " + now[r][c]);
          }
        }
      }
    }
    assertFalse(
        Arrays.deepEquals(typed, book.rows("Movements", facts.moves.size())), "rows have moved");
    book.sort("Movements", 7, true);
    assertTrue(Arrays.deepEquals(typed, book.rows("Movements", facts.moves.size())));
  }

  /** As Start says it: the next season needs nothing but its lots. */
  @Test
  @Order(Integer.MAX_VALUE - 1)
  void theNextSeasonInTheSameFile() throws Exception {
    LocalDate pitched = Season.TODAY.plusDays(20);
    Facts.Vessel tank = new Facts.Vessel("Tank N", "tank", 0, null, 3000.0);
    Facts.Lot lot = new Facts.Lot("Heather N", pitched, 1.104, 0.996, null, "");
    facts.vessels.add(tank);
    facts.lots.add(lot);
    facts.move(pitched, "Heather N", "Tank N", 2500);
    book.type("Vessels", tank.cells());
    book.type("Lots", lot.cells());
    book.type("Movements", facts.moves.get(facts.moves.size() - 1).cells());
    Ledger ledger = on(pitched);
    checkCasksNow(book, facts, ledger, pitched);
    checkStory(book, ledger, "Blend");
    checkStory(book, ledger, "Tank N");
    rules(500, 500, 0.3); // so that the new lot comes into sight
    List<Wants.Task> wanted = Wants.of(facts, pitched, new Wants.House(2, 4, 500, 500, 4, 0.3));
    assertTrue(wanted.stream().anyMatch(t -> t.where().equals("Heather N")));
    checkToday(book, wanted);
    rules(60, 60, 0.5);
  }

  /** As Start says it, step by step: Movements is full, and room is made in a copy. */
  @Test
  @Order(Integer.MAX_VALUE)
  void roomIsMadeForTheNextSeason() throws Exception {
    LocalDate kept = Season.FILLED.plusDays(42);
    on(Season.TODAY);
    try (CellarFile next = CellarFile.open(book.savedAs("next-season"))) {
      next.set("today_typed", kept);
      List<Object[]> held = next.below("Casks now", "Vessel", "Mostly");
      next.waiting();
      deleteUpTo(next, "Movements", 0, kept);
      deleteUpTo(next, "Analyses", 1, kept);
      Facts carried = new Facts();
      for (int i = 0; i < held.size(); i++) {
        Facts.Vessel vessel = facts.vessel((String) held.get(i)[0]);
        int before = vessel.fillsBefore();
        if (held.get(i)[4] instanceof Double litres) {
          double read = Math.round(litres * 10) / 10.0;
          next.type("Movements", kept, vessel.name() + " 2025", vessel.name(), read);
          carried.move(kept, vessel.name() + " 2025", vessel.name(), read);
          before = ((Double) held.get(i)[7]).intValue() - 1;
          next.typeInto("Vessels", CellarFile.FIRST + facts.vessels.indexOf(vessel), 5, before);
        }
        carried.vessels.add(
            new Facts.Vessel(
                vessel.name(), vessel.kind(), before, vessel.size(), vessel.capacity()));
      }
      next.set("today_typed", Season.TODAY).resume();

      facts.moves.stream().filter(m -> m.day().isAfter(kept)).forEach(carried.moves::add);
      facts.analyses.stream().filter(a -> a.day().isAfter(kept)).forEach(carried.analyses::add);
      carried.tastings.addAll(facts.tastings);
      carried.additions.addAll(facts.additions);
      carried.readings.addAll(facts.readings);
      carried.lots.addAll(facts.lots);
      Ledger ledger = new Ledger(carried, Season.TODAY);
      assertEquals(List.of(), next.errors());
      checkCasksNow(next, carried, ledger, Season.TODAY);
      checkStory(next, ledger, "Blend");
      List<Wants.Task> wanted = Wants.of(carried, Season.TODAY, Wants.House.AS_SHIPPED);
      checkToday(next, wanted);
      assertEquals(
          "",
          difference(wanted, Wants.of(facts, Season.TODAY, Wants.House.AS_SHIPPED)),
          "what the whole log wants");
      // strength was known from a row that is gone: blank, not another number
      assertEquals("", next.beside("Story", "strength"));
    }
    checkStory(book, on(Season.TODAY), "Blend");
    assertTrue(book.beside("Story", "strength") instanceof Double);
  }

  private static void deleteUpTo(CellarFile book, String log, int column, LocalDate last)
      throws Exception {
    Object[][] rows = book.rows(log, CellarFile.LOGS.get(log)[1]);
    for (int row = 0; row < rows.length; row++) {
      if (rows[row][column] instanceof Double day && day <= CellarFile.serial(last)) {
        book.clear(log, row + 4);
      }
    }
  }
}
