package meadcell.ferment;

import static meadcell.ferment.SimulatedFerment.between;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import meadcell.catalogue.Refusal;
import org.apache.commons.math3.stat.descriptive.moment.Mean;
import org.junit.jupiter.api.Test;

/** FERMENT.REMAINING's limit holds what ferments that no straight line has made still fall. */
class RemainingSimulationTest {
  private static final int LOGS = 1000 * SimulationReport.TIMES;
  private static final int[] HORIZONS = {30, 90, 365};

  private final Random random = new Random(20261101);
  private final Map<String, Tally> tallies = new TreeMap<>();
  private final Tally judged = new Tally();
  private int asked;
  private int refused;

  private static final class Tally {
    int held;
    final Mean fell = new Mean();
    final Mean expected = new Mean();
    final Mean upper = new Mean();

    void add(double fall, Prospect.Remaining remaining) {
      held += fall <= remaining.upper() + 1e-9 ? 1 : 0;
      fell.increment(fall);
      expected.increment(remaining.expected());
      upper.increment(remaining.upper());
    }

    double heldShare() {
      return held / (double) fell.getN();
    }
  }

  @Test
  void theLimitHoldsWhatComes() {
    for (int log = 0; log < LOGS; log++) {
      int every = Readings.EVERY[random.nextInt(Readings.EVERY.length)];
      int count = 4 + random.nextInt(12);
      double days = every * between(random, 5, 15);
      SimulatedFerment ferment =
          random.nextBoolean()
              ? SimulatedFerment.longTail(random, days)
              : SimulatedFerment.monod(random, days);
      double last = ferment.dayOf(between(random, 0.8, 0.999));
      add("smooth", every, count, last, ferment::gravity);

      double fall = between(random, 0, 0.0004);
      double horizon = HORIZONS[HORIZONS.length - 1];
      double end = between(random, 0.99, 1.02);
      double full = every * (count - 1);
      add("straight", every, count, full, day -> end + fall * (full + horizon - day));

      double from = ferment.dayOf(between(random, 0.5, 0.95));
      double spell = between(random, 5, 40);
      ferment.withColdSpell(from, from + spell, between(random, 0, 0.3));
      add(
          "cold spell behind it",
          every,
          count,
          from + between(random, 1, 3) * spell,
          ferment::gravity);
      add("in a cold spell", every, count, from + between(random, 0, 1) * spell, ferment::gravity);

      ferment.stoppedAt(ferment.dayOf(between(random, 0.3, 0.5)));
      add("still", every, count, from + between(random, 20, 200), ferment::gravity);
    }
    report();
    assertTrue(judged.heldShare() >= 0.95, () -> "held " + judged.heldShare());
    assertTrue(refused < 0.01 * asked, () -> refused + " of " + asked + " seemed to rise");
  }

  private void add(String kind, int every, int count, double lastDay, DoubleUnaryOperator gravity) {
    int reads = Math.min(count, 1 + (int) (lastDay / every));
    if (reads < 3) {
      return;
    }
    int horizon = HORIZONS[random.nextInt(HORIZONS.length)];
    Readings readings = Readings.upTo(lastDay, reads, every, gravity, random);
    asked++;
    Prospect.Remaining remaining;
    try {
      remaining = Prospect.remaining(readings.days(), readings.gravities(), horizon, 0.0006);
    } catch (Refusal rise) {
      refused++;
      return;
    }
    double fall = gravity.applyAsDouble(lastDay) - gravity.applyAsDouble(lastDay + horizon);
    tallies
        .computeIfAbsent(String.format("%s, %3d days", kind, horizon), k -> new Tally())
        .add(fall, remaining);
    if (!kind.contains("cold")) {
      judged.add(fall, remaining);
    }
  }

  private void report() {
    SimulationReport report = new SimulationReport();
    report.line("Further fall and its limit; those with a cold spell are not judged");
    report.line("%-34s %6s %7s %9s %9s %9s", "", "logs", "held %", "fell", "expected", "limit");
    tallies.put("~ all that are judged", judged);
    tallies.forEach(
        (kind, tally) ->
            report.line(
                "%-34s %6d %7.1f %9.4f %9.4f %9.4f",
                kind,
                tally.fell.getN(),
                100 * tally.heldShare(),
                tally.fell.getResult(),
                tally.expected.getResult(),
                tally.upper.getResult()));
    report.write("remaining");
  }
}
