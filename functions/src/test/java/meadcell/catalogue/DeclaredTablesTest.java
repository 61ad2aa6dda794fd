package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What declarations of tables, shared arguments and results say, read, give and refuse. */
class DeclaredTablesTest {
  /** A word that a user chooses. */
  public enum Taste {
    DRY,
    VERY_SWEET
  }

  /** A row with every sort of column. */
  public record Line(
      @RowNumber int row,
      @Arg(name = "what", help = "What it is") String what,
      @Arg(name = "volume", help = "How much", is = Quantity.VOLUME, above = 0, to = 1000)
          double volumeL,
      @Arg(
              name = "sugar",
              help = "Its sugar",
              is = Quantity.PERCENT,
              from = 0,
              to = 100,
              zeroIsBlank = true)
          OptionalDouble sugar,
      @Arg(name = "days", help = "Days", is = Quantity.DAYS, from = 0, to = 9, byDefault = 3)
          double days,
      @Arg(name = "more", help = "More values", from = 0, to = 5) Cell[] more) {}

  /** A row without anything that units could change. */
  public record Pure(
      @Arg(name = "x", help = "Any number", from = 0, to = 9) double x,
      @Arg(name = "y", help = "Another", from = 0, to = 9) Cell y) {}

  /** What comes out for a line. */
  public record Told(
      @Gives("row") double row,
      @Gives(value = "volume", is = Quantity.VOLUME) double volumeL,
      double kept) {}

  @Family(name = "TABLED", about = "Only for tests.")
  public static final class Tabled {
    @Arg(name = "length", help = "A length", is = Quantity.LENGTH, above = 0, to = 100)
    @Retention(RetentionPolicy.RUNTIME)
    private @interface Length {
      String name() default "";

      String help() default "";

      double to() default Double.NaN;
    }

    @CellarFunction(
        summary = "Rows.",
        formula = "none",
        source = "test",
        example = "TABLED.TELL({\"a\",1})")
    public static Object[][] tell(@Arg(name = "lines", help = "Rows") Rows<Line> lines) {
      return lines.stream()
          .map(
              line ->
                  new Object[] {
                    (double) line.row,
                    line.what,
                    line.volumeL,
                    line.sugar.isPresent() ? (Object) line.sugar.getAsDouble() : "",
                    line.days,
                    (double) line.more.length,
                    line.more.length == 0 || line.more[0].isBlank()
                        ? ""
                        : (Object) line.more[0].number()
                  })
          .toArray(Object[][]::new);
    }

    @CellarFunction(
        summary = "Records.",
        formula = "none",
        source = "test",
        example = "TABLED.RECORDS({\"a\",1})")
    public static Told[] records(@Arg(name = "lines", help = "Rows") Rows<Line> lines) {
      return lines.stream().map(l -> new Told(l.row, l.volumeL, 1)).toArray(Told[]::new);
    }

    @CellarFunction(
        summary = "Sum.",
        formula = "none",
        source = "test",
        note = "A note.",
        caution = "Take care.",
        example = "TABLED.SUM({1,2})")
    public static double sum(@Arg(name = "pairs", help = "Pairs") Rows<Pure> pairs) {
      return pairs.stream().mapToDouble(pair -> pair.x + (pair.y.isBlank() ? 0 : 100)).sum();
    }

    @CellarFunction(
        summary = "Numbers.",
        gives = Quantity.LENGTH,
        formula = "none",
        source = "test",
        example = "TABLED.GRID({1,2})")
    public static double[] grid(
        @Arg(name = "cells", help = "Numbers", is = Quantity.LENGTH, from = 0, to = 9)
            double[][] cells) {
      double[] sums = new double[cells.length];
      for (int i = 0; i < sums.length; i++) {
        for (double cell : cells[i]) {
          sums[i] += cell;
        }
      }
      return sums;
    }

    @CellarFunction(
        summary = "Shared.",
        formula = "none",
        source = "test",
        example = "TABLED.SHARED(1;2)")
    public static double shared(
        @Length double length,
        @Length(name = "other", help = "Another length", to = 50) double other,
        @Arg(name = "twice", help = "1 to double it", byDefault = 0) boolean twice,
        @Arg(name = "times", help = "How often", from = 1, to = 5, byDefault = 2) int times,
        @Arg(name = "kind", help = "Which", byDefaultWord = "dry") Taste kind,
        @Arg(name = "word", help = "Any text", byDefaultWord = "none") String word) {
      return (length + other) * (twice ? 2 : 1) * times + word.length() / 100.0;
    }

    @CellarFunction(
        summary = "Strength.",
        formula = "none",
        source = "test",
        example = "TABLED.STRONG({12})")
    public static double strong(
        @Arg(name = "abvs", help = "Strengths", is = Quantity.PERCENT_VOL, from = 0, to = 100)
            double[] abvs) {
      return abvs.length;
    }
  }

  private Catalogue catalogue;

  @BeforeEach
  void read() {
    catalogue = Catalogue.of(Tabled.class);
  }

  private Object call(String text) {
    LiteralCall literal = LiteralCall.parse(text);
    return catalogue.get(literal.function()).call(literal.arguments());
  }

  private Refusal refused(String text) {
    return assertThrows(Refusal.class, () -> call(text), text);
  }

  private String refusal(String text) {
    return refused(text).getMessage();
  }

  @Test
  void aRowIsReadColumnByColumn() {
    assertArrayEquals(
        new Object[][] {
          {1.0, "a", 2.0, "", 3.0, 2.0, ""},
          {3.0, "7", 1000.0, 12.0, 0.0, 2.0, 5.0},
        },
        (Object[][]) call("TABLED.TELL({\" a \",2;;7,1000,12,0,5,1})"));
    assertEquals("", ((Object[][]) call("TABLED.TELL({\"a\",2,0})"))[0][3], "0 for a blank");
    assertEquals("7.5", ((Object[][]) call("TABLED.TELL({7.5,2})"))[0][1]);
    assertEquals(
        3.785411784, (double) ((Object[][]) call("TABLED.TELL({\"a\",1};\"US\")"))[0][2], 1e-12);
  }

  @Test
  void aRefusalOfATableSaysColumnAndRow() {
    assertEquals("volume in row 2 of lines is blank.", refusal("TABLED.TELL({\"a\",2;\"b\",})"));
    assertEquals(
        "volume in row 1 of lines is 1001 L; it must be above 0, at most 1000.",
        refusal("TABLED.TELL({\"a\",1001})"));
    assertEquals(
        "more 1 in row 1 of lines is 6; it must be 0 to 5.",
        refusal("TABLED.TELL({\"a\",2,1,1,6,6})"));
    assertEquals(
        Optional.of(new Place(1, 2, "volume")), refused("TABLED.TELL({\"a\",1001})").place());
    assertEquals(
        Optional.of(new Place(1, 5, "more 1")), refused("TABLED.TELL({\"a\",2,1,1,6})").place());
    assertEquals("lines has only blank cells.", refusal("TABLED.TELL({,;,})"));
    assertEquals(
        "lines has 1 columns; due are what, volume, sugar, days, more.",
        refusal("TABLED.TELL({\"a\"})"));
    assertEquals("pairs has 3 columns; due are x, y.", refusal("TABLED.SUM({1,2,3})"));
    assertEquals(101.0, call("TABLED.SUM({1,2})"));
    assertEquals(1.0, call("TABLED.SUM(1)"), "columns that may be blank may be missing");
  }

  @Test
  void aBlockOfNumbersHasNoGaps() {
    assertArrayEquals(new Object[][] {{3.0}, {7.0}}, (Object[][]) call("TABLED.GRID({1,2;;3,4})"));
    assertEquals(1.0, (double) ((Object[][]) call("TABLED.GRID({0.4,0.6};\"US\")"))[0][0], 1e-12);
    assertEquals("cells in row 3, column 2 is blank.", refusal("TABLED.GRID({1,2;,;3,})"));
    assertEquals(
        "cells in row 2, column 1 is 10 cm; it must be 0 to 9.",
        refusal("TABLED.GRID({1,2;10,1})"));
    assertEquals("cells has only blank cells.", refusal("TABLED.GRID({,})"));
  }

  @Test
  void unitsAreTakenWhereAnythingHasAUnitThatDiffers() {
    assertTrue(catalogue.get("TABLED.TELL").takesUnits(), "a column of the table");
    assertTrue(catalogue.get("TABLED.RECORDS").takesUnits());
    assertTrue(catalogue.get("TABLED.GRID").takesUnits());
    assertFalse(catalogue.get("TABLED.SUM").takesUnits());
    assertFalse(catalogue.get("TABLED.STRONG").takesUnits());
    assertEquals(1, catalogue.get("TABLED.SUM").most());
    assertEquals(2, catalogue.get("TABLED.TELL").most());
  }

  @Test
  void sharedArgumentsAndDefaults() {
    FunctionSpec shared = catalogue.get("TABLED.SHARED");
    assertEquals(2, shared.required());
    assertEquals(
        "TABLED.SHARED(length; other; [twice=0]; [times=2]; [kind=\"dry\"]; [word=\"none\"];"
            + " [units=\"metric\"])",
        shared.signature());
    assertEquals("above 0, at most 100", shared.args().get(0).range(UnitSystem.METRIC));
    assertEquals("above 0, at most 50", shared.args().get(1).range(UnitSystem.METRIC));
    assertEquals(6.04, (double) call("TABLED.SHARED(1;2)"), 1e-12);
    assertEquals(30.01, (double) call("TABLED.SHARED(1;2;1;5;\"Very sweet\";\"x\")"), 1e-12);
    assertEquals("other is 51 cm; it must be above 0, at most 50.", refusal("TABLED.SHARED(1;51)"));
    assertEquals("twice is 0.5; it must be 1 or 0.", refusal("TABLED.SHARED(1;2;0.5)"));
    assertEquals("times is 1.5; it must be a whole number.", refusal("TABLED.SHARED(1;2;0;1.5)"));
    assertEquals("word is 3; a text is due.", refusal("TABLED.SHARED(1;2;0;1;\"dry\";3)"));
    assertEquals(
        "length takes one cell, not a range of several.", refusal("TABLED.SHARED({1,2};2)"));
    assertEquals(
        "length takes one cell, not a range of several.", refusal("TABLED.SHARED({1;2};2)"));
    assertEquals(6.04, (double) call("TABLED.SHARED({1};{2})"), 1e-12);
    assertEquals(Optional.of("dry"), refused("TABLED.SHARED(1;2;0;1;\"dri\")").suggestion());
  }

  @Test
  void amongFractionsAStrengthIsRefused() {
    assertEquals(2.0, call("TABLED.STRONG({12;0.5})"));
    assertEquals(2.0, call("TABLED.STRONG({1;0.5})"));
    assertEquals(1.0, call("TABLED.STRONG({0})"));
    Refusal fractions = refused("TABLED.STRONG({0.12;0.5})");
    assertEquals(General.FRACTION, fractions.reason());
    assertEquals(Optional.of(Place.row(1)), fractions.place());
    assertEquals(12, fractions.slip().orElseThrow().meant(), 1e-12);
    assertEquals("value", fractions.parameters().get(0).name());
  }

  @Test
  void descriptionsSayUnitRangeDefaultAndColumns() {
    FunctionSpec tell = catalogue.get("TABLED.TELL");
    assertEquals(
        "Rows. Columns: What it is; How much, L (US gal), above 0, at most 1000 (above 0, at most"
            + " 264.2); Its sugar, %, 0 to 100 (may be blank); Days, days, 0 to 9 (may be blank);"
            + " More values, 0 to 5 (may be blank).",
        tell.args().get(0).description());
    assertEquals("Rows. Gives rows of cells.", tell.description());
    assertEquals(
        "Records. Gives rows of row; volume, L (US gal).",
        catalogue.get("TABLED.RECORDS").description());
    assertEquals("Numbers. Gives a column of cm (in).", catalogue.get("TABLED.GRID").description());
    FunctionSpec sum = catalogue.get("TABLED.SUM");
    assertEquals("Caution: Take care. Sum. Gives a number.", sum.description());
    assertEquals("a number", sum.result().description());
    assertEquals(ResultSpec.Shape.NUMBER, sum.result().shape());
    assertEquals("A note.", sum.note(Words.ENGLISH));
    assertEquals("", tell.note(Words.ENGLISH));
    ArgSpec times = catalogue.get("TABLED.SHARED").args().get(3);
    assertEquals("How often, 1 to 5. If left out or blank: 2.", times.description());
    assertEquals(
        "Which: \"dry\", \"verysweet\". If left out or blank: dry.",
        catalogue.get("TABLED.SHARED").args().get(4).description());
  }

  @Test
  void everyTextHasItsKey() {
    Map<String, String> texts = new LinkedHashMap<>();
    catalogue.get("TABLED.SUM").texts(texts::put);
    catalogue.get("TABLED.RECORDS").texts(texts::put);
    catalogue.get("TABLED.SHARED").texts(texts::put);
    assertEquals("Take care.", texts.get("TABLED.SUM.caution"));
    assertEquals("Another", texts.get("CATALOGUE.Pure.arg.y"));
    assertEquals("How much", texts.get("CATALOGUE.Line.arg.volumeL"));
    assertEquals("volume", texts.get("TABLED.RECORDS.gives.volumeL"));
    assertEquals("A length", texts.get("CATALOGUE.arg.Length"));
    assertEquals("Another length", texts.get("TABLED.SHARED.arg.other"));
    assertFalse(texts.containsKey("TABLED.RECORDS.note"), "what is empty needs no words");
    assertFalse(texts.containsKey("TABLED.RECORDS.gives.kept"));
    assertTrue(catalogue.texts().entrySet().containsAll(texts.entrySet()));
    assertEquals("Only for tests.", catalogue.texts().get("TABLED.about"));
    assertEquals("L", catalogue.texts().get("CATALOGUE.unit.VOLUME"));
    assertEquals("US gal", catalogue.texts().get("CATALOGUE.unit.VOLUME.us"));
    assertEquals("{argument} is blank.", catalogue.texts().get(General.BLANK.key()));
    assertFalse(catalogue.texts().containsValue(""));
  }

  @Test
  void namesAndFamilies() {
    assertEquals(
        List.of(
            "TABLED.GRID",
            "TABLED.RECORDS",
            "TABLED.SHARED",
            "TABLED.STRONG",
            "TABLED.SUM",
            "TABLED.TELL"),
        List.copyOf(catalogue.names()));
    assertEquals(
        List.copyOf(catalogue.names()),
        catalogue.functions("TABLED").stream().map(FunctionSpec::name).toList());
    assertEquals(List.of(), catalogue.functions("ABSENT"));
    assertEquals(List.of(Tabled.class), catalogue.families().get("TABLED").classes());
  }

  @Test
  void kindsOfOneCell() {
    Set<Kind> ofOneCell = Set.of(Kind.NUMBER, Kind.TEXT, Kind.CHOICE);
    for (Kind kind : Kind.values()) {
      assertEquals(ofOneCell.contains(kind), kind.isScalar(), kind.name());
    }
    assertEquals(Kind.NUMBER, Kind.of(int.class));
    assertEquals(Kind.NUMBER, Kind.of(boolean.class));
    assertEquals(Kind.NUMBER, Kind.of(OptionalDouble.class));
    assertEquals(Kind.NUMBERS, Kind.of(double[].class));
    assertEquals(Kind.TEXTS, Kind.of(String[].class));
    assertEquals(Kind.TABLE, Kind.of(Rows.class));
    assertEquals(Kind.TABLE, Kind.of(Cell[].class));
    assertEquals(Kind.NUMBER_TABLE, Kind.of(double[][].class));
    assertEquals(Kind.CHOICE, Kind.of(Taste.class));
    assertEquals(Kind.REST, Kind.of(Object[].class));
    assertThrows(IllegalStateException.class, () -> Kind.of(List.class));
  }
}
