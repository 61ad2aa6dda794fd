package meadcell.batch.calculation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SeparatorsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "F({\"water\",195,}) | F({\"water\",195,\"\"})",
        "F({,2;3,}) | F({\"\",2;3,\"\"})",
        "F({1;;3}) | F({1;\"\";3})",
        "F({1, ,3};2) | F({1, \"\",3},2)",
        "F({}) | F({\"\"})",
        "F({\"a,;{\",1}) | F({\"a,;{\",1})",
        "F(;2) | F(,2)",
      })
  void fillsEmptyPlacesOfArrayConstants(String typed, String read) {
    assertEquals(read, Separators.toCommas(typed));
  }
}
