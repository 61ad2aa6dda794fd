package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every language says everything, with the numbers and the places of the English text. */
class WordsTest {
  private static final Pattern PLACE = Pattern.compile("\\{\\w+}");
  private static final Pattern NUMBER = Pattern.compile("\\d+(?:[.,]\\d+)*");

  private final Words german = Fresh.words("de");
  private Catalogue catalogue;
  private Map<String, String> texts;

  @BeforeEach
  void read() {
    catalogue = Fresh.catalogue();
    texts = catalogue.texts();
  }

  static List<Words> translations() {
    return Words.all().stream()
        .filter(words -> words != Words.ENGLISH)
        .map(words -> Fresh.words(words.tag()))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("translations")
  void nothingIsMissingAndNothingLeftOver(Words words) {
    Set<String> missing = new TreeSet<>();
    Set<String> sections = new TreeSet<>();
    texts.forEach(
        (key, english) -> {
          sections.add(key.substring(0, key.indexOf('.')));
          if (words.translation(key) == null) {
            missing.add(key + "=" + english);
          }
        });
    assertTrue(missing.isEmpty(), () -> lines("not said in " + words.tag(), missing));
    Set<String> unused = new TreeSet<>();
    for (String section : sections) {
      words.keys(section).forEach(unused::add);
    }
    unused.removeAll(texts.keySet());
    assertTrue(unused.isEmpty(), () -> lines("said only in " + words.tag(), unused));
  }

  @ParameterizedTest
  @MethodSource("translations")
  void placesAndNumbersAreThoseOfTheEnglishText(Words words) {
    List<String> differing = new ArrayList<>();
    texts.forEach(
        (key, english) -> {
          String text = words.text(key, english);
          if (!found(PLACE, english).equals(found(PLACE, text))
              || !found(NUMBER, english).equals(found(NUMBER, text))) {
            differing.add(key + ": " + english + " | " + text);
          }
        });
    assertTrue(differing.isEmpty(), () -> lines("differs in " + words.tag(), differing));
  }

  private static String lines(String what, Collection<String> keys) {
    return what + ":\n" + String.join("\n", keys) + "\n";
  }

  private static Set<String> found(Pattern pattern, String text) {
    Set<String> found = new TreeSet<>();
    pattern.matcher(text).results().map(MatchResult::group).forEach(m -> found.add(plain(m)));
    return found;
  }

  private static String plain(String number) {
    return number.replace(',', '.');
  }

  @Test
  void germanSentencesHaveGermanNumbersAndTheCallersUnits() {
    assertEquals(
        "head ist 25 in; es muss mindestens die Hälfte von bilge sein, 25,0625 in.",
        refusal("BARREL.VOLUME", 25.0, 50.125, 32.0, "US").sentence(german));
    assertEquals(
        "sg ist 1085 SG; erlaubt ist 0,98 bis 1,45. Ist 1,085 gemeint?",
        refusal("GRAVITY.TOBRIX", 1085.0).sentence(german));
    FunctionSpec why = catalogue.get("CELLAR.WHY");
    assertEquals(
        "Die Funktion \"GRAVITY.TOBRICKS\" gibt es nicht. Ist GRAVITY.TOBRIX gemeint?",
        why.callIn(german, "GRAVITY.TOBRICKS", 1.0));
    FunctionSpec source = catalogue.get("CELLAR.SOURCE");
    assertEquals(
        catalogue.get("BARREL.VOLUME").source(german), source.callIn(german, "BARREL.VOLUME"));
    assertEquals(
        catalogue.get("BARREL.VOLUME").declaration().source(), source.call("BARREL.VOLUME"));
    String page = ReferencePage.of(catalogue.get("BARREL.VOLUME"), german).text(200);
    assertTrue(page.contains("BARREL.VOLUME(50.5;64;81.5) ergibt 229,204"), page);
  }

  private Refusal refusal(String function, Object... arguments) {
    try {
      catalogue.get(function).call(arguments);
      throw new AssertionError(function + " is answered");
    } catch (Refusal refusal) {
      return refusal;
    }
  }

  @Test
  void sentencesSpeakTheCallersUnits() {
    assertEquals(
        "head is 30 in, wider than bilge, 25 in.",
        refusal("BARREL.VOLUME", 30.0, 25.0, 32.0, "US").getMessage());
    assertEquals(
        "gross is 100 lb; it must be more than wetEmpty, 200 lb.",
        refusal("BARREL.BYWEIGHT", 100.0, 200.0, 8.5, "US").getMessage());
    assertEquals(
        "gross is 100 lb; it must be more than wetEmpty, 200 lb.",
        catalogue.get("CELLAR.WHY").call("BARREL.BYWEIGHT", 100.0, 200.0, 8.5, "US"));
  }

  @Test
  void noReasonHoldsAUnit() {
    String units =
        Stream.of(Quantity.values())
            .flatMap(quantity -> Stream.of(UnitSystem.values()).map(quantity::unit))
            .filter(unit -> !Set.of("", "in", "n", "days").contains(unit)) // words too
            .distinct()
            .map(Pattern::quote)
            .collect(Collectors.joining("|"));
    Pattern withUnit = Pattern.compile("(\\d|\\}) (" + units + ")(?![\\w/])");
    texts.forEach(
        (key, english) -> {
          if (key.contains(".reason.") && !key.startsWith("CATALOGUE")) {
            assertFalse(withUnit.matcher(english).find(), key + ": " + english);
          }
        });
  }

  @Test
  void unknownLanguagesAreEnglishAndRegionsTheirLanguage() {
    assertEquals(Words.ENGLISH, Words.in("xx"));
    assertEquals(Words.in("de"), Words.in("de-AT"));
    assertEquals("1,5", german.number(1.5, 6));
    assertEquals("1.5", Words.ENGLISH.number(1.5, 6));
  }

  /** A wizard shows some two hundred letters. */
  @Test
  void aCautionBeginsWithAShortSentence() {
    int most = 150;
    for (Words words : Words.all()) {
      for (FunctionSpec function : catalogue.functions()) {
        String first = FunctionSpec.firstSentence(function.caution(words));
        assertTrue(first.length() <= most, function.name() + " " + words.tag() + ": " + first);
      }
    }
  }

  @Test
  void noTextRestsOnASite() {
    Pattern site = Pattern.compile("\\b\\w+\\.(com|net|org|info|io|de|eu)\\b");
    texts.forEach((key, text) -> assertFalse(site.matcher(text).find(), key + ": " + text));
  }
}
