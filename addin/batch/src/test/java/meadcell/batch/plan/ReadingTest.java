package meadcell.batch.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Optional;
import meadcell.catalogue.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReadingTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "78F | 78 | FAHRENHEIT",
        "78 °F | 78 | FAHRENHEIT",
        "18,5 | 18.5 |",
        "ca. 18 C | 18 | CELSIUS",
        "~12.5L | 12.5 | LITRE",
        "about 3 gal | 3 | GALLON",
        "-1.5 ° | -1.5 |",
        "1,085.5 | 1085.5 |",
        "0,985 | 0.985 |",
        "3/4 | |",
      })
  void readsWhatIsClear(String text, String number, Unit unit) {
    Reading reading = Reading.of(text);
    assertEquals(number, reading.number());
    assertEquals(Optional.ofNullable(unit), reading.unit());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1,085",
        "18?",
        "18-20",
        "18 to 20",
        "18–20",
        "18 bananas",
        "warm",
        "1.2.3",
        "1,2,3",
        "--"
      })
  void leavesWhatIsNot(String text) {
    assertFalse(Reading.of(text).isUnderstood(), text);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Temp (°F) | temp | FAHRENHEIT",
        "Temp. [F]: | temp | FAHRENHEIT",
        "Temp °C | temp | CELSIUS",
        "Vol (gal) | vol | GALLON",
        "Volume, L | volume | LITRE",
        "Drop / mm | drop | MILLIMETRE",
        "ABV % vol | abv | PERCENT_VOL",
        "ABV (old rule) | abv (old rule) |",
        "Original  gravity | original gravity |",
        "SG | sg |",
      })
  void takesUnitsFromHeaders(String text, String name, Unit unit) {
    Header header = Header.of(text);
    assertEquals(name, header.name());
    assertEquals(Optional.ofNullable(unit), header.unit());
  }

  @Test
  void unitsOfOneKindFitEachOther() {
    assertEquals("A1*100", Conversion.of("A1", Unit.HECTOLITRE, Unit.LITRE));
    assertFalse(Unit.LITRE.fits(Unit.CELSIUS));
  }
}
