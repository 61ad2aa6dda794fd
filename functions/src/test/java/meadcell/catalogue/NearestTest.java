package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestTest {
  private static final List<String> FRUITS =
      List.of("sour cherry", "sweet cherry", "raspberry", "red currant", "black currant", "plum");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "cherry | sour cherry, sweet cherry",
        "Cherries | sour cherry, sweet cherry",
        "currants | red currant, black currant",
        "rasberry | raspberry",
        "plums | plum",
        "sour chery | sour cherry",
        "yuzu | -",
      })
  void suggests(String given, String suggestion) {
    assertEquals(suggestion, Nearest.to(given, FRUITS).orElse("-"));
  }
}
