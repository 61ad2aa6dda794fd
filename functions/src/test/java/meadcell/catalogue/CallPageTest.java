package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import meadcell.catalogue.CallPage.Chosen;
import meadcell.catalogue.CallPage.Given;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

/** The page of one call. */
class CallPageTest {
  @Test
  void everyExampleHasAPageInEveryLanguage() {
    for (Words words : Words.all()) {
      for (FunctionSpec function : Cellar.catalogue().functions()) {
        ReferencePage page = page(function.declaration().example(), words);
        List<String> headings = page.sections().stream().map(s -> s.heading()).toList();
        assertTrue(headings.contains(words.say(Phrase.RESULT)), function.name() + headings);
        assertFalse(page.text(80).contains("{"), page.text(80));
      }
    }
  }

  @Test
  void valuesStandInTheUnitsOfTheCallHoweverEarlyTheseAreNamed() {
    List<String> arguments = section("BARREL.VOLUME(20;25;32;\"US\")", Phrase.ARGUMENTS);
    assertEquals("head = 20 in: Inside diameter of a head", arguments.get(0));
    assertEquals("units = US", arguments.get(3));
    assertEquals("shape = ellipse, since left out: Curve of the staves", arguments.get(4));
    assertTrue(section("BARREL.VOLUME(20;25;32;\"US\")", Phrase.RESULT).get(0).endsWith(" US gal"));
  }

  @Test
  void aBlankForAnOptionalArgumentIsItsDefaultWhereZeroIsNoValue() {
    assertEquals(
        section("HONEY.SUGAR(10)", Phrase.RESULT), section("HONEY.SUGAR(10;0)", Phrase.RESULT));
    assertEquals(
        section("BARREL.VOLUME(50;64;81)", Phrase.RESULT),
        section("BARREL.VOLUME(50;64;81;0;0)", Phrase.RESULT));
    assertTrue(
        section("HONEY.SUGAR(10;0)", Phrase.ARGUMENTS)
            .get(1)
            .startsWith("moisture = 17.2 %, since left out"));
    String zero = section("BOTTLE.COUNT(100;750;0)", Phrase.ARGUMENTS).get(2);
    assertTrue(zero.startsWith("loss = 0 %"), "0 is a value here: " + zero);
  }

  @Test
  void aRowSaysWhatItRestsOnAsAVerdictDoes() {
    String leak =
        "VESSEL.LOSSES({\"Must\",\"Cask\",225,1;\"gauge\",\"Cask\",210,31};\"Cask\";1;31)";
    assertTrue(section(leak, Phrase.BECAUSE).get(0).contains("look for a leak"));
  }

  @Test
  void theVersionIsSaidAndSinceWhichTheNumbersAreWhatTheyAre() {
    assertEquals(
        List.of("Meadcell " + Cellar.version()), section("HONEY.SUGAR(10)", Phrase.VERSION));
    assertEquals(
        "SULFITE.DOSE gave other numbers before version 1.0.0.",
        section("SULFITE.DOSE(225;20)", Phrase.VERSION).get(1));
  }

  @Test
  void aPageHasAllSectionsInTheirOrder() {
    assertEquals(
        List.of("Purpose", "Arguments", "Result", "Caution", "Source", "Version"),
        page("BOTTLE.PRIMING(100;5)", Words.ENGLISH).sections().stream()
            .map(section -> section.heading())
            .toList());
  }

  @Test
  void aLongColumnIsShownByItsFirstRows() {
    String scores = "scores = 9 × 1 cells: 14; 15; 13.5; 16; 14.5; 15; 14; 13 … points";
    assertTrue(
        section("PANEL.SCORE({14;15;13.5;16;14.5;15;14;13;12})", Phrase.ARGUMENTS)
            .get(0)
            .startsWith(scores + ": "));
    assertTrue(
        section("PANEL.SCORE({14;15;13.5;16;14.5;15;14;13})", Phrase.ARGUMENTS)
            .get(0)
            .startsWith(scores.replace("9 ×", "8 ×").replace(" …", "") + ": "));
  }

  @Test
  void theLastOfAnyNumberOfArgumentsAreNumbered() {
    List<String> lines =
        section("CELLAR.MAP(\"GRAVITY.CORRECT\";{1.1;1.08};{18;19})", Phrase.ARGUMENTS);
    assertEquals(
        List.of("function", "column1", "column2"),
        lines.stream().limit(3).map(line -> line.replaceFirst(" = .*", "")).toList());
    assertTrue(lines.get(1).startsWith("column1 = 2 × 1 cells: 1.1; 1.08: "), lines.get(1));
  }

  @Test
  void linesAreBrokenBetweenWordsAndNoLongerThanAsked() {
    ReferencePage page =
        new ReferencePage(
            "Title", List.of(new ReferencePage.Section("Part", List.of("one two three", "four"))));
    assertEquals("Title\n\nPart\n  one two\n  three\n  four\n", page.text(9));
    assertEquals("Title\n\nPart\n  one\n  two\n  three\n  four\n", page.text(8));
    assertEquals("Title\n\nPart\n  one two three\n  four\n", page.text(15));
    assertEquals("Title\n\nPart\n  one two\n  three\n  four\n", page.text(14));
  }

  @Test
  void anErrorOfTheHostIsNamedWithItsPlace() {
    FunctionSpec function = Cellar.catalogue().get("GRAVITY.TOBRIX");
    ReferencePage page =
        CallPage.of(function, List.of(new Given(null, "B7", "#N/A")), Chosen.FIRST, Words.ENGLISH);
    assertTrue(page.text(80).contains("sg is an error: B7 shows #N/A."), page.text(80));
  }

  @Test
  void aRefusalIsASentence() {
    assertEquals(
        List.of("sg is 1085 SG; it must be 0.98 to 1.45. Did you mean 1.085?"),
        section("GRAVITY.TOBRIX(1085)", Phrase.REFUSED));
  }

  private static List<String> section(String call, Phrase heading) {
    return page(call, Words.ENGLISH).sections().stream()
        .filter(section -> section.heading().equals(Words.ENGLISH.say(heading)))
        .findFirst()
        .orElseThrow()
        .lines();
  }

  private static ReferencePage page(String call, Words words) {
    LiteralCall literal = LiteralCall.parse(call);
    return CallPage.of(
        Cellar.catalogue().get(literal.function()),
        Arrays.stream(literal.arguments()).map(Given::constant).toList(),
        Chosen.FIRST,
        words);
  }
}
