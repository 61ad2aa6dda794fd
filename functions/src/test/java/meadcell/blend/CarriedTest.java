package meadcell.blend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Tables;
import meadcell.cellar.Cellar;
import meadcell.density.EthanolWater;
import meadcell.property.Property;
import meadcell.transfers.Slack;
import meadcell.transfers.TransferLog;
import org.junit.jupiter.api.Test;

class CarriedTest {
  private static final OptionalDouble UNTOLD = OptionalDouble.empty();

  private static Carried.Value carried(
      Object[][] transfers,
      Object[][] analyses,
      String lot,
      String property,
      OptionalDouble day,
      OptionalDouble humidity) {
    return Carried.carried(
        Tables.read("BLEND.CARRIED", 0, transfers),
        Tables.read("BLEND.CARRIED", 1, analyses),
        lot,
        property,
        day,
        humidity,
        Optional.empty());
  }

  private static Carried.Value carried(
      Object[][] transfers, Object[][] analyses, String lot, String property) {
    return carried(transfers, analyses, lot, property, UNTOLD, UNTOLD);
  }

  private static final Object[][] YEAR = {
    {"Heather mead", "Tank", 300.0, 1.0},
    {"Cherry mead", "Tank", 100.0, 1.0},
    {"Tank", "Cask", 200.0, 9.0},
    {"gauge", "Cask", 190.0, 100.0},
    {"Tank", "Cask", 10.0, 100.0},
    {"Water", "Cask", 50.0, 200.0},
  };
  private static final Object[][] ACIDS = {
    {"Heather mead", 1.0, "Titratable acidity", 6.0},
    {"Cherry mead", 1.0, "titratable acidity", 8.0},
    {"Cask", 150.0, "TITRATABLE ACIDITY", 6.6},
  };

  private static double acid(double day) {
    return carried(
            YEAR,
            ACIDS,
            "Cask",
            "titratable acidity",
            OptionalDouble.of(day),
            OptionalDouble.empty())
        .value();
  }

  @Test
  void aYearByHand() {
    assertEquals(6.5, acid(9), 1e-12);
    assertEquals((200 * 6.5 + 10 * 6.5) / 200, acid(100), 1e-12);
    assertEquals(6.6, acid(150), 1e-12);
    assertEquals(6.6 * 200 / 250, acid(200), 1e-12);
    assertEquals(6.5, carried(YEAR, ACIDS, "tank", "titratable acidity").value(), 1e-12);
  }

  @Test
  void withoutADayTheLastAnalysisCountsToo() {
    Object[][] log = {{"Mead", "Tank", 100.0, 1.0}};
    Object[][] analyses = {{"Mead", 1.0, "iron", 3.0}, {"Tank", 20.0, "iron", 4.0}};
    assertEquals(4, carried(log, analyses, "Tank", "iron").value());
    assertEquals(3, carried(log, analyses, "Tank", "iron", OptionalDouble.of(19), UNTOLD).value());
  }

  @Test
  void aSampleCountsForWhatIsDrawnLaterThatDay() {
    Object[][] log = {
      {"Mead", "Tank", 100.0, 1.0}, {"Tank", "Keg", 10.0, 20.0}, {"Tank", "Cask", 90.0, 20.0},
    };
    Object[][] analyses = {{"Mead", 1.0, "iron", 3.0}, {"Tank", 20.0, "iron", 4.0}};
    assertEquals(4, carried(log, analyses, "Keg", "iron").value(), 1e-12);
    Object[][] filled = {
      {"Mead", "Tank", 100.0, 1.0},
      {"Tank", "Keg", 50.0, 20.0},
      {"Mead", "Tank", 50.0, 20.0},
      {"Tank", "Cask", 90.0, 20.0},
    };
    assertEquals(3, carried(filled, analyses, "Keg", "iron").value(), 1e-12);
    assertEquals(4, carried(filled, analyses, "Cask", "iron").value(), 1e-12);
  }

  @Test
  void aZeroIsNotExactForWantOfAnUncertainty() {
    Object[][] log = {{"Mead", "Tank", 100.0, 1.0}, {"Juice", "Tank", 100.0, 1.0}};
    Object[][] untold = {{"Mead", 1.0, "iron", 0.0}, {"Juice", 1.0, "iron", 4.0, 0.4}};
    assertEquals(
        "value in row 1 of analyses is 0 and its uncertainty is blank; a share of nothing would make it"
            + " exact. Write as uncertainty the least that the analysis can show.",
        refusal(log, untold, "Tank", "iron", 1));
    untold[0] = new Object[] {"Mead", 1.0, "iron", 0.0, 0.2};
    // dy/dv = ± 1/100 a litre, each volume ± 0.5 L
    assertEquals(
        Math.sqrt(0.1 * 0.1 + 0.2 * 0.2 + 2 * 0.005 * 0.005),
        carried(log, untold, "Tank", "iron").uncertainty(),
        1e-9);
    Object[][] replaced = {{"Mead", 1.0, "iron", 0.0}, {"Tank", 5.0, "iron", 2.0, 0.1}};
    assertEquals(0.1, carried(log, replaced, "Tank", "iron").uncertainty(), 1e-9, "counts no more");
  }

  /** What is written as 0 g/L may be half a gram, either way: a rectangle, 1/√12. */
  @Test
  void strengthAndSugarAreUncertainByTheirRoundingAtLeast() {
    Object[][] log = {{"Spirit", "Tank", 100.0, 1.0, 1e-9}};
    Object[][] analyses = {{"Spirit", 1.0, "sugar", 0.0}, {"Spirit", 1.0, "strength", 60.0}};
    assertEquals(1 / Math.sqrt(12), carried(log, analyses, "Tank", "sugar").uncertainty(), 1e-9);
    assertEquals(1.2, carried(log, analyses, "Tank", "strength").uncertainty(), 1e-4);
    analyses[0][3] = 100.0;
    assertEquals(2, carried(log, analyses, "Tank", "sugar").uncertainty(), 1e-9);
  }

  /** A log may be sorted as one likes. */
  @Test
  void theLaterAnalysisCountsWhereverItStands() {
    Object[][] log = {{"Mead", "Cask", 200.0, 1.0}};
    Object[] early = {"Cask", 50.0, "iron", 7.0};
    Object[] late = {"Cask", 80.0, "iron", 5.0};
    assertEquals(5, carried(log, new Object[][] {early, late}, "Cask", "iron").value());
    assertEquals(5, carried(log, new Object[][] {late, early}, "Cask", "iron").value());
    Object[] again = {"Cask", 80.0, "iron", 6.0};
    assertEquals(6, carried(log, new Object[][] {late, again}, "Cask", "iron").value());
  }

  /** Whatever has a time of day belongs to its day. */
  @Test
  void daysMayHaveATime() {
    Object[][] log = {{"Mead", "Tank", 100.0, 1.3}, {"Water", "Tank", 100.0, 5.6}};
    Object[][] later = {{"Mead", 1.7, "iron", 8.0}};
    assertEquals(8, ironOn(log, later, 4));
    assertEquals(4, ironOn(log, later, 5), "at the end of that day");
    Object[][] both = {{"Mead", 1.0, "iron", 8.0}, {"Tank", 5.4, "iron", 6.0}};
    assertEquals(3, ironOn(log, both, 5), "sampled before the water came");
    both[1][1] = 5.0;
    assertEquals(6, ironOn(log, both, 5), "without a time, once nothing more comes");
    both[1][1] = 5.7;
    assertEquals(6, ironOn(log, both, 5));
  }

  private static double ironOn(Object[][] log, Object[][] analyses, double day) {
    return carried(log, analyses, "Tank", "iron", OptionalDouble.of(day), UNTOLD).value();
  }

  /** Half a cellar's doubt each from two meads, and a shared one where both are the same. */
  @Test
  void uncertaintyByHand() {
    Object[][] log = {
      {"A", "Tank", 100.0, 1.0, 1.0}, {"B", "Tank", 100.0, 1.0, 1.0},
    };
    Object[][] analyses = {{"A", 1.0, "acid", 6.0, 0.3}, {"B", 1.0, "acid", 8.0, 0.4}};
    // dy/dv = (6 − 7)/200 and (8 − 7)/200 a litre
    assertEquals(
        Math.sqrt(0.15 * 0.15 + 0.2 * 0.2 + 2 * 0.005 * 0.005),
        carried(log, analyses, "Tank", "acid").uncertainty(),
        1e-9);
    Object[][] apart = {
      {"A", "Keg", 50.0, 1.0}, {"A", "Tank", 50.0, 1.0}, {"Keg", "Tank", 50.0, 2.0},
    };
    assertEquals(0.3, carried(apart, analyses, "Tank", "acid").uncertainty(), 1e-9);
    Object[][] gauged = {{"A", "Cask", 200.0, 1.0, 1.0}, {"gauge", "Cask", 190.0, 50.0, 2.0}};
    double factor = 200 / 190.0;
    assertEquals(
        Math.sqrt(
            Math.pow(0.3 * factor, 2)
                + Math.pow(6 / 190.0, 2)
                + Math.pow(2 * 6 * 200 / (190.0 * 190), 2)),
        carried(gauged, analyses, "Cask", "acid").uncertainty(),
        1e-8);
  }

  @Test
  void aGaugeThatFoundTooLittleIsPutRightByTheNext() {
    Object[][] analyses = {{"A", 1.0, "acid", 6.0}};
    Object[][] log = {
      {"A", "Cask", 200.0, 1.0}, {"gauge", "Cask", 199.0, 5.0}, {"gauge", "Cask", 200.5, 9.0},
    };
    assertEquals(6, carried(log, analyses, "Cask", "acid").value(), 1e-12);
    Object[][] strength = {{"A", 1.0, "strength", 14.0}};
    assertEquals(
        14, carried(log, strength, "Cask", "abv", UNTOLD, OptionalDouble.of(90)).value(), 1e-9);
  }

  /** A plain account of amounts in a random cellar, which writes its log and analyses. */
  private static final class Plain {
    static final double HUMIDITY = 80;

    final List<Object[]> rows = new ArrayList<>();
    final List<Object[]> analyses = new ArrayList<>();
    final Map<String, double[]> vessels = new TreeMap<>(); // L, kg, kg ethanol, g acid, L gone
    final double[] came = new double[3];
    double day = 1;

    Plain(Random random, boolean closed) {
      for (int s = 0; s < 4; s++) {
        analyses.add(new Object[] {"Mead " + s, 1.0, "strength", 5 + 12 * random.nextDouble()});
        analyses.add(new Object[] {"Mead " + s, 1.0, "acid", 4 + 4 * random.nextDouble()});
      }
      analyses.add(new Object[] {"Spirit", 1.0, "strength", 96.0});
      analyses.add(new Object[] {"Spirit", 1.0, "acid", 0.0, 0.01});
      int steps = 1 + random.nextInt(60);
      for (int i = 0; i < steps; i++) {
        day += random.nextInt(3);
        String from = "Vessel " + random.nextInt(5);
        String to = "Vessel " + random.nextInt(5);
        double[] there = vessels.getOrDefault(from, new double[5]);
        int kind = random.nextInt(closed ? 5 : 7);
        if (there[0] < 1 || kind == 0 || from.equals(to)) {
          come(to, random);
        } else if (kind == 5) {
          gauge(from, there, random);
        } else if (kind == 6) {
          day++;
          analyse(from, there, random);
          day++;
        } else {
          double part = kind == 1 ? 1 : random.nextDouble();
          String target = kind == 2 ? "loss" : to;
          rows.add(new Object[] {from, target, part * there[0], day});
          double[] into = vessels.computeIfAbsent(target, v -> new double[5]);
          for (int k = 0; k < 4; k++) {
            into[k] += part * there[k];
            there[k] = part == 1 ? 0 : (1 - part) * there[k];
          }
          there[4] = part == 1 ? 0 : there[4];
        }
      }
    }

    private void come(String to, Random random) {
      int s = random.nextInt(8);
      String source = s < 4 ? "Mead " + s : s == 4 ? "Spirit" : s == 5 ? "water" : "Mead 0";
      double litres = s == 4 ? 5 : 10 + random.nextInt(300);
      double abv = s == 5 ? 0 : value(source, "strength");
      double ethanol = EthanolWater.massFraction(abv / 100);
      double kg = litres * EthanolWater.density(ethanol, 20) / 1000;
      double[] into = vessels.computeIfAbsent(to, v -> new double[5]);
      rows.add(new Object[] {source, to, litres, day});
      into[0] += litres;
      into[1] += kg;
      into[2] += kg * ethanol;
      into[3] += s == 5 ? 0 : litres * value(source, "acid");
      came[0] += kg;
      came[1] += kg * ethanol;
      came[2] += s == 5 ? 0 : litres * value(source, "acid");
    }

    private double value(String lot, String property) {
      for (Object[] row : analyses) {
        if (row[0].equals(lot) && row[2].equals(property)) {
          return (double) row[3];
        }
      }
      throw new AssertionError(lot);
    }

    /** Water and ethanol leave step by step, ethanol as what is there, water also by the air. */
    private void gauge(String vessel, double[] there, Random random) {
      double found = there[0] * (random.nextInt(4) == 0 ? 1.003 : 1 - 0.2 * random.nextDouble());
      double evaporated = Math.max(there[0] - found, -there[4]);
      rows.add(new Object[] {"gauge", vessel, found, day});
      double left = there[0] - evaporated;
      double abv = abv(there) / 100;
      double real = there[1] * 1000 / EthanolWater.density(there[2] / there[1], 20);
      double k = (100 - HUMIDITY) / (100 - 67);
      double ethanol = abv;
      double water = 1 - abv;
      int steps = 2000;
      double lost = (1 - left / real) / steps;
      for (int i = 0; i < steps; i++) {
        double half = lost / 2 / (ethanol + k * water);
        double e = ethanol * (1 - half);
        double w = water * (1 - k * half);
        double whole = lost / (e + k * w);
        ethanol -= e * whole;
        water -= k * w * whole;
      }
      set(there, left, 100 * ethanol / (ethanol + water), there[3] / left);
      there[4] = Math.max(0, there[4] + evaporated);
      double scale = found / left;
      if (scale > 1 + 1e-12) {
        for (int i = 0; i < 4; i++) {
          there[i] *= scale;
        }
        there[4] = 0;
      }
      there[0] = found;
    }

    private static void set(double[] there, double litres, double abv, double acid) {
      double fraction = EthanolWater.massFraction(abv / 100);
      there[0] = litres;
      there[1] = litres * EthanolWater.density(fraction, 20) / 1000;
      there[2] = there[1] * fraction;
      there[3] = litres * acid;
    }

    private void analyse(String vessel, double[] there, Random random) {
      double abv = abv(there) + random.nextDouble() - 0.5;
      double acid = there[3] / there[0] + random.nextDouble() - 0.5;
      if (abv > 0 && acid > 0) {
        // so uncertain that no ferment is seen in it
        analyses.add(new Object[] {vessel, day, "strength", abv, 5.0});
        analyses.add(new Object[] {vessel, day, "acid", acid, 5.0});
        set(there, there[0], abv, acid);
        there[4] = 0;
      }
    }

    static double abv(double[] there) {
      return 100 * EthanolWater.volumeFraction(there[2] / there[1]);
    }

    Object[][] log() {
      return rows.toArray(Object[][]::new);
    }

    Object[][] analyses() {
      return analyses.toArray(Object[][]::new);
    }
  }

  @Property
  void aSecondAccountAgrees(long seed) {
    Plain plain = new Plain(new Random(seed), false);
    plain.vessels.forEach(
        (vessel, there) -> {
          if (there[0] > 0.01 && !vessel.equals("loss")) {
            OptionalDouble humidity = OptionalDouble.of(Plain.HUMIDITY);
            OptionalDouble end = OptionalDouble.of(plain.day);
            Object[][] log = plain.log();
            Object[][] analyses = plain.analyses();
            assertEquals(
                there[3] / there[0],
                carried(log, analyses, vessel, "acid", end, humidity).value(),
                1e-9);
            assertEquals(
                Plain.abv(there),
                carried(log, analyses, vessel, "strength", end, humidity).value(),
                1e-6);
          }
        });
  }

  /** Where nothing evaporates, what came in is held: alcohol, water and what is dissolved. */
  @Property
  void whatCameInIsHeldOrLost(long seed) {
    Plain plain = new Plain(new Random(seed), true);
    for (Amounts amounts : List.of(new Amounts.Alcohol(67), new Amounts.Dissolved())) {
      boolean strength = amounts instanceof Amounts.Alcohol;
      TransferLog log =
          TransferLog.of(
              Tables.read("BLEND.CARRIED", 0, plain.log()), UNTOLD, Slack.byUncertainty());
      Analyses analyses =
          new Analyses(
              log,
              Tables.read("BLEND.CARRIED", 1, plain.analyses()),
              meadcell.blend.Property.asked(strength ? "strength" : "acid"));
      Additions none =
          new Additions(log, List.of(), List.of(), meadcell.blend.Property.asked("acid"));
      Carry carry = new Carry(log, analyses, none, amounts, plain.day, new Carry.Watch() {});
      double[] held = new double[2];
      for (int vessel = 0; vessel < log.size(); vessel++) {
        for (int k = 0; k < 2 && carry.volumeL(vessel) > 0; k++) {
          double[] perLitre = carry.perLitre(vessel);
          held[k] += carry.volumeL(vessel) * perLitre[Math.min(k, perLitre.length - 1)];
        }
      }
      assertEquals(strength ? plain.came[0] : plain.came[2], held[0], 1e-9 * plain.came[0]);
      assertEquals(strength ? plain.came[1] : plain.came[2], held[1], 1e-9 * plain.came[0]);
    }
  }

  /** A true cellar, and what was noted of it with the uncertainties that it says. */
  @Test
  void theUncertaintyHoldsTheTruth() {
    Random random = new Random(11);
    int cellars = 1500;
    int[] held = new int[2];
    int[] told = new int[2];
    for (int i = 0; i < cellars; i++) {
      Noted noted = new Noted(random);
      for (int p = 0; p < 2; p++) {
        double truth = p == 0 ? noted.abv("Tank") : noted.acid("Tank");
        try {
          Carried.Value value =
              carried(
                  noted.rows.toArray(Object[][]::new),
                  noted.analyses.toArray(Object[][]::new),
                  "Tank",
                  p == 0 ? "strength" : "acid",
                  OptionalDouble.of(noted.day),
                  OptionalDouble.of(80));
          told[p]++;
          held[p] += Math.abs(value.value() - truth) <= 2 * value.uncertainty() ? 1 : 0;
        } catch (Refusal refusal) {
          assertTrue(
              refusal.getMessage().matches("Row \\d+ of transfers .*|.* as in a ferment.*"),
              refusal.getMessage());
        }
      }
    }
    for (int p = 0; p < 2; p++) {
      assertTrue(told[p] > 0.6 * cellars);
      assertEquals(0.954, held[p] / (double) told[p], 0.02);
    }
  }

  /** Pure volumes of ethanol and water, which add up: no contraction where there is no spirit. */
  private static final class Noted {
    final List<Object[]> rows = new ArrayList<>();
    final List<Object[]> analyses = new ArrayList<>();
    final Map<String, double[]> vessels = new TreeMap<>(); // ethanol L, water L, acid g
    final Random random;
    double day = 1;

    Noted(Random random) {
      this.random = random;
      vessels.put("Tank", new double[3]);
      for (int c = 0; c < 3; c++) {
        String cask = "Cask " + c;
        double litres = 60 + 140 * random.nextDouble();
        double abv = 9 + 7 * random.nextDouble();
        double acid = 4 + 4 * random.nextDouble();
        vessels.put(
            cask, new double[] {litres * abv / 100, litres * (1 - abv / 100), litres * acid});
        note("Mead " + c, cask, litres, 0.4);
        analysis("Mead " + c, abv, acid);
      }
      for (int month = 0; month < 6; month++) {
        day += 30;
        for (int c = 0; c < 3; c++) {
          double[] cask = vessels.get("Cask " + c);
          evaporate(cask, 0.005 + 0.01 * random.nextDouble());
          note("gauge", "Cask " + c, cask[0] + cask[1], 0.6);
          if (c > 0 && random.nextInt(3) == 0) {
            move("Cask " + (c - 1), "Cask " + c, 0.02);
          }
          if (random.nextInt(8) == 0) {
            analysis("Cask " + c, abv("Cask " + c), acid("Cask " + c));
          }
        }
      }
      for (int c = 0; c < 3; c++) {
        move("Cask " + c, "Tank", 0.3 + 0.5 * random.nextDouble());
      }
    }

    double abv(String vessel) {
      double[] there = vessels.get(vessel);
      return 100 * there[0] / (there[0] + there[1]);
    }

    double acid(String vessel) {
      double[] there = vessels.get(vessel);
      return there[2] / (there[0] + there[1]);
    }

    private void note(String from, String to, double litres, double u) {
      rows.add(new Object[] {from, to, litres + u * random.nextGaussian(), day, u});
    }

    private void analysis(String lot, double abv, double acid) {
      analyses.add(new Object[] {lot, day, "strength", abv + 0.1 * random.nextGaussian(), 0.1});
      analyses.add(new Object[] {lot, day, "acid", acid + 0.05 * random.nextGaussian(), 0.05});
    }

    private void move(String from, String to, double part) {
      double[] there = vessels.get(from);
      double[] into = vessels.get(to);
      note(from, to, part * (there[0] + there[1]), 0.2);
      for (int k = 0; k < 3; k++) {
        into[k] += part * there[k];
        there[k] *= 1 - part;
      }
    }

    private static void evaporate(double[] there, double share) {
      double left = (1 - share) * (there[0] + there[1]);
      while (there[0] + there[1] > left) {
        there[0] *= 1 - 1e-5;
        there[1] *= 1 - 1e-5 * (100 - 80) / (100 - 67);
      }
    }
  }

  @Test
  void anUntoldHumidityMakesStrengthLessSure() {
    Object[][] log = {{"A", "Cask", 200.0, 1.0}, {"gauge", "Cask", 180.0, 500.0}};
    Object[][] analyses = {{"A", 1.0, "strength", 13.0, 0.01}};
    Carried.Value told = carried(log, analyses, "Cask", "strength", UNTOLD, OptionalDouble.of(67));
    Carried.Value untold = carried(log, analyses, "Cask", "strength");
    assertEquals(told.value(), untold.value());
    double drier =
        carried(log, analyses, "Cask", "strength", UNTOLD, OptionalDouble.of(57)).value();
    double u = Math.sqrt(Math.pow(untold.uncertainty(), 2) - Math.pow(told.uncertainty(), 2));
    assertEquals(drier - told.value(), u, 0.02);
  }

  private static String refusal(
      Object[][] log, Object[][] analyses, String lot, String property, double day) {
    Refusal refusal =
        assertThrows(
            Refusal.class,
            () -> carried(log, analyses, lot, property, OptionalDouble.of(day), UNTOLD));
    return refusal.getMessage();
  }

  private static final Object[][] FERMENT = {
    {"Heather must", "Tank", 300.0, 1.0}, {"Tank", "Cask", 200.0, 61.0},
  };

  private static Object[][] must(Object[]... more) {
    List<Object[]> rows = new ArrayList<>();
    rows.add(new Object[] {"Heather must", 1.0, "sugar", 250.0});
    rows.add(new Object[] {"Heather must", 1.0, "strength", 0.0});
    rows.addAll(List.of(more));
    return rows.toArray(Object[][]::new);
  }

  @Test
  void aFermentIsNotCarriedThrough() {
    Object[] dry = {"Tank", 60.0, "sugar", 12.0};
    Object[] strong = {"Tank", 60.0, "strength", 13.1, 0.1};
    assertEquals(
        250, carried(FERMENT, must(), "Tank", "sugar", OptionalDouble.of(1), UNTOLD).value());
    assertTrue(
        refusal(FERMENT, must(), "Tank", "sugar", 2)
            .startsWith("The sugar is not known: \"Heather must\", which may ferment"));
    assertTrue(refusal(FERMENT, must(), "Cask", "strength", 61).contains("came into \"Tank\""));
    assertEquals(
        "The strength is not known: in \"Tank\" it went from 0 to 13.1 between day number 1 and day"
            + " number 60 as in a ferment, so it cannot be carried through those days.",
        refusal(FERMENT, must(dry, strong), "Tank", "strength", 30));
    assertEquals(13.1, carried(FERMENT, must(dry, strong), "Cask", "strength").value(), 1e-9);
    assertEquals(12, carried(FERMENT, must(dry, strong), "Cask", "sugar").value(), 1e-9);
  }

  @Test
  void aFermentThatStillRunsIsNotCarriedOn() {
    Object[] early = {"Tank", 20.0, "strength", 6.0, 0.1};
    Object[] later = {"Tank", 40.0, "strength", 11.0, 0.1};
    Object[] same = {"Tank", 50.0, "strength", 11.1, 0.1};
    Object[] dry = {"Tank", 40.0, "sugar", 4.0};
    Object[] sweet = {"Tank", 40.0, "sugar", 4.1};
    assertTrue(
        refusal(FERMENT, must(early, later, sweet), "Tank", "strength", 45)
            .startsWith(
                "The strength is not known: in \"Tank\" it still changed, from 6 to 11 by day number 40"));
    assertTrue(
        refusal(FERMENT, must(early, later), "Cask", "strength", 70).contains("still changed"));
    OptionalDouble day = OptionalDouble.of(70);
    assertEquals(
        11.1,
        carried(FERMENT, must(early, later, same), "Cask", "strength", day, UNTOLD).value(),
        1e-9);
    assertEquals(
        11,
        carried(FERMENT, must(early, later, dry), "Cask", "strength", day, UNTOLD).value(),
        1e-9);
  }

  @Test
  void onlyWhatMayFermentIsTakenForIt() {
    Object[][] log = {{"Mead", "Tank", 100.0, 1.0}, {"Syrup", "Tank", 5.0, 50.0}};
    Object[][] dilute = {
      {"Mead", 1.0, "sugar", 40.0}, {"Mead", 1.0, "strength", 1.2}, {"Syrup", 1.0, "sugar", 4.0},
    };
    assertTrue(carried(log, dilute, "Tank", "sugar").value() > 0);
    dilute[2][3] = 4.1;
    assertTrue(carried(log, dilute, "Tank", "sugar").value() > 0); // on the day itself
    assertTrue(refusal(log, dilute, "Tank", "sugar", 51).contains("\"Syrup\", which may ferment"));
    dilute[2][3] = 4.0;
    dilute[1][3] = 1.1;
    assertTrue(refusal(log, dilute, "Tank", "sugar", 2).contains("\"Mead\", which may ferment"));
    Object[][] water = {{"Mead", "Tank", 100.0, 1.0}, {"WATER", "Tank", 100.0, 50.0}};
    dilute[1][3] = 12.0;
    assertEquals(
        20, carried(water, dilute, "Tank", "sugar", OptionalDouble.of(90), UNTOLD).value(), 1e-9);
  }

  @Test
  void whatIsNotConservedIsRefusedWithAPointer() {
    Object[][] log = {{"Mead", "Tank", 100.0, 1.0}};
    Object[][] analyses = {{"Mead", 1.0, "pH", 3.4}, {"Mead", 1.0, "Total SO2", 80.0}};
    assertTrue(refusal(log, analyses, "Tank", "pH", 1).contains("blend a sample"));
    assertTrue(refusal(log, analyses, "Tank", "Free SO₂", 1).contains("SULFITE.DECAY"));
    assertTrue(refusal(log, analyses, "Tank", "SG", 1).contains("BLEND.GRAVITY"));
    assertTrue(refusal(log, analyses, "Tank", "CO₂", 1).contains("not conserved"));
    assertEquals(80, carried(log, analyses, "Tank", "total  SO₂").value());
    assertEquals(
        "analyses have no property \"total S\". Did you mean Total SO2?",
        refusal(log, analyses, "Tank", "total S", 1));
  }

  @Test
  void whatIsMissingIsNamed() {
    Object[][] log = {{"Mead", "Tank", 100.0, 5.0}, {"Cherry", "Tank", 50.0, 9.0}};
    Object[][] analyses = {{"Mead", 5.0, "acid", 6.0}, {"Cherry", 10.0, "acid", 8.0}};
    assertTrue(
        refusal(log, analyses, "Tank", "acid", 9)
            .startsWith("The acid is not known: analyses have none of \"Cherry\""));
    analyses[1][1] = 9.0;
    assertEquals(20 / 3.0, carried(log, analyses, "Tank", "acid").value(), 1e-12);
    Object[][] misspelt = {{"Mead", 5.0, "acid", 6.0}, {"Tanc", 6.0, "acid", 8.0}};
    assertEquals(
        "Row 2 of analyses is of \"Tanc\", which is not in transfers. Did you mean Tank?",
        refusal(log, misspelt, "Tank", "acid", 5));
    Object[][] early = {{"Mead", 5.0, "acid", 6.0}, {"Tank", 4.0, "acid", 8.0}};
    assertEquals(
        "Row 2 of analyses is of \"Tank\", which holds nothing by then, as far as transfers say.",
        refusal(log, early, "Tank", "acid", 5));
    assertTrue(refusal(log, analyses, "Mead", "acid", 5).contains("holds nothing"));
    assertTrue(refusal(log, analyses, "Tnk", "acid", 5).contains("Did you mean Tank?"));
    Object[][] strong = {{"Mead", 5.0, "strength", 100.1}};
    assertEquals(
        "value in row 1 of analyses is 100.1; it must be 0 to 100.",
        refusal(log, strong, "Tank", "strength", 5));
  }

  @Test
  void whyNamesTheAnalysesAndWhatEachCountsFor() {
    Object[][] log = {{"A", "Tank", 30.0, 1.0}, {"B", "Tank", 10.0, 1.0}};
    Object[][] analyses = {{"A", 1.0, "acid", 6.0}, {"B", 1.0, "acid", 8.0}};
    assertEquals(
        "Carried from 2 analyses; each counts with what the value would rise if it were 1 more: 0.75"
            + " for \"A\" of day number 1, 6 (row 1 of analyses); 0.25 for \"B\" of day number 1, 8"
            + " (row 2 of analyses).",
        Cellar.catalogue()
            .get("CELLAR.WHY")
            .call("BLEND.CARRIED", log, analyses, "Tank", "acid", null, null, "US"));
  }
}
