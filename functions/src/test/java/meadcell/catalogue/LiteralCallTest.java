package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

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
  void refusesWhatIsNotACall() {
    assertThrows(IllegalArgumentException.class, () -> LiteralCall.parse("1+1"));
    assertThrows(RuntimeException.class, () -> LiteralCall.parse("F(1"));
    assertThrows(RuntimeException.class, () -> LiteralCall.parse("F(1)2)"));
  }
}
