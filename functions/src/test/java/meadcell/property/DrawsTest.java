package meadcell.property;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;
import static org.junit.platform.engine.discovery.DiscoverySelectors.selectMethod;
import static org.junit.platform.testkit.engine.EventConditions.finishedWithFailure;
import static org.junit.platform.testkit.engine.EventConditions.test;
import static org.junit.platform.testkit.engine.TestExecutionResultConditions.message;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.platform.testkit.engine.EngineTestKit;
import org.junit.platform.testkit.engine.Events;

class DrawsTest {
  private static final List<Object> SEEN = new ArrayList<>();

  /** Run by the tests of this class alone. */
  static class Properties {
    @Property(tries = 400)
    void seen(
        @Between(min = -2, max = 3, decimals = 1) double number,
        @Between(min = 1, max = 4) int whole,
        @Size(min = 1, max = 3) List<@Between(max = 9) Double> list) {
      SEEN.add(List.of(number, whole, list));
    }

    @Property
    void aboveTen(@Between(max = 100) double number) {
      assertTrue(number <= 10, "too much");
    }

    @Property
    void neverAssumed(@Between(max = 100) double number) {
      assumeTrue(number > 100);
    }
  }

  private static Events run(String property) {
    SEEN.clear();
    return EngineTestKit.engine("junit-jupiter")
        .selectors(
            selectMethod(
                Properties.class,
                List.of(Properties.class.getDeclaredMethods()).stream()
                    .filter(method -> method.getName().equals(property))
                    .findFirst()
                    .orElseThrow()))
        .execute()
        .testEvents();
  }

  @Test
  void drawsAreWithinTheirLimitsReachThemAndAreTheSameAgain() {
    run("seen").assertStatistics(run -> run.succeeded(1));
    assertEquals(400, SEEN.size());
    Set<Double> numbers = new TreeSet<>();
    Set<Integer> wholes = new TreeSet<>();
    Set<Integer> sizes = new TreeSet<>();
    for (Object seen : SEEN) {
      List<?> arguments = (List<?>) seen;
      numbers.add((Double) arguments.get(0));
      wholes.add((Integer) arguments.get(1));
      sizes.add(((List<?>) arguments.get(2)).size());
    }
    assertEquals(51, numbers.size(), "every tenth from -2 to 3");
    assertTrue(numbers.contains(-2.0) && numbers.contains(3.0), numbers.toString());
    assertEquals(Set.of(1, 2, 3, 4), wholes);
    assertEquals(Set.of(1, 2, 3), sizes);
    List<Object> first = List.copyOf(SEEN);
    run("seen");
    assertEquals(first, SEEN);
  }

  @Test
  void aFailureNamesItsSeedAndArguments() {
    Events events = run("aboveTen");
    events.assertThatEvents().haveExactly(1, test(finishedWithFailure(message(DrawsTest::isTold))));
  }

  private static boolean isTold(String message) {
    return message.matches("try \\d+ of 1000, seed \\d+: number = \\d+\\.\\d+\n.*too much.*");
  }

  @Test
  void aPropertyThatTriedNothingFails() {
    run("neverAssumed").assertStatistics(run -> run.failed(1));
  }
}
