package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The declarations are complete, and the one way to call them does what the design says. */
class CatalogueTest {
  private Catalogue catalogue;
  private Catalogue proving;

  @BeforeEach
  void read() {
    catalogue = Fresh.catalogue();
    proving = Catalogue.of(Proving.class);
  }

  /** A family as a contributor would add it: nothing else has to change. */
  @Family(name = "PROVING", about = "Only for tests.")
  public static final class Proving {
    public enum Word {
      ONE,
      TWO_THREE
    }

    public record Pair(
        @Gives(value = "length", is = Quantity.LENGTH) double length,
        @Gives("count") double count) {}

    @CellarFunction(
        summary = "Warmth.",
        gives = Quantity.TEMPERATURE,
        formula = "t + by",
        source = "test",
        example = "PROVING.WARMER(20)")
    public static double warmer(
        @Arg(name = "t", help = "Before", is = Quantity.TEMPERATURE, from = 2, to = 45) double t,
        @Arg(name = "by", help = "Rise", byDefault = 10, from = 0, to = 50) double by) {
      return t + by;
    }

    @CellarFunction(
        summary = "Pair.",
        formula = "none",
        source = "test",
        example = "PROVING.PAIR(2.54)")
    @SuppressWarnings("EnumOrdinal") // any number that tells the words apart
    public static Pair pair(
        @Arg(name = "length", help = "Length", is = Quantity.LENGTH, above = 0) double length,
        @Arg(name = "word", help = "Word", byDefaultWord = "one") Word word) {
      return new Pair(length, word.ordinal());
    }

    @CellarFunction(
        summary = "Sum of products.",
        formula = "Σ a b",
        source = "test",
        example = "PROVING.DOT({1,2};{3,4})")
    public static double dot(
        @Arg(name = "a", help = "First", from = 0, to = 100) double[] a,
        @Arg(name = "b", help = "Second", from = 0, to = 100) double[] b) {
      double sum = 0;
      for (int i = 0; i < a.length; i++) {
        sum += a[i] * b[i];
      }
      return sum;
    }
  }

  private Object call(String text) {
    LiteralCall literal = LiteralCall.parse(text);
    return proving.get(literal.function()).call(literal.arguments());
  }

  private String refusal(String text) {
    return assertThrows(Refusal.class, () -> call(text), text).getMessage();
  }

  @Test
  void unitsComeLastWhereverOptionalArgumentsStop() {
    assertEquals(30.0, call("PROVING.WARMER(20)"));
    assertEquals(68 + 18, (double) call("PROVING.WARMER(68;\"US\")"), 1e-12);
    assertEquals(68 + 9, (double) call("PROVING.WARMER(68;5;\"us\")"), 1e-12);
    assertEquals(30.0, call("PROVING.WARMER(20;;\"metric\")"));
    assertEquals(30.0, call("PROVING.WARMER(20;;)"));
    assertEquals(
        "units must be \"metric\" or \"US\", and the last argument.",
        refusal("PROVING.WARMER(20;5;\"imperial\")"));
  }

  @Test
  void aRowConvertsEachNumberByItsOwnQuantity() {
    Object[][] row =
        assertInstanceOf(Object[][].class, call("PROVING.PAIR(1;\"TwoThree\";\"US\")"));
    assertEquals(List.of(1.0, 1.0), List.of(row[0]));
  }

  @Test
  void refusalsNameArgumentValueLimitAndSlip() {
    assertEquals(
        "t is 68 °C; it must be 2 to 45. Is it °F? Then end the call with \"US\".",
        refusal("PROVING.WARMER(68)"));
    assertEquals(
        "t is 0 °C; it must be 2 to 45. It is 0 or a blank cell.", refusal("PROVING.WARMER(0)"));
    assertEquals("t is 30 °F; it must be 35.6 to 113.", refusal("PROVING.WARMER(30;\"US\")"));
    assertEquals("t is the text \"warm\"; a number is due.", refusal("PROVING.WARMER(\"warm\")"));
    assertEquals(
        "length is 0 cm; it must be above 0. It is 0 or a blank cell.", refusal("PROVING.PAIR(0)"));
    assertEquals(
        "word is \"twothre\"; it must be one of \"one\", \"twothree\". Did you mean twothree?",
        refusal("PROVING.PAIR(1;\"twothre\")"));
    assertTrue(refusal("PROVING.WARMER()").contains("given 0 arguments"));
    assertTrue(refusal("PROVING.DOT({1})").contains("given 1 argument;"));
    assertTrue(refusal("PROVING.WARMER(20;1;\"US\";3)").contains("given 4 arguments"));
  }

  @Test
  void columnsGoRowByRow() {
    assertEquals(11.0, call("PROVING.DOT({1,2};{3,4})"));
    assertEquals(11.0, call("PROVING.DOT({1;;2};{3;;4})"), "blank rows are skipped");
    assertEquals("b in row 2 is blank.", refusal("PROVING.DOT({1;2};{3;})"));
    assertEquals(
        "a has 2 cells, b has 1; they must go row by row together.",
        refusal("PROVING.DOT({1;2};3)"));
    assertEquals(
        "a in row 2 is the text \"x\"; a number is due.", refusal("PROVING.DOT({1;\"x\"};{3;4})"));
    assertEquals("b in row 1 is 101; it must be 0 to 100.", refusal("PROVING.DOT({1};{101})"));
    assertEquals(
        "a takes one column or one row, not a block of cells.",
        refusal("PROVING.DOT({1,2;3,4};{1,2;3,4})"));
  }

  @Test
  void namesAreFoundInAnyCaseAndWithTheForeignPrefix() {
    assertEquals("PROVING.DOT", proving.find("_xll.proving.dot").orElseThrow().name());
    Refusal unknown = assertThrows(Refusal.class, () -> proving.get("PROVING.DOTT"));
    assertEquals(
        "The function \"PROVING.DOTT\" is not known. Did you mean PROVING.DOT?",
        unknown.getMessage());
  }

  @Test
  void whyExplainsAndIsEmptyWhenAnswered() {
    assertEquals(Optional.empty(), Cellar.why("GRAVITY.TOBRIX", 1.05));
    FunctionSpec why = catalogue.get("CELLAR.WHY");
    assertEquals("", why.call("GRAVITY.TOBRIX", 1.05));
    String slip = (String) why.call("GRAVITY.TOBRIX", 1085.0);
    assertTrue(slip.endsWith("Did you mean 1.085?"), slip);
    String name = (String) why.call("GRAVITY.TOBRICKS", 1.0);
    assertTrue(name.endsWith("Did you mean GRAVITY.TOBRIX?"), name);
  }

  @Test
  void mapGivesAColumnWithBlanksAndRefusalsInPlace() {
    Object[][] column = {{1.04}, {""}, {1085.0}, {1.09}};
    Object[][] mapped = (Object[][]) Cellar.map("GRAVITY.TOBRIX", (Object) column);
    assertEquals(catalogue.get("GRAVITY.TOBRIX").call(1.04), mapped[0][0]);
    assertEquals("", mapped[1][0]);
    assertInstanceOf(Refusal.class, mapped[2][0]);
    assertEquals(4, mapped.length);
    assertThrows(Refusal.class, () -> Cellar.map("CELLAR.MAP", (Object) column));
  }

  @TestFactory
  Stream<DynamicTest> everyFunctionIsFullyDeclared() {
    return catalogue.functions().stream()
        .map(f -> DynamicTest.dynamicTest(f.name(), () -> assertDeclared(f)));
  }

  private static void assertDeclared(FunctionSpec function) {
    CellarFunction declaration = function.declaration();
    assertTrue(function.family().matches("[A-Z]{3,}"), "prefix of letters");
    // BREAK: a capital keeps the word from being a Java keyword
    assertTrue(function.member().matches("[A-Za-z][A-Za-z0-9]*"), "letters and digits");
    for (String text :
        List.of(declaration.summary(), declaration.formula(), declaration.source())) {
      assertFalse(text.isBlank());
    }
    assertTrue(declaration.summary().endsWith("."), "summary is a sentence");
    for (ArgSpec arg : function.args()) {
      assertTrue(arg.name().matches("[a-z][A-Za-z0-9]*"), arg.name());
      assertFalse(arg.help(Words.ENGLISH).isBlank(), arg.name());
      assertFalse(arg.help(Words.ENGLISH).endsWith("."), arg.name() + ": unit and range follow");
      assertFalse(arg.description().contains(".."), arg.description());
    }
    LiteralCall example = LiteralCall.parse(declaration.example());
    assertEquals(function.name(), example.function());
    assertTrue(ReferencePage.of(function).text(80).contains("gives"));
  }
}
