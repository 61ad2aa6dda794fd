package meadcell.batch.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import meadcell.catalogue.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class VocabularyTest {
  @ParameterizedTest
  @CsvSource({
    "SG, GRAVITY,",
    "Specific Gravity, GRAVITY,",
    "Dichte, GRAVITY,",
    "Dichte (kg/L), DENSITY, KILOGRAM_PER_LITRE",
    "°P, GRAVITY, BRIX",
    "Mostgewicht, GRAVITY, OECHSLE",
    "Brix, BRIX, BRIX",
    "Temp. (deg F), TEMPERATURE, FAHRENHEIT",
    "Temperatur in °C, TEMPERATURE, CELSIUS",
    "Temp F, TEMPERATURE, FAHRENHEIT",
    "O.G.:, ORIGINAL,",
    "Stammdichte, ORIGINAL,",
    "Free SO₂ (ppm), FREE_SO2, MILLIGRAM_PER_LITRE",
    "freie SO2 [mg/L], FREE_SO2, MILLIGRAM_PER_LITRE",
    "pH-Wert, PH,",
    "Dip (in), DIP, INCH",
    "Peilung (cm), DIP, CENTIMETRE",
    "Headspace (gal), HEADSPACE, GALLON",
    "Leergewicht nass (kg), EMPTY, KILOGRAM",
    "Honig (kg), HONEY, KILOGRAM",
    "Moisture %, MOISTURE, PERCENT_VOL",
    "Datum, DATE,"
  })
  void words(String header, Concept concept, Unit unit) {
    Vocabulary.Meaning meaning = Vocabulary.meaning(Header.of(header)).orElseThrow();
    assertEquals(concept, meaning.concept());
    assertEquals(unit, meaning.unit());
    assertFalse(meaning.isWeak());
  }

  /** A gravity in litres, or a temperature in kilograms, is another thing. */
  @ParameterizedTest
  @CsvSource({"SG (L)", "Temp (kg)", "Odometer (km)", "Price", "Dip (g)"})
  void otherWords(String header) {
    assertTrue(Vocabulary.meaning(Header.of(header)).isEmpty());
  }

  @ParameterizedTest
  @CsvSource({"Reading", "Messwert", "Weight", "Kellertemperatur"})
  void wordsThatValuesMustBearOut(String header) {
    assertTrue(Vocabulary.meaning(Header.of(header)).orElseThrow().isWeak());
    assertTrue(Vocabulary.sure(Header.of(header)).isEmpty());
  }

  /** No word is written in a way it is never read; the German gravity is a density in kg/L, too. */
  @Test
  void eachWordStandsOnce() throws IOException {
    Set<String> seen = new HashSet<>();
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(
                Vocabulary.class.getResourceAsStream("headers.tsv"), StandardCharsets.UTF_8))) {
      for (String line : lines.lines().filter(l -> !l.startsWith("#")).toList()) {
        List<String> fields = List.of(line.split("\t"));
        for (String word : fields.subList(2, fields.size())) {
          String bare = word.replaceFirst("^\\?", "");
          boolean isOther = fields.get(0).equals("DENSITY") && bare.equals("dichte");
          assertTrue(seen.add(bare.toLowerCase(Locale.ROOT)) || isOther, word);
          Header header = Header.of(bare);
          assertTrue(Vocabulary.meaning(header).isPresent(), word + " is read as " + header);
          Concept concept = Vocabulary.meaning(header).get().concept();
          assertEquals(isOther ? Concept.GRAVITY : Concept.valueOf(fields.get(0)), concept, word);
        }
      }
    }
  }
}
