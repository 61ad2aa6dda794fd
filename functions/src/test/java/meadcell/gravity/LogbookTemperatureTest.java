package meadcell.gravity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.OptionalDouble;
import meadcell.catalogue.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LogbookTemperatureTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1.0425 (13 C) | 1.0425 | 13",
        "1.0425 (13 °C) | 1.0425 | 13",
        "1,0425 (13,5 °C) | 1.0425 | 13.5",
        "1.0425 @ 13C | 1.0425 | 13",
        "1.0425@13 C | 1.0425 | 13",
        "1.0425 at 68 F | 1.0425 | 20",
        "1042.5 sg, 59°F | 1.0425 | 15",
        "SG 1.0425 / 13 °C | 1.0425 | 13",
        "OG 1.102 20 C | 1.102 | 20",
        "1.000 (0 C) | 1 | 0",
      })
  void gravityWithItsTemperature(String text, double gravity, double celsius) {
    LogbookNote note = LogbookNote.of(text);
    assertEquals(gravity, note.gravity(), 1e-12);
    assertEquals(celsius, note.temperatureC().getAsDouble(), 1e-9);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1.0425 (13)", "1.0425 (13 K)", "13 C", "(13 C)", "1.0425 (130 C)", "1.0425 (-20 C)",
        "1.0425 (12-14 C)", "1.0425 13 C 14 C", "1085 F", "1 085 C", "20 (13 C)", "1.0425 (13 C) ?"
      })
  void refusesWhatIsNotOneGravityAndOneTemperature(String text) {
    assertThrows(Refusal.class, () -> LogbookNote.of(text));
  }

  @Test
  void withoutATemperatureThereIsNone() {
    assertEquals(OptionalDouble.empty(), LogbookNote.of("1.0425").temperatureC());
  }
}
