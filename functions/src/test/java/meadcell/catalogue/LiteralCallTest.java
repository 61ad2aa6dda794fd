package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LiteralCallTest {
  @Test
  void readsNumbersTextsRangesAndGaps() {
    LiteralCall call = LiteralCall.parse("F.G( -1.5e2 ;; \"a \"\"b\"\"; c\" ;{1, \"x\";, 4})");
    assertEquals("F.G", call.function());
    assertArrayEquals(
        new Object[] {-150.0, null, "a \"b\"; c", new Object[][] {{1.0, "x"}, {"", 4.0}}},
        call.arguments());
    assertArrayEquals(
        new Object[][] {{1.0, 2.0}, {3.0, ""}}, (Object[][]) LiteralCall.parseValue("{1,2;3}"));
    assertEquals(0, LiteralCall.parse("F.G()").arguments().length);
  }

  @Test
  void blanksMayComeFirst() {
    assertArrayEquals(
        new Object[][] {{"", 1.0}, {"", ""}}, (Object[][]) LiteralCall.parseValue("{,1;}"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1+1",
        "F",
        "F(1",
        "F(1)2)",
        "F(1,2)",
        "F(A1)",
        "F({1;2)",
        "F({1 2})",
        "F(\"a)",
        "F(--1)",
        "F(1d)",
        "F(NaN)",
        "F(1:2)",
        "F(G(1))"
      })
  void refusesWhatIsNotACall(String text) {
    String reason =
        assertThrows(IllegalArgumentException.class, () -> LiteralCall.parse(text)).getMessage();
    assertTrue(reason.endsWith(text), reason);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "1;2", "abc", "1,5"})
  void refusesWhatIsNotOneValue(String text) {
    assertThrows(IllegalArgumentException.class, () -> LiteralCall.parseValue(text));
  }
}
