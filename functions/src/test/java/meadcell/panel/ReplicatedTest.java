package meadcell.panel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;
import meadcell.property.Between;
import meadcell.property.Property;
import meadcell.property.Size;
import org.junit.jupiter.api.Test;

class ReplicatedTest {
  private static final Panel.Protocol TRIANGLE = Panel.Protocol.TRIANGLE;

  private static Rows<Replicated.Answered> rows(int answers, int... correct) {
    List<Replicated.Answered> rows = new ArrayList<>();
    for (int right : correct) {
      rows.add(new Replicated.Answered(rows.size() + 1, right, answers));
    }
    return new Rows<>(rows, rows.size(), 2);
  }

  private static Replicated.Replicates of(Rows<Replicated.Answered> rows) {
    return Replicated.replicated(rows, TRIANGLE, Replicated.Model.CORRECTED);
  }

  /** R package sensR, test betabin: estimates that its comments call those of Brockhoff 2003. */
  @Test
  void atTheEdgesTheBinomialAndTheAllOrNothingTasterComeOut() {
    Replicated.Replicates even =
        Replicated.replicated(
            rows(4, 0, 1, 1, 1, 2, 2, 2, 3, 3, 3, 3, 3), TRIANGLE, Replicated.Model.PLAIN);
    assertEquals(50, even.muPercent(), 1e-2);
    assertEquals(0, even.gamma(), 1e-4);
    assertEquals(1, even.spreadP(), 1e-6);
    Replicated.Replicates split =
        Replicated.replicated(rows(4, 0, 4, 4, 4), TRIANGLE, Replicated.Model.PLAIN);
    assertEquals(75, split.muPercent(), 1e-4);
    assertEquals(1, split.gamma(), 1e-6);
    assertEquals(3 * Math.log(0.75) + Math.log(0.25), split.logLikelihood(), 1e-9);
  }

  /** The plain model knows no test: probabilities of all counts add up to one, at every μ and γ. */
  @Property
  void probabilitiesAddUp(
      @Between(max = 1, decimals = 3) double mu,
      @Between(max = 1, decimals = 3) double gamma,
      @Between(min = 1, max = 20) int answers,
      Panel.Protocol test) {
    for (double guess : new double[] {0, test.model.guess}) {
      double sum = 0;
      double right = 0;
      for (int x = 0; x <= answers; x++) {
        double p =
            Math.exp(new BetaBinomial(rows(answers, x).list(), guess).logLikelihood(mu, gamma));
        sum += p;
        right += x * p;
      }
      assertEquals(1, sum, 1e-9);
      assertEquals(answers * (guess + (1 - guess) * mu), right, 1e-8);
    }
  }

  @Property(tries = 100)
  void nothingNearbyIsLikelier(
      @Size(min = 3, max = 12) List<@Between(max = 8, decimals = 0) Double> given,
      @Between(max = 1, decimals = 2) double mu,
      @Between(max = 1, decimals = 2) double gamma) {
    int[] correct = given.stream().mapToInt(Double::intValue).toArray();
    BetaBinomial binomials = new BetaBinomial(rows(8, correct).list(), 1 / 3.0);
    assertTrue(binomials.fit().logLikelihood() >= binomials.logLikelihood(mu, gamma) - 1e-7);
  }

  /**
   * Panels of six with eight triangles each: who all guess are called different, and who are alike
   * are called unlike, at most as often as 5 % promises; who truly differ are seen.
   */
  @Test
  void simulatedPanelsAreJudgedAsOftenAsTheProbabilitiesSay() {
    Random chance = new Random(11);
    int panels = 400;
    int differ = 0;
    int unlike = 0;
    int seen = 0;
    for (int i = 0; i < panels; i++) {
      differ += significant(simulated(chance, 0, 0), true);
      unlike += significant(simulated(chance, 0.5, 0.5), false);
      seen += significant(simulated(chance, 0.05, 0.95), false);
    }
    double most = 0.05 * panels + 2.6 * Math.sqrt(0.05 * 0.95 * panels);
    assertTrue(differ <= most, "guessing panels called different: " + differ);
    assertTrue(unlike <= most, "alike panels called unlike: " + unlike);
    assertTrue(seen >= 0.7 * panels, "unlike panels seen: " + seen);
  }

  /** Three tasters notice with the one probability, three with the other. */
  private static Rows<Replicated.Answered> simulated(Random chance, double low, double high) {
    int[] correct = new int[6];
    for (int taster = 0; taster < 6; taster++) {
      for (int i = 0; i < 8; i++) {
        boolean notices = chance.nextDouble() < (taster < 3 ? low : high);
        correct[taster] += notices || chance.nextInt(3) == 0 ? 1 : 0;
      }
    }
    return rows(8, correct);
  }

  private static int significant(Rows<Replicated.Answered> panel, boolean difference) {
    try {
      Replicated.Replicates shown = of(panel);
      return (difference ? shown.differenceP() : shown.spreadP()) <= 0.05 ? 1 : 0;
    } catch (Refusal noMoreThanGuessing) {
      assertEquals(PanelReason.NOTHING_VARIES, noMoreThanGuessing.reason());
      return 0;
    }
  }

  @Test
  void whatCannotTellIsRefused() {
    String one =
        "tasters has 1 tasters; at least 2 are needed, and one of them with 2 or more answers. Where"
            + " each gave one answer, use PANEL.TRIANGLE or its like.";
    assertEquals(one, assertThrows(Refusal.class, () -> of(rows(12, 5))).getMessage());
    assertThrows(Refusal.class, () -> of(rows(1, 1, 0, 1)));
    assertEquals(1, of(rows(2, 1, 2)).spreadP(), 1e-6); // two tasters with two answers are enough
    assertEquals(
        "tasters in row 2: correct is 13, more than the 12 answers.",
        assertThrows(Refusal.class, () -> of(rows(12, 12, 13))).getMessage());
    for (int[] nothing : new int[][] {{4, 4}, {12, 12}, {0, 0}, {3, 4, 2}}) {
      assertEquals(
          PanelReason.NOTHING_VARIES,
          assertThrows(Refusal.class, () -> of(rows(12, nothing))).reason());
    }
    assertTrue(of(rows(12, 12, 11)).muPercent() > 90);
  }
}
