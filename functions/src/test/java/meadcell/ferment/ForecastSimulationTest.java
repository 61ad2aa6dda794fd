package meadcell.ferment;

import static meadcell.ferment.SimulatedFerment.between;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.Test;

/** FERMENT.FORECAST's limits hold the true end of ferments that its curves have not made. */
class ForecastSimulationTest {
  private static final int LOGS = 1000 * SimulationReport.TIMES;

  /** Fewest and most readings in the first nine tenths of a ferment read so often. */
  private static final int[][] READINGS = {{8, 25}, {6, 20}, {5, 15}, {4, 12}};

  private static final String ROW = "%-44s %6d %9.1f %9.1f %9.1f %9.4f %9.4f";

  private final Random random = new Random(20261101);
  private final SimulationReport report = new SimulationReport();

  private static final class Tally {
    int logs;
    int above;
    int below;
    final DescriptiveStatistics widths = new DescriptiveStatistics();
    final DescriptiveStatistics errors = new DescriptiveStatistics();

    void add(Readings readings, double end) {
      logs++;
      try {
        Prospect.Forecast forecast =
            Prospect.forecast(readings.days(), readings.gravities(), 0.001);
        assertTrue(forecast.lower() <= forecast.terminal());
        assertTrue(forecast.terminal() <= Math.min(forecast.upper(), readings.last()));
        widths.addValue(forecast.upper() - forecast.lower());
        errors.addValue(Math.abs(forecast.terminal() - end));
        above += end > forecast.upper() ? 1 : 0;
        below += end < forecast.lower() ? 1 : 0;
      } catch (Refusal open) {
        assertTrue(open.getMessage().length() > 20);
      }
    }

    double answered() {
      return widths.getN() / (double) logs;
    }

    double held() {
      return 1 - (above + below) / (double) widths.getN();
    }

    void print(String what, SimulationReport report) {
      report.line(
          ROW,
          what,
          logs,
          100 * answered(),
          100 * held(),
          100.0 * above / Math.max(1, widths.getN()),
          widths.getPercentile(50),
          errors.getPercentile(50));
    }
  }

  @Test
  void smoothFermentsFromSixtyPercentOfTheWay() {
    Map<String, Tally> tallies = new TreeMap<>();
    Tally all = new Tally();
    for (int log = 0; log < LOGS; log++) {
      int frequency = random.nextInt(Readings.EVERY.length);
      int every = Readings.EVERY[frequency];
      double days = every * between(random, READINGS[frequency][0], READINGS[frequency][1]);
      boolean longTail = random.nextBoolean();
      SimulatedFerment ferment =
          longTail ? SimulatedFerment.longTail(random, days) : SimulatedFerment.monod(random, days);
      double way = between(random, 0.6, 0.98);
      int count = (int) Math.ceil(ferment.dayOf(way) / every) + 1;
      Readings readings =
          Readings.upTo((count - 1) * every, count, every, ferment::gravity, random);
      String kind =
          String.format(
              "%s, every %2d days, %s of the way",
              longTail ? "long tail" : "Monod", every, way < 0.8 ? "60 to 80 %" : "80 to 98 %");
      tallies.computeIfAbsent(kind, k -> new Tally()).add(readings, ferment.end());
      all.add(readings, ferment.end());
    }
    head("Smooth ferments; below 5 readings is refused");
    tallies.forEach((kind, tally) -> tally.print(kind, report));
    all.print("all", report);
    report.write("forecast-smooth");
    assertTrue(all.answered() >= 0.7, () -> "answered " + all.answered());
    assertTrue(all.held() >= 0.9, () -> "held " + all.held());
  }

  /**
   * Read carelessly, warm or full of gas: readings scatter up to eight times as much as they need.
   */
  @Test
  void coarseReadingsWidenTheLimits() {
    Map<String, Tally> tallies = new TreeMap<>();
    for (int log = 0; log < LOGS / 4; log++) {
      int every = Readings.EVERY[random.nextInt(2)];
      double days = every * between(random, 8, 25);
      SimulatedFerment ferment =
          random.nextBoolean()
              ? SimulatedFerment.longTail(random, days)
              : SimulatedFerment.monod(random, days);
      int count = (int) Math.ceil(ferment.dayOf(between(random, 0.6, 0.98)) / every) + 1;
      double scatter = between(random, 0.0005, 0.004);
      Readings readings =
          Readings.upTo(
              (count - 1) * every,
              count,
              every,
              day -> ferment.gravity(day) + scatter * random.nextGaussian(),
              random);
      String kind = "scatter of " + Math.ceil(1000 * scatter) + " points at most";
      tallies.computeIfAbsent(kind, k -> new Tally()).add(readings, ferment.end());
    }
    head("Coarse readings");
    tallies.forEach((kind, tally) -> tally.print(kind, report));
    report.write("forecast-coarse");
    tallies.forEach((kind, tally) -> assertTrue(tally.held() >= 0.9, kind + ": " + tally.held()));
  }

  /** Where they fall unevenly or straight, no curve knows the end: these are tabled. */
  @Test
  void unevenFermentsAreMostlyRefusedOrHeld() {
    Tally cold = new Tally();
    Tally straight = new Tally();
    for (int log = 0; log < LOGS / 10; log++) {
      int every = Readings.EVERY[random.nextInt(2)];
      SimulatedFerment ferment = SimulatedFerment.monod(random, every * between(random, 8, 20));
      double from = ferment.dayOf(between(random, 0.2, 0.6));
      double spell = every * between(random, 3, 8);
      ferment.withColdSpell(from, from + spell, between(random, 0, 0.2));
      int count = (int) Math.ceil((ferment.dayOf(between(random, 0.6, 0.98)) + spell) / every) + 1;
      cold.add(
          Readings.upTo((count - 1) * every, count, every, ferment::gravity, random),
          ferment.end());

      double fall = between(random, 0.0005, 0.003);
      double end = between(random, 0.992, 1.02);
      double start = end + between(random, 0.05, 0.1);
      int read = (int) (between(random, 0.6, 0.98) * (start - end) / fall / every) + 1;
      straight.add(
          Readings.upTo((read - 1) * every, read, every, day -> start - fall * day, random), end);
    }
    head("Uneven ferments, tabled");
    cold.print("cold spell", report);
    straight.print("straight to its end", report);
    report.write("forecast-uneven");
    assertTrue(cold.logs > 0 && straight.logs > 0);
  }

  private void head(String title) {
    report.line("%s", title);
    report.line(
        "%-44s %6s %9s %9s %9s %9s %9s",
        "", "logs", "answered%", "held %", "above %", "width", "error");
  }
}
