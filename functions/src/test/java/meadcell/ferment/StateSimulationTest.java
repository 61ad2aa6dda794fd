package meadcell.ferment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * FERMENT.STATE must not cry wolf: simulated logs with hydrometer noise of 0.0005, read to 0.001.
 */
class StateSimulationTest {
  private static final int LOGS = 1000;
  private static final double NOISE = 0.0005;

  private final Random random = new Random(20261101);

  @Test
  void verdicts() {
    Map<String, Integer> slow = verdicts(0.001, 0.003, 3, 21);
    Map<String, Integer> stuck = verdicts(0, 0, 6, 21);
    Map<String, Integer> tooShort = verdicts(0, 0.0003, 1, 3);

    System.out.printf(
        "%-28s %9s %9s %9s %12s%n",
        "of " + LOGS + " logs", "finished", "falling", "stalled", "cannot tell");
    print("slow, 0.001 to 0.003 a day", slow);
    print("stuck, 6 to 21 days", stuck);
    print("too short, 1 to 3 days", tooShort);

    assertTrue(share(slow, "stalled") <= 0.02);
    assertTrue(share(slow, "falling") >= 0.9);
    assertTrue(share(stuck, "stalled") >= 0.85);
    assertTrue(share(tooShort, "cannot tell") >= 0.85);
    assertEquals(0, share(tooShort, "stalled"));
  }

  private Map<String, Integer> verdicts(
      double leastFall, double mostFall, int leastSpan, int mostSpan) {
    Map<String, Integer> verdicts = new TreeMap<>();
    for (int log = 0; log < LOGS; log++) {
      double fall = leastFall + (mostFall - leastFall) * random.nextDouble();
      int span = leastSpan + random.nextInt(mostSpan - leastSpan + 1);
      verdicts.merge(verdict(days(span), fall), 1, Integer::sum);
    }
    return verdicts;
  }

  /** First and last day, and most of those between. */
  private double[] days(int span) {
    return IntStream.rangeClosed(0, span)
        .filter(day -> day == 0 || day == span || random.nextDouble() < 0.7)
        .asDoubleStream()
        .toArray();
  }

  private String verdict(double[] days, double fall) {
    double[] gravities = new double[days.length];
    for (int i = 0; i < days.length; i++) {
      double read = 1.08 - fall * days[i] + NOISE * random.nextGaussian();
      gravities[i] = Math.round(read * 1000) / 1000.0;
    }
    return Ferment.state(days, gravities, 1.0, 0.0005, 0.0005);
  }

  private static double share(Map<String, Integer> verdicts, String verdict) {
    return verdicts.getOrDefault(verdict, 0) / (double) LOGS;
  }

  private static void print(String what, Map<String, Integer> verdicts) {
    System.out.printf(
        "%-28s %9d %9d %9d %12d%n",
        what,
        verdicts.getOrDefault("finished", 0),
        verdicts.getOrDefault("falling", 0),
        verdicts.getOrDefault("stalled", 0),
        verdicts.getOrDefault("cannot tell", 0));
  }
}
