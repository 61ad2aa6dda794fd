package meadcell.ferment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import meadcell.catalogue.Refusal;
import meadcell.gravity.Gravity;
import meadcell.measured.MeasuredTable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Sixty ferments of Pinot noir, read about once a day: the next reading judges the answer. */
class MeasuredFermentTest {
  private record Log(String name, double[] days, double[] gravities) {
    double[] days(int count) {
      return Arrays.copyOf(days, count);
    }

    double[] gravities(int count) {
      return Arrays.copyOf(gravities, count);
    }

    /** How much it fell from that reading to the next. */
    double fallAfter(int count) {
      return gravities[count - 1] - gravities[count];
    }
  }

  private static final List<Log> LOGS = new ArrayList<>();

  @BeforeAll
  static void read() {
    Map<String, List<String[]>> tanks = new LinkedHashMap<>();
    for (String[] row : MeasuredTable.rows("ferments")) {
      String tank = row[0] + " " + row[1] + " " + row[2];
      tanks.computeIfAbsent(tank, none -> new ArrayList<>()).add(row);
    }
    LOGS.clear();
    tanks.forEach(
        (name, rows) ->
            LOGS.add(
                new Log(
                    name,
                    rows.stream().mapToDouble(row -> Double.parseDouble(row[3]) / 24).toArray(),
                    rows.stream()
                        .mapToDouble(row -> Gravity.fromBrix(Double.parseDouble(row[4])))
                        .toArray())));
    assertEquals(60, LOGS.size());
  }

  @Test
  void noneIsCalledFinishedOrStalledWhileItFalls() {
    int falling = 0;
    int told = 0;
    for (Log log : LOGS) {
      for (int count = 3; count < log.days.length; count++) {
        if (log.fallAfter(count) < 0.001) {
          continue;
        }
        String word =
            Prospect.state(log.days(count), log.gravities(count), 0.994, 0.0005, 0.0001).word();
        assertTrue(
            word.equals("falling") || word.equals("cannot tell"),
            log.name + " after " + count + " readings: " + word);
        falling++;
        told += word.equals("falling") ? 1 : 0;
      }
    }
    System.out.printf("%d of %d logs that fell on were called falling%n", told, falling);
    assertTrue(falling > 150 && told >= 0.8 * falling, told + " of " + falling);
  }

  /** From the first five readings; what is read next is never below the lower limit. */
  @Test
  void theForecastDoesNotEndAboveWhatIsReadNext() {
    int answered = 0;
    int asked = 0;
    for (Log log : LOGS) {
      if (log.days.length < 6) {
        continue;
      }
      asked++;
      try {
        Prospect.Forecast forecast = Prospect.forecast(log.days(5), log.gravities(5), 0.001);
        double next = log.gravities[5];
        assertTrue(forecast.lower() <= next, log.name + " " + forecast);
        if (log.gravities[4] - next < 0.004) {
          assertTrue(next <= forecast.upper(), log.name + " " + forecast);
        }
        answered++;
      } catch (Refusal open) {
        assertTrue(
            open.reason() == FermentReason.NO_CURVE || open.reason() == FermentReason.END_OPEN,
            log.name + ": " + open.getMessage());
      }
    }
    System.out.printf("%d of %d ferments were forecast from five readings%n", answered, asked);
    assertTrue(answered >= 24, "only " + answered);
  }

  /** Once a ferment slows down; before, it gathers pace, and no pace so far can tell. */
  @Test
  void whatRemainsForADayHoldsOnceItSlowsDown() {
    int held = 0;
    int asked = 0;
    for (Log log : LOGS) {
      for (int count = 3; count < log.days.length; count++) {
        double last = log.gravities[count - 1];
        if (last > Gravity.fromBrix(10)) {
          continue;
        }
        double horizon = Math.max(1, log.days[count] - log.days[count - 1]);
        Prospect.Remaining left =
            Prospect.remaining(log.days(count), log.gravities(count), horizon, 0.0006);
        asked++;
        held += log.fallAfter(count) <= left.upper() ? 1 : 0;
      }
    }
    System.out.printf("what remained was within its limit in %d of %d%n", held, asked);
    assertTrue(asked > 80 && held >= 0.95 * asked, held + " of " + asked);
  }
}
