package meadcell.blend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

/** What is carried past an addition. */
class AdditionsTest {
  private static final Object[][] RACKED_TWICE = {
    {"Mead", "Tank", 300.0, 1.0}, {"Tank", "Cask", 200.0, 9.0}, {"Cask", "Keg", 50.0, 20.0},
  };
  private static final Object[] OF_MEAD = {"Mead", 1.0, "acid", 6.0};

  private static double acid(
      Object[][] log, Object[][] analyses, Object[][] additions, String lot, double day) {
    return value(log, analyses, lot, "acid", day, null, additions);
  }

  private static double value(Object... call) {
    return (double) ((Object[][]) Cellar.catalogue().get("BLEND.CARRIED").call(call))[0][0];
  }

  private static double carried(Object[] addition, String lot, double day, Object[]... analyses) {
    return acid(RACKED_TWICE, analyses, new Object[][] {addition}, lot, day);
  }

  private static String refused(Object[] addition, String lot, double day, Object[]... analyses) {
    return assertThrows(Refusal.class, () -> carried(addition, lot, day, analyses)).getMessage();
  }

  private static Object[] to(String vessel, double day, Object... property) {
    return property.length == 0
        ? new Object[] {vessel, day}
        : new Object[] {vessel, day, property[0]};
  }

  @Test
  void itIsFollowedThroughEveryRacking() {
    Object[] early = to("Tank", 5);
    String why =
        "The acid is not known: what was added to \"Tank\" on day number 5 (row 1 of additions) changed it, and it"
            + " was not measured on a later day since.";
    for (String lot : List.of("Tank", "Cask", "Keg")) {
      assertEquals(why, refused(early, lot, 30, OF_MEAD));
    }
    Object[] ofCask = {"Cask", 12.0, "acid", 7.0};
    assertEquals(7, carried(early, "Keg", 30, OF_MEAD, ofCask));
    assertEquals(why, refused(early, "Tank", 30, OF_MEAD, ofCask));
  }

  @Test
  void onItsDayNobodyKnowsWhatCameFirst() {
    Object[] sample = {"Cask", 12.0, "acid", 7.0};
    assertEquals(7, carried(to("Cask", 11), "Cask", 30, OF_MEAD, sample));
    assertTrue(refused(to("Cask", 12), "Cask", 30, OF_MEAD, sample).contains("on day number 12 "));
    assertTrue(
        refused(to("Cask", 12.9), "Cask", 30, OF_MEAD, sample).contains("on day number 12 "));
    assertTrue(refused(to("Tank", 9), "Cask", 30, OF_MEAD).contains("on day number 9 "));
    assertTrue(refused(to("Cask", 9), "Cask", 30, OF_MEAD).contains("on day number 9 "));
    assertTrue(refused(to("Cask", 20), "Keg", 30, OF_MEAD).contains("on day number 20 "));
    assertEquals(6, carried(to("Tank", 10), "Cask", 30, OF_MEAD));
    assertEquals(6, carried(to("Cask", 21), "Keg", 30, OF_MEAD));
    assertEquals(6, carried(to("Cask", 21), "Cask", 20, OF_MEAD), "not by then");
  }

  @Test
  void whatLiesInAnEmptyVesselMeetsItsFirstFilling() {
    Object[] early = to("Cask", 3);
    assertTrue(refused(early, "Cask", 30, OF_MEAD).contains("\"Cask\" on day number 3 "));
    assertEquals(7, carried(early, "Cask", 30, OF_MEAD, new Object[] {"Cask", 10.0, "acid", 7.0}));
    Object[][] twice = {
      {"Mead", "Cask", 100.0, 5.0}, {"Cask", "loss", 100.0, 9.0}, {"Mead", "Cask", 80.0, 20.0},
    };
    Object[][] analyses = {OF_MEAD};
    for (double day : new double[] {3, 7, 9}) {
      assertEquals(6, acid(twice, analyses, new Object[][] {to("Cask", day)}, "Cask", 30));
    }
    for (double day : new double[] {10, 20}) {
      assertThrows(
          Refusal.class, () -> acid(twice, analyses, new Object[][] {to("Cask", day)}, "Cask", 30));
    }
  }

  @Test
  void aLiquidFromOutsideMayBeChangedToo() {
    assertTrue(
        refused(to("Mead", 1), "Keg", 30, OF_MEAD).contains("added to \"Mead\" on day number 1 "));
    assertEquals(6, carried(to("Mead", 2), "Keg", 30, OF_MEAD), "it had come in by then");
    assertEquals(6, carried(to("Mead", 0.5), "Keg", 30, OF_MEAD), "measured since");
  }

  @Test
  void onlyWhatItChanges() {
    assertEquals(6, carried(to("Tank", 5, "total SO2"), "Keg", 30, OF_MEAD));
    assertThrows(Refusal.class, () -> carried(to("Tank", 5, "ACID"), "Keg", 30, OF_MEAD));
    assertThrows(Refusal.class, () -> carried(to("Tank", 5, "Everything"), "Keg", 30, OF_MEAD));
    assertThrows(Refusal.class, () -> carried(to("Tank", 5, ""), "Keg", 30, OF_MEAD));
    assertThrows(Refusal.class, () -> carried(to("Tank", 5, "acids"), "Keg", 30, OF_MEAD));
    Object[] salts = {"Mead", 1.0, "acids", 3.0};
    assertEquals(6, carried(to("Tank", 5, "acids"), "Keg", 30, OF_MEAD, salts), "another property");
    assertEquals(
        "Row 1 of additions is of \"Taank\", which is not in transfers. Did you mean Tank?",
        refused(to("Taank", 5), "Keg", 30, OF_MEAD));
    assertEquals(6, carried(to("Tank 2", 5), "Keg", 30, OF_MEAD), "another vessel");
  }

  @Test
  void aBlankTableHasNone() {
    for (Object none :
        new Object[] {null, "", 0.0, new Object[][] {{"", null, ""}, {"", "", ""}}}) {
      assertEquals(
          6, value(RACKED_TWICE, new Object[][] {OF_MEAD}, "Keg", "acid", 30.0, 67.0, none));
    }
  }

  /** After honey came, sugar that still falls is no longer carried. */
  @Test
  void aFeedMayStartAFerment() {
    Object[][] log = {{"Mead", "Tank", 100.0, 1.0}};
    Object[][] sugars = {
      {"Mead", 1.0, "strength", 12.0},
      {"Mead", 1.0, "sugar", 5.0, 1.0},
      {"Tank", 10.0, "sugar", 40.0, 1.0},
      {"Tank", 20.0, "sugar", 25.0, 1.0},
    };
    Object[][] fed = {to("Tank", 6)};
    Refusal refusal =
        assertThrows(Refusal.class, () -> value(log, sugars, "Tank", "sugar", 30.0, null, fed));
    assertTrue(refusal.getMessage().contains("it still changed, from 40 to 25"), "" + refusal);
  }

  /** A cellar whose vessels' true acid is known, and whose papers know only the days. */
  private static final class Truth {
    final List<Object[]> log = new ArrayList<>();
    final List<Object[]> analyses = new ArrayList<>();
    final List<Object[]> additions = new ArrayList<>();
    final Map<String, double[]> vessels = new TreeMap<>(); // L, g
    final Map<String, Double> sources = new TreeMap<>(); // g/L
    private final Set<String> heldToday = new HashSet<>();
    private final Random random;
    double day;

    Truth(Random random) {
      this.random = random;
      for (day = 1; day < 40; day += 1 + random.nextInt(3)) {
        heldToday.clear();
        vessels.forEach(
            (vessel, there) -> {
              if (there[0] > 0) {
                heldToday.add(vessel);
              }
            });
        List<Runnable> done = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
          done.add(this::move);
        }
        if (random.nextInt(4) == 0) {
          done.add(this::add);
        }
        if (random.nextInt(4) == 0) {
          done.add(this::addToSource);
        }
        Collections.shuffle(done, random);
        done.forEach(Runnable::run);
        vessels.forEach(
            (vessel, there) -> {
              if (there[0] > 0 && random.nextInt(12) == 0) {
                analyses.add(new Object[] {vessel, day, "acid", there[1] / there[0], 0.1});
              }
            });
        if (random.nextInt(4) == 0) {
          add(); // after the samples were drawn
        }
      }
      Collections.shuffle(analyses, random);
      Collections.shuffle(additions, random);
    }

    private String any() {
      return "Vessel " + random.nextInt(5);
    }

    private void move() {
      String from = any();
      String to = any();
      double[] there = vessels.computeIfAbsent(from, v -> new double[2]);
      double[] into = vessels.computeIfAbsent(to, v -> new double[2]);
      heldToday.add(to);
      if (there[0] == 0 || from.equals(to)) {
        String source = "Mead " + random.nextInt(3);
        sources.computeIfAbsent(source, this::analysed);
        log.add(new Object[] {source, to, 100.0, day});
        into[0] += 100;
        into[1] += 100 * sources.get(source);
      } else {
        double part = random.nextBoolean() ? 1 : 0.25;
        log.add(new Object[] {from, to, part * there[0], day});
        for (int k = 0; k < 2; k++) {
          into[k] += part * there[k];
          there[k] = part == 1 ? 0 : (1 - part) * there[k];
        }
      }
    }

    private double analysed(String source) {
      double value = 4 + 4 * random.nextDouble();
      analyses.add(new Object[] {source, day, "acid", value, 0.1});
      return value;
    }

    private void add() {
      String vessel = any();
      double[] there = vessels.computeIfAbsent(vessel, v -> new double[2]);
      // not into what was emptied that day
      if (there[0] > 0 || !heldToday.contains(vessel)) {
        there[1] += 50;
        additions.add(new Object[] {vessel, day});
      }
    }

    private void addToSource() {
      sources.keySet().stream()
          .findAny()
          .ifPresent(
              source -> {
                sources.merge(source, 1.0, Double::sum);
                additions.add(new Object[] {source, day});
              });
    }
  }

  @Test
  void whatIsToldIsTrue() {
    int told = 0;
    int refused = 0;
    for (int seed = 0; seed < 2000; seed++) {
      Truth truth = new Truth(new Random(seed));
      for (Map.Entry<String, double[]> entry : truth.vessels.entrySet()) {
        double[] there = entry.getValue();
        if (there[0] > 0 && !truth.analyses.isEmpty()) {
          try {
            double value =
                acid(
                    truth.log.toArray(Object[][]::new),
                    truth.analyses.toArray(Object[][]::new),
                    truth.additions.toArray(Object[][]::new),
                    entry.getKey(),
                    truth.day);
            told++;
            assertEquals(there[1] / there[0], value, 1e-9, entry.getKey() + ", seed " + seed);
          } catch (Refusal refusal) {
            refused++;
            assertTrue(refusal.getMessage().contains("was added to"), refusal.getMessage());
          }
        }
      }
    }
    assertTrue(told > 1000 && refused > 1000, told + " told, " + refused + " refused");
  }
}
