package meadcell.cellar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import meadcell.catalogue.LiteralCall;
import meadcell.catalogue.Refusal;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class UncertaintyTest {
  static Object call(String text) {
    LiteralCall call = LiteralCall.parse(text);
    return Cellar.catalogue().get(call.function()).call(call.arguments());
  }

  static double number(String text) {
    return (Double) call(text);
  }

  static void refused(String sentence, String text) {
    assertEquals(sentence, assertThrows(Refusal.class, () -> call(text)).getMessage());
  }

  @Test
  void aRowServesAsAColumnDoes() {
    double column = number("CELLAR.UNCERTAINTY(\"LAB.SO2\";{8;0.01;50};{0.1;\"\";0.2})");
    assertEquals(column, number("CELLAR.UNCERTAINTY(\"LAB.SO2\";{8,0.01,50};{0.1,\"\",0.2})"));
    // a product: relative uncertainties add as squares
    double so2 = number("LAB.SO2(8;0.01;50)");
    assertEquals(so2 * Math.hypot(0.1 / 8, 0.2 / 50), column, 1e-4 * column);
  }

  @Test
  void unitsAreOneOfTheArguments() {
    double kelvin = number("CELLAR.UNCERTAINTY(\"GRAVITY.CORRECT\";{1.05;25;20};{0.0004;1;\"\"})");
    double degreesF =
        number(
            "CELLAR.UNCERTAINTY(\"GRAVITY.CORRECT\";{1.05;77;68;\"\";\"US\"};{0.0004;1.8;\"\";\"\";\"\"})");
    assertEquals(kelvin, degreesF, 1e-9);
  }

  @Test
  void whatOneInstrumentReadAddsUpOrCancels() {
    double apart = number("CELLAR.UNCERTAINTY(\"BARREL.BYWEIGHT\";{280;50;1};{0.5;0.5;0})");
    double together =
        number("CELLAR.UNCERTAINTY(\"BARREL.BYWEIGHT\";{280;50;1};{0.5;0.5;0};{1;2})");
    assertEquals(Math.sqrt(0.5), apart, 1e-6);
    assertEquals(0, together, 1e-6);
    // a quotient of products: relative uncertainties, a scale's and a laboratory's
    double two =
        number("CELLAR.UNCERTAINTY(\"SULFITE.DOSE\";{225;20;57.6;33};{1;0.1;0.2;0.2};{1;2};{3;4})");
    double relative = Math.hypot(1 / 225.0 + 0.1 / 20, -0.2 / 57.6 + 0.2 / 67);
    assertEquals(relative * number("SULFITE.DOSE(225;20;57.6;33)"), two, 1e-3 * two);
  }

  @Test
  void sharesStandWhereTheArgumentsStand() {
    Object[][] row = (Object[][]) call("CELLAR.SHARES(\"LAB.SO2\";{8,0.01,50};{0.1,\"\",0.2})");
    assertEquals(1, row.length);
    assertEquals(0.0, row[0][1]);
    double titre = 0.1 / 8 * (0.1 / 8);
    double sample = 0.2 / 50 * (0.2 / 50);
    assertEquals(100 * titre / (titre + sample), (Double) row[0][0], 0.01);
    assertEquals(3, ((Object[][]) call("CELLAR.SHARES(\"LAB.SO2\";{8;0.01;50};{0.1;0;0})")).length);
  }

  @Test
  void aValueAtTheEndOfItsRangeMovesToTheOtherSide() {
    // no sugar is the least there is
    double slope = number("BOTTLE.DELLE(10;12)") - number("BOTTLE.DELLE(0;12)");
    assertEquals(slope, number("CELLAR.UNCERTAINTY(\"BOTTLE.DELLE\";{0;12};{10;0})"), 1e-9);
    // a step to exactly 0 would leave an optional argument out: it is not made
    double u = number("CELLAR.UNCERTAINTY(\"GRAVITY.CORRECT\";{1.1;25;15};{0;0;15})");
    double around =
        number("CELLAR.UNCERTAINTY(\"GRAVITY.CORRECT\";{1.1;25;15};{0;0;14.9})") * 15 / 14.9;
    assertEquals(around, u, 0.02 * around);
  }

  @Property
  void aLinearFunctionsUncertaintyIsExact(
      @Between(min = 0, max = 400) double sugar,
      @Between(min = 2, max = 24) double abv,
      @Between(min = 0.001, max = 1) double u) {
    double got =
        number(
            "CELLAR.UNCERTAINTY(\"BOTTLE.DELLE\";{%s;%s};{%s;%s})"
                .formatted(text(sugar), text(abv), text(u), text(u)));
    assertEquals(u * Math.hypot(0.1, 4.5), got, 1e-6);
  }

  private static String text(double value) {
    return new java.math.BigDecimal(value).toPlainString();
  }

  @Test
  void whatCannotBeToldIsRefused() {
    refused(
        "function is \"BLEND.ABV\", which takes a range, volumes; it must be one that takes single"
            + " values.",
        "CELLAR.UNCERTAINTY(\"BLEND.ABV\";{1;2};{1;1})");
    refused(
        "function is \"BOTTLE.LABELRANGE\"; it must be one that gives one number.",
        "CELLAR.SHARES(\"BOTTLE.LABELRANGE\";{13};{1})");
    refused(
        "function is \"BOTTLE.SWEETNESS\"; it must be one that gives one number.",
        "CELLAR.UNCERTAINTY(\"BOTTLE.SWEETNESS\";{13};{1})");
    refused(
        "arguments has 2 cells, uncertainties has 3; they must go row by row together.",
        "CELLAR.UNCERTAINTY(\"BOTTLE.DELLE\";{10;12};{1;1;1})");
    refused(
        "arguments takes one column or one row, not a block of cells.",
        "CELLAR.UNCERTAINTY(\"BOTTLE.DELLE\";{10,12;1,1};{1;1;1;1})");
    refused(
        "uncertainties are all blank or 0; at least one must be larger.",
        "CELLAR.UNCERTAINTY(\"BOTTLE.DELLE\";{10;12};{0;\"\"})");
    assertThrows(Refusal.class, () -> call("CELLAR.UNCERTAINTY(\"BOTTLE.DELLE\";{10;12};{-1;1})"));
    refused(
        "sugar is -1 g/L; it must be 0 to 800.",
        "CELLAR.UNCERTAINTY(\"BOTTLE.DELLE\";{-1;12};{1;1})");
    refused(
        "Argument 3 is left out and has an uncertainty; give the value that stands for it.",
        "CELLAR.UNCERTAINTY(\"BOTTLE.COUNT\";{225;750;\"\"};{1;1;1})");
    refused(
        "Argument 1 takes a text, a word or whole numbers, or holds no number; that has no standard"
            + " uncertainty and cannot be looked for.",
        "CELLAR.UNCERTAINTY(\"PANEL.TRIANGLE\";{24;12};{1;0})");
    refused(
        "arguments in row 1, column 1 is the text \"much\"; a number is due.",
        "CELLAR.UNCERTAINTY(\"BOTTLE.DELLE\";{\"much\";12};{1;0})");
    refused(
        "None of the uncertainties changes the result: there is nothing to share.",
        "CELLAR.SHARES(\"BARREL.BYWEIGHT\";{280;50;1};{0.5;0.5;0};{1;2})");
  }

  @Test
  void sharedPlacesAreChecked() {
    String call = "CELLAR.UNCERTAINTY(\"BOTTLE.DELLE\";{10;12};{1;1};%s)";
    refused(
        "shared names only place 1; give the places that one instrument read in one range, such as"
            + " {1;2}.",
        call.formatted("1;2"));
    refused(
        "\"3.0\" is no place of an argument; it must be a whole number from 1 to 2.",
        call.formatted("{1;3}"));
    refused(
        "\"sugar\" is no place of an argument; it must be a whole number from 1 to 2.",
        call.formatted("{1;\"sugar\"}"));
    refused(
        "shared names place 2 twice; one instrument read it, in one range.",
        call.formatted("{1;2};{2;1}"));
  }

  @Test
  void aNumberWrittenAsTextCounts() {
    assertEquals(
        number("CELLAR.UNCERTAINTY(\"BOTTLE.DELLE\";{10;12};{1;1})"),
        number("CELLAR.UNCERTAINTY(\"BOTTLE.DELLE\";{\"10\";12};{\"1\";1})"));
  }
}
