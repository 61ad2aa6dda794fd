package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

/** What the history of numbers says is true of this version. */
class ChangedNumberTest {
  @Test
  void theExamplesGiveWhatTheyAreSaidToGive() {
    for (ChangedNumber change : ChangedNumber.all()) {
      LiteralCall call = LiteralCall.parse(change.call());
      assertEquals(change.function(), call.function());
      Object got = Cellar.catalogue().get(call.function()).call(call.arguments());
      assertRounded(LiteralCall.parseValue(change.is()), change.is(), got);
      assertNotEquals(change.was(), change.is());
      assertTrue(change.isAfter(""));
      assertFalse(change.isAfter(Cellar.version()), "a version to come: " + change);
    }
  }

  private static void assertRounded(Object said, String text, Object got) {
    if (said instanceof Object[][] cells) {
      String[] texts = text.substring(1, text.length() - 1).split("[,;]");
      int at = 0;
      for (int i = 0; i < cells.length; i++) {
        for (int j = 0; j < cells[i].length; j++) {
          assertRounded(cells[i][j], texts[at++], ((Object[][]) got)[i][j]);
        }
      }
    } else {
      BigDecimal printed = new BigDecimal(text);
      assertEquals(
          printed,
          BigDecimal.valueOf((Double) got).setScale(printed.scale(), RoundingMode.HALF_EVEN));
    }
  }

  @Test
  void versionsAreComparedAsNumbers() {
    ChangedNumber change = new ChangedNumber("X.Y", "1.10.0", "X.Y()", "1", "2", "test");
    assertTrue(change.isAfter("1.9.3"));
    assertTrue(change.isAfter("1"));
    assertFalse(change.isAfter("1.10.0"));
    assertFalse(change.isAfter("2.0.0"));
  }
}
