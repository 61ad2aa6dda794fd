package meadcell.ferment;

import static meadcell.ferment.SimulatedFerment.between;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** FERMENT.STATE does not call a falling ferment finished, and tells a still one in four weeks. */
class StateSimulationTest {
  private static final int LOGS = 2000 * SimulationReport.TIMES;
  private static final double EXPECTED = 0.998;
  private static final double MIN_FALL = 0.0001;
  private static final double FALLING = 1.5 * MIN_FALL;
  private static final int FOUR_WEEKS = 28;
  private static final String[] VERDICTS = {"finished", "stalled", "falling", "cannot tell"};

  private final Random random = new Random(20261101);
  private final SimulationReport report = new SimulationReport();

  private static final class Tally {
    final Map<String, Integer> verdicts = new TreeMap<>();
    int logs;
    int right;

    void add(String verdict, boolean isRight) {
      verdicts.merge(verdict, 1, Integer::sum);
      logs++;
      right += isRight ? 1 : 0;
    }

    double share(String verdict) {
      return verdicts.getOrDefault(verdict, 0) / (double) logs;
    }

    double calledStill() {
      return share("finished") + share("stalled");
    }
  }

  private final Map<String, Tally> tallies = new TreeMap<>();
  private final Tally falling = new Tally();

  @Test
  void fallingFermentsAreNotCalledStill() {
    for (int log = 0; log < LOGS; log++) {
      int every = Readings.EVERY[random.nextInt(Readings.EVERY.length)];
      int count = 3 + random.nextInt(12);
      straight(every, count);
      curved(every, count);
    }
    report("state-falling", "Falling at least 1.5 minFall on the last day", falling);
    assertTrue(falling.calledStill() <= 0.01, () -> "called still " + falling.calledStill());
  }

  private void straight(int every, int count) {
    double fall = between(random, 0.00015, 0.0004);
    double level = between(random, 0.99, 1.03);
    add("straight", every, fall, count, every * (count - 1), day -> level - fall * day);
  }

  /** Weeks and months after the main fall, where there is something to decide. */
  private void curved(int every, int count) {
    double days = every * between(random, 5, 15);
    SimulatedFerment ferment =
        random.nextBoolean()
            ? SimulatedFerment.longTail(random, days)
            : SimulatedFerment.monod(random, days);
    String kind = "smooth";
    double last = ferment.dayOf(between(random, 0.7, 0.998));
    if (random.nextInt(3) == 0) {
      kind = "cold spell";
      double from = ferment.dayOf(between(random, 0.5, 0.95));
      double spell = between(random, 5, 40);
      ferment.withColdSpell(from, from + spell, between(random, 0, 0.3));
      last = from + between(random, 0, 3) * spell;
    }
    int reads = Math.min(count, 1 + (int) (last / every));
    if (reads >= 3) {
      add(kind, every, ferment.fallPerDay(last), reads, last, ferment::gravity);
    }
  }

  private void add(
      String kind, int every, double fall, int count, double lastDay, DoubleUnaryOperator gravity) {
    Readings readings = Readings.upTo(lastDay, count, every, gravity, random);
    String verdict = verdict(readings);
    boolean isFalling = fall >= FALLING;
    if (isFalling) {
      falling.add(verdict, verdict.equals("falling"));
    }
    tallies
        .computeIfAbsent(
            String.format("%s, every %2d days, %s", kind, every, isFalling ? "falling" : "slower"),
            k -> new Tally())
        .add(verdict, verdict.equals("falling"));
  }

  private static String verdict(Readings readings) {
    return Prospect.state(readings.days(), readings.gravities(), EXPECTED, Readings.NOISE, MIN_FALL)
        .word();
  }

  /** Stopped at least four weeks ago, by whatever; four readings or more since then. */
  @Test
  void stillFermentsAreTold() {
    Tally still = new Tally();
    for (int log = 0; log < LOGS; log++) {
      int every = Readings.EVERY[random.nextInt(Readings.EVERY.length)];
      SimulatedFerment ferment = SimulatedFerment.longTail(random, between(random, 10, 200));
      double stop = ferment.dayOf(between(random, 0.6, 0.99));
      ferment.stoppedAt(stop);
      double last = stop + Math.max(FOUR_WEEKS, 3 * every) + between(random, 0, 2 * every);
      int count = 1 + (int) (last / every);
      String right = ferment.gravity(last) <= EXPECTED + 0.002 ? "finished" : "stalled";
      String verdict = verdict(Readings.upTo(last, count, every, ferment::gravity, random));
      still.add(verdict, verdict.equals(right));
      tallies
          .computeIfAbsent(String.format("still, every %2d days", every), k -> new Tally())
          .add(verdict, verdict.equals(right));
    }
    report("state-still", "Still for four weeks", still);
    double right = still.right / (double) still.logs;
    assertTrue(right >= 0.85, () -> "right " + right);
  }

  private void report(String name, String title, Tally judged) {
    report.line("%s, per cent of the logs", title);
    report.line(
        "%-36s %6s %9s %9s %9s %12s %7s",
        "", "logs", "finished", "stalled", "falling", "cannot tell", "right");
    tallies.put("~ all that are judged", judged);
    tallies.forEach(
        (kind, tally) ->
            report.line(
                "%-36s %6d %9.2f %9.2f %9.2f %12.2f %7.1f",
                kind,
                tally.logs,
                100 * tally.share(VERDICTS[0]),
                100 * tally.share(VERDICTS[1]),
                100 * tally.share(VERDICTS[2]),
                100 * tally.share(VERDICTS[3]),
                100.0 * tally.right / tally.logs));
    report.write(name);
  }
}
