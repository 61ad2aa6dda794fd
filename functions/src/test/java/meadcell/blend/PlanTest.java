package meadcell.blend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.blend.Planning.Goal;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

class PlanTest {
  private static final int CASES = 500;
  private static final Pattern CHANGE =
      Pattern.compile("property (\\d+): (minimum|maximum) \\S+ must (rise|fall) by ([\\d.]+)[;.]");

  /** A stock and targets, half of them around a blend that exists, half anywhere. */
  private record Case(Object[][] stock, Object[][] targets, double volumeL) {
    static Case random(Random random) {
      int lots = 1 + random.nextInt(12);
      int properties = 1 + random.nextInt(5);
      Object[][] stock = new Object[lots][2 + properties];
      double available = 0;
      for (Object[] lot : stock) {
        double volume = 20 + random.nextInt(480);
        available += volume;
        lot[0] = volume;
        lot[1] = (double) random.nextInt(50);
        for (int p = 0; p < properties; p++) {
          lot[2 + p] = Math.pow(10, p - 1) * (1 + random.nextDouble());
        }
      }
      double volumeL = available * (0.1 + 0.85 * random.nextDouble());
      boolean around = random.nextBoolean();
      double share = volumeL / available;
      Object[][] targets = new Object[2][properties];
      for (int p = 0; p < properties; p++) {
        double scale = Math.pow(10, p - 1);
        double centre = scale * (1 + random.nextDouble());
        if (around) {
          centre = 0;
          for (Object[] lot : stock) {
            centre += share * (double) lot[0] / volumeL * (double) lot[2 + p];
          }
        }
        double half = scale * 0.2 * random.nextDouble();
        targets[0][p] = p > 0 && random.nextInt(4) == 0 ? null : centre - half;
        targets[1][p] = p > 0 && random.nextInt(4) == 0 ? null : centre + half;
      }
      return new Case(stock, targets, volumeL);
    }

    int properties() {
      return targets[0].length;
    }

    double value(int lot, int property) {
      return (double) stock[lot][2 + property];
    }

    double mean(double[] volumes, int property) {
      double sum = 0;
      for (int lot = 0; lot < volumes.length; lot++) {
        sum += volumes[lot] * value(lot, property);
      }
      return sum / volumeL;
    }

    double span(int property) {
      double low = Double.MAX_VALUE;
      double high = 0;
      for (int lot = 0; lot < stock.length; lot++) {
        low = Math.min(low, value(lot, property));
        high = Math.max(high, value(lot, property));
      }
      return high > low ? high - low : Math.max(1, high);
    }

    boolean isRange(int property) {
      return targets[0][property] != null && targets[1][property] != null;
    }

    double half(int property) {
      return ((double) targets[1][property] - (double) targets[0][property]) / 2;
    }

    double middle(int property) {
      return ((double) targets[1][property] + (double) targets[0][property]) / 2;
    }

    double objective(double[] volumes, Goal goal) {
      double sum = 0;
      if (goal == Goal.COST) {
        for (int lot = 0; lot < volumes.length; lot++) {
          sum += volumes[lot] * (double) stock[lot][1];
        }
        return sum;
      }
      for (int p = 0; p < properties(); p++) {
        if (isRange(p)) {
          sum += Math.abs(mean(volumes, p) - middle(p)) / half(p);
        }
      }
      return sum;
    }
  }

  /** The same question in litres, put to another library. */
  private static final class Referee {
    private final ExpressionsBasedModel model = new ExpressionsBasedModel();
    private final Variable[] volumes;
    private final Case asked;

    Referee(Case asked) {
      this.asked = asked;
      volumes = new Variable[asked.stock.length];
      Expression sum = model.newExpression("sum").level(asked.volumeL);
      for (int lot = 0; lot < volumes.length; lot++) {
        volumes[lot] = model.newVariable("lot" + lot).lower(0).upper((double) asked.stock[lot][0]);
        sum.set(volumes[lot], 1);
      }
    }

    private Expression amount(String name, int property) {
      Expression amount = model.newExpression(name + property);
      for (int lot = 0; lot < volumes.length; lot++) {
        amount.set(volumes[lot], asked.value(lot, property));
      }
      return amount;
    }

    Optimisation.Result plan(Goal goal) {
      for (int p = 0; p < asked.properties(); p++) {
        Expression amount = amount("limits", p);
        if (asked.targets[0][p] != null) {
          amount.lower((double) asked.targets[0][p] * asked.volumeL);
        }
        if (asked.targets[1][p] != null) {
          amount.upper((double) asked.targets[1][p] * asked.volumeL);
        }
        if (goal == Goal.CLOSEST && asked.isRange(p)) {
          Variable distance = model.newVariable("distance" + p).lower(0).weight(1);
          double half = asked.half(p) * asked.volumeL;
          double middle = asked.middle(p) * asked.volumeL;
          amount("above", p).upper(middle).set(distance, -half);
          amount("below", p).lower(middle).set(distance, half);
        }
      }
      if (goal == Goal.COST) {
        for (int lot = 0; lot < volumes.length; lot++) {
          volumes[lot].weight((double) asked.stock[lot][1]);
        }
      }
      return model.minimise();
    }

    /** Least sum of relaxations, in spans of the properties. */
    double relaxation() {
      for (int p = 0; p < asked.properties(); p++) {
        double span = asked.span(p) * asked.volumeL;
        if (asked.targets[0][p] != null) {
          Variable give = model.newVariable("minimum" + p).lower(0).weight(1);
          amount("least", p).lower((double) asked.targets[0][p] * asked.volumeL).set(give, span);
        }
        if (asked.targets[1][p] != null) {
          Variable give = model.newVariable("maximum" + p).lower(0).weight(1);
          amount("most", p).upper((double) asked.targets[1][p] * asked.volumeL).set(give, -span);
        }
      }
      return model.minimise().getValue();
    }
  }

  @ParameterizedTest
  @EnumSource
  void anotherLibraryFindsTheSameOptimumAndTheSameVerdict(Goal goal) {
    Random random = new Random(20_260_401);
    int infeasible = 0;
    for (int i = 0; i < CASES; i++) {
      Case asked = Case.random(random);
      Optimisation.Result expected = new Referee(asked).plan(goal);
      try {
        double[] volumes = plan(asked.stock, asked.targets, asked.volumeL, goal);
        assertTrue(expected.getState().isFeasible(), "case " + i);
        assertKept(asked, volumes);
        double value = asked.objective(volumes, goal);
        assertEquals(expected.getValue(), value, 1e-6 * Math.max(1, value), "case " + i);
      } catch (Refusal refusal) {
        assertEquals(Refusal.Kind.NO_SOLUTION, refusal.kind(), refusal.getMessage());
        assertTrue(!expected.getState().isFeasible(), "case " + i + refusal.getMessage());
        assertSmallestRelaxation(asked, refusal.getMessage());
        infeasible++;
      }
    }
    assertTrue(infeasible > CASES / 5 && infeasible < CASES * 4 / 5, infeasible + " infeasible");
  }

  private static void assertKept(Case asked, double[] volumes) {
    assertEquals(asked.volumeL, Arrays.stream(volumes).sum(), asked.volumeL * 1e-9);
    for (int lot = 0; lot < volumes.length; lot++) {
      assertTrue(volumes[lot] >= 0 && volumes[lot] <= (double) asked.stock[lot][0]);
    }
    for (int p = 0; p < asked.properties(); p++) {
      double mean = asked.mean(volumes, p);
      double miss = 1e-8 * asked.span(p);
      assertTrue(asked.targets[0][p] == null || mean >= (double) asked.targets[0][p] - miss);
      assertTrue(asked.targets[1][p] == null || mean <= (double) asked.targets[1][p] + miss);
    }
  }

  /** What the sentence says is the least by the referee's account, and suffices. */
  private static void assertSmallestRelaxation(Case asked, String sentence) {
    double said = 0;
    int changes = 0;
    Object[][] relaxed = {asked.targets[0].clone(), asked.targets[1].clone()};
    Matcher change = CHANGE.matcher(sentence);
    while (change.find()) {
      int p = Integer.parseInt(change.group(1)) - 1;
      double by = Double.parseDouble(change.group(4));
      boolean maximum = change.group(2).equals("maximum");
      assertEquals(maximum ? "rise" : "fall", change.group(3));
      int row = maximum ? 1 : 0;
      relaxed[row][p] = (double) relaxed[row][p] + (maximum ? by : -by);
      said += by / asked.span(p);
      changes++;
    }
    assertTrue(changes > 0, sentence);
    double least = new Referee(asked).relaxation();
    assertTrue(said > least - 1e-6 && said < least * 1.011 + 1e-6, said + " " + least);
    plan(asked.stock, relaxed, asked.volumeL, Goal.COST);
  }

  private static double[] plan(Object[][] stock, Object[][] targets, double volumeL, Goal goal) {
    return Planning.plan(
        Tables.read("BLEND.PLAN", 0, stock), Tables.read("BLEND.PLAN", 1, targets), volumeL, goal);
  }

  private static Refusal refusal(Object[][] stock, Object[][] targets, double volumeL, Goal goal) {
    return assertThrows(Refusal.class, () -> plan(stock, targets, volumeL, goal));
  }

  private static final Object[][] STOCK = {{500.0, 2.0, 12.0}, {300.0, 3.0, 16.0}};

  @Test
  void sentencesSayWhatIsWrong() {
    assertEquals(
        "No blend of these lots meets the targets. The least that must give way: property 1:"
            + " minimum 17 must fall by 1.",
        refusal(STOCK, new Object[][] {{17.0}, {null}}, 300, Goal.COST).getMessage());
    assertEquals(
        "The lots together hold only 88.9 % of volume.",
        refusal(STOCK, new Object[][] {{13.0}, {14.0}}, 900, Goal.COST).getMessage());
    assertEquals(
        "minimum of property 1 is 14, above its maximum, 13.",
        refusal(STOCK, new Object[][] {{14.0}, {13.0}}, 100, Goal.COST).getMessage());
    assertEquals(
        "cost in row 1 of stock is blank.",
        refusal(new Object[][] {{500.0, null, 12.0}}, new Object[][] {{1.0}, {20.0}}, 9, Goal.COST)
            .getMessage());
    assertEquals(
        "property 1 in row 1 of stock is the text \"dry\"; a number is due.",
        refusal(new Object[][] {{9.0, 1.0, "dry"}}, new Object[][] {{1.0}, {20.0}}, 9, Goal.COST)
            .getMessage());
  }

  @Test
  void shapesThatCannotBeAreRefused() {
    Object[][] targets = {{13.0}, {14.0}};
    for (Refusal refusal :
        new Refusal[] {
          refusal(new Object[][] {{9.0, 1.0}}, targets, 9, Goal.COST),
          refusal(STOCK, new Object[][] {{13.0}}, 9, Goal.COST),
          refusal(STOCK, new Object[][] {{13.0, 1.0}, {14.0, 2.0}}, 9, Goal.COST),
          refusal(STOCK, new Object[][] {{13.0}, {null}}, 9, Goal.CLOSEST),
        }) {
      assertEquals(Refusal.Kind.INCONSISTENT, refusal.kind(), refusal.getMessage());
    }
    Object[][] negative = {{-1.0, 1.0, 13.0}};
    assertEquals(Refusal.Kind.OUT_OF_RANGE, refusal(negative, targets, 9, Goal.COST).kind());
    Object[][] none = {{0.0, 1.0, 13.0}};
    assertEquals(Refusal.Kind.WRONG_KIND, refusal(none, targets, 9, Goal.COST).kind());
  }

  @Test
  void blankRowsGetNothingAndFreePropertiesAreNotRead() {
    Object[][] stock = {
      {500.0, 2.0, 12.0, null}, {null, null, null, null}, {300.0, 3.0, 16.0, "sweet"}
    };
    Object[][] targets = {{13.0, null}, {14.0, null}};
    double[] volumes = plan(stock, targets, 400, Goal.COST);
    assertEquals(300, volumes[0], 1e-6);
    assertEquals(0, volumes[1]);
    assertEquals(100, volumes[2], 1e-6);
  }

  @Test
  void anExactTargetAndLotsAllAlikeArePlanned() {
    double[] exact = plan(STOCK, new Object[][] {{13.0}, {13.0}}, 400, Goal.CLOSEST);
    assertEquals(300, exact[0], 1e-6);
    Object[][] alike = {{500.0, 2.0, 12.0}, {300.0, 1.0, 12.0}};
    double[] cheap = plan(alike, new Object[][] {{12.0}, {12.0}}, 400, Goal.COST);
    assertEquals(300, cheap[1], 1e-6);
    assertTrue(
        refusal(alike, new Object[][] {{12.5}, {13.0}}, 400, Goal.COST)
            .getMessage()
            .endsWith("property 1: minimum 12.5 must fall by 0.5."));
  }
}
