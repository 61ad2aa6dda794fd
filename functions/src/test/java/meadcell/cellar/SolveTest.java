package meadcell.cellar;

import static meadcell.cellar.UncertaintyTest.number;
import static meadcell.cellar.UncertaintyTest.refused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class SolveTest {
  private static String text(double value) {
    return new BigDecimal(value).toPlainString();
  }

  @Property(tries = 200)
  void findsWhatTheInverseFunctionGives(
      @Between(min = 1, max = 15) double abv, @Between(min = 1, max = 1.1) double present) {
    double solved =
        number("CELLAR.SOLVE(\"ALCOHOL.ABV\";%s;1;{\"\";%s})".formatted(text(abv), text(present)));
    double original = number("ALCOHOL.ORIGINAL(%s;%s)".formatted(text(abv), text(present)));
    assertEquals(original, solved, 1e-8);
  }

  @Property(tries = 200)
  void findsWhatWentIn(
      @Between(min = 0.1, max = 19) double co2, @Between(min = 1, max = 40) double temperature) {
    double pressure =
        number("BOTTLE.PRESSURE(%s;%s;12;10)".formatted(text(co2), text(temperature)));
    assertEquals(
        co2,
        number(
            "CELLAR.SOLVE(\"BOTTLE.PRESSURE\";%s;1;{\"\";%s;12;10})"
                .formatted(text(pressure), text(temperature))),
        1e-6 * co2);
  }

  @Test
  void whatStandsAtThePlaceIsIgnored() {
    double blank = number("CELLAR.SOLVE(\"BOTTLE.DELLE\";78;1;{\"\";14})");
    assertEquals(150, blank, 1e-9);
    assertEquals(blank, number("CELLAR.SOLVE(\"BOTTLE.DELLE\";78;1;{9999,14})"), 1e-12);
    assertEquals(blank, number("CELLAR.SOLVE(\"BOTTLE.DELLE\";78;1;{\"x\",14})"), 1e-12);
  }

  @Test
  void isAskedInTheCallersUnits() {
    double celsius = number("CELLAR.SOLVE(\"GRAVITY.CORRECT\";1.052;2;{1.05;\"\";20})");
    double fahrenheit =
        number("CELLAR.SOLVE(\"GRAVITY.CORRECT\";1.052;2;{1.05;\"\";68;\"\";\"US\"})");
    assertEquals(32 + 1.8 * celsius, fahrenheit, 1e-7);
  }

  @Test
  void theEndsOfTheRangeCount() {
    assertEquals(0, number("CELLAR.SOLVE(\"BOTTLE.DELLE\";45;1;{\"\";10})"), 1e-12);
    assertEquals(25, number("CELLAR.SOLVE(\"BOTTLE.DELLE\";112.5;2;{0;\"\"})"), 1e-9);
  }

  @Test
  void aSmallSolutionInAWideRangeIsFound() {
    double volume = number("CELLAR.SOLVE(\"BOTTLE.PRIMING\";9.7224;1;{\"\";5})");
    assertEquals(1, volume, 1e-4);
  }

  @Test
  void noneIsRefused() {
    refused(
        "No sugar from 0 to 800 gives 200; the function gives 45 to 125 there.",
        "CELLAR.SOLVE(\"BOTTLE.DELLE\";200;1;{\"\";10})");
    refused(
        "No volume gives 294.5: the result jumps past it.",
        "CELLAR.SOLVE(\"BOTTLE.COUNT\";294.5;1;{\"\";750})");
  }

  @Test
  void severalAreRefused() {
    // the risk of a label rises to both sides
    refused(
        "Several values of abv give 5, 12.3244 and 13.1756 among them.",
        "CELLAR.SOLVE(\"BOTTLE.LABELRISK\";5;2;{13;\"\";0.5})");
    refused(
        "Many values of volume around 225.516 give 294: the result goes in steps.",
        "CELLAR.SOLVE(\"BOTTLE.COUNT\";294;1;{\"\";750})");
  }

  @Test
  void theFunctionsOwnRefusalIsToldWhereItAnswersNothing() {
    refused(
        "abv is 0.5 % vol; it must be 1 to 25. A cell formatted as percent holds a hundredth: give 50.",
        "CELLAR.SOLVE(\"BOTTLE.DELLE\";78;1;{\"\";0.5})");
    refused(
        "\"3\" is no place of an argument; it must be a whole number from 1 to 2.",
        "CELLAR.SOLVE(\"BOTTLE.DELLE\";78;3;{\"\";14})");
    refused(
        "Argument 1 takes a text, a word or whole numbers, or holds no number; that has no standard"
            + " uncertainty and cannot be looked for.",
        "CELLAR.SOLVE(\"PANEL.TRIANGLE\";0.05;1;{\"\";12})");
  }
}
