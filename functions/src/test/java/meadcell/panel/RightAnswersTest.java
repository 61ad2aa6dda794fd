package meadcell.panel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import meadcell.property.Between;
import meadcell.property.Property;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RightAnswersTest {
  @Property
  void tailsAreThoseOfAnotherLibrary(
      @Between(min = 2, max = 1000) int tasters,
      @Between(min = 0.01, max = 0.99, decimals = 2) double chance,
      @Between(max = 1, decimals = 2) double where) {
    int right = (int) Math.rint(where * tasters);
    BinomialDistribution referee = BinomialDistribution.of(tasters, chance);
    double more = referee.survivalProbability(right - 1);
    double less = referee.cumulativeProbability(right);
    assertEquals(more, RightAnswers.atLeast(right, tasters, chance), 1e-12 + 1e-9 * more);
    assertEquals(less, RightAnswers.atMost(right, tasters, chance), 1e-12 + 1e-9 * less);
  }

  @Property
  void twoSidesAreThoseOfAnotherLibrary(
      @Between(min = 2, max = 300) int tasters, @Between(max = 1, decimals = 2) double where) {
    int chosen = (int) Math.rint(where * tasters);
    BinomialDistribution referee = BinomialDistribution.of(tasters, 0.5);
    double less = referee.cumulativeProbability(chosen);
    double more = referee.survivalProbability(chosen - 1);
    double twice = Math.min(1, 2 * Math.min(less, more));
    assertEquals(twice, Panel.paired(tasters, chosen, 2), 1e-9 * twice);
  }

  @Property
  void whatIsNeededIsTheFirstThatShowsADifference(
      @Between(min = 12, max = 1000) int tasters, @Between(min = 0.0005, max = 0.5) double alpha) {
    int triangle = Panel.triangleNeeded(tasters, alpha);
    assertTrue(Panel.triangle(tasters, triangle) <= alpha * (1 + 1e-12));
    assertTrue(Panel.triangle(tasters, triangle - 1) > alpha);
    int duotrio = Panel.duotrioNeeded(tasters, alpha);
    assertTrue(Panel.duotrio(tasters, duotrio) <= alpha * (1 + 1e-12));
    assertTrue(Panel.duotrio(tasters, duotrio - 1) > alpha);
    int paired = Panel.pairedNeeded(tasters, alpha, 2);
    assertTrue(Panel.paired(tasters, paired, 2) <= alpha * (1 + 1e-12));
    assertTrue(Panel.paired(tasters, paired - 1, 2) > alpha);
  }

  /** 1/16 is reached exactly by four right of four. */
  @Test
  void aProbabilityEqualToAlphaCounts() {
    assertEquals(4, Panel.duotrioNeeded(4, 0.0625));
  }

  @ParameterizedTest
  @CsvSource({"3, 0.01", "3, 0.001", "4, 0.01", "4, 0.001", "5, 0.001", "6, 0.001"})
  void theEmptyCellsOfThePublishedTableAreRefused(int tasters, double alpha) {
    Refusal refusal =
        assertThrows(Refusal.class, () -> Panel.triangleNeeded(tasters, alpha), "FAO V7180E");
    assertEquals(Refusal.Kind.NO_SOLUTION, refusal.kind());
  }

  @Property
  void powerRisesWithThoseWhoNoticeFromAlphaToOne(
      @Between(min = 6, max = 200) int tasters,
      @Between(min = 1, max = 98, decimals = 2) double percent,
      Panel.Protocol test) {
    double power = Sensitivity.power(tasters, percent, test, 0.05);
    double higher = Sensitivity.power(tasters, percent + 1, test, 0.05);
    assertTrue(percent < 50 ? power < higher : power <= higher + 1e-12);
    assertTrue(Sensitivity.power(tasters, 1e-9, test, 0.05) <= 0.05 + 1e-9);
    assertEquals(1, Sensitivity.power(tasters, 100, test, 0.05), 1e-12);
  }

  @Property(tries = 60)
  void thePanelNamedIsTheFirstThatReachesTheChance(
      @Between(min = 20, max = 100, decimals = 0) double percent, Panel.Protocol test) {
    Sensitivity.Tasters needed = Sensitivity.tastersNeeded(percent, test, 0.05);
    assertTrue(Sensitivity.power(needed.for80(), percent, test, 0.05) >= 0.8);
    assertTrue(Sensitivity.power(needed.for90(), percent, test, 0.05) >= 0.9);
    for (int fewer = 1; fewer < needed.for80(); fewer++) {
      assertTrue(Sensitivity.power(fewer, percent, test, 0.05) < 0.8);
    }
  }

  @Test
  void answersAreWholeAndNoMoreThanTasters() {
    assertEquals(
        "correct is 13, more than the 12 tasters.",
        assertThrows(Refusal.class, () -> Panel.triangle(12, 13)).getMessage());
    assertThrows(Refusal.class, () -> call("PANEL.TRIANGLE", 12.0, 4.5));
    assertThrows(Refusal.class, () -> call("PANEL.TRIANGLE", 12.5, 4.0));
    assertThrows(Refusal.class, () -> call("PANEL.PAIRED", 12.0, 4.0, 1.5));
    assertThrows(Refusal.class, () -> Panel.similar(12, 13, 30, 0.05));
  }

  private static void call(String function, Object... arguments) {
    Cellar.catalogue().get(function).call(arguments);
  }
}
