package meadcell.calc;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

/** Our calls are found in a formula as it stands. */
class CallTextTest {
  private static List<String> in(String formula) {
    return CallText.in(formula, Cellar.catalogue()).stream()
        .map(call -> call.text() + " " + call.arguments())
        .toList();
  }

  @Test
  void callsAreFoundInAnyPlaceAndCase() {
    assertEquals(
        List.of("gravity.tobrix(A1) [A1]", "HONEY.DENSITY() []"),
        in("=2*gravity.tobrix(A1)+SUM(B1;HONEY.DENSITY())"));
  }

  @Test
  void argumentsAreSplitWhereTheFormulaSplitsThem() {
    assertEquals(
        List.of("BLEND.MEAN({1;2};'a;b (c)'.A1:A2) [{1;2}, 'a;b (c)'.A1:A2]"),
        in("=BLEND.MEAN({1;2};'a;b (c)'.A1:A2)"));
    assertEquals(
        List.of("GRAVITY.CORRECT(A1;B1;;\"x);\"\"y\") [A1, B1, , \"x);\"\"y\"]"),
        in("=GRAVITY.CORRECT(A1;B1;;\"x);\"\"y\")"));
  }

  @Test
  void aColumnOfADatabaseRangeIsOneArgument() {
    assertEquals(
        List.of("GRAVITY.TOBRIX(Log[[#This Row];[SG (x)]]) [Log[[#This Row];[SG (x)]]]"),
        in("=GRAVITY.TOBRIX(Log[[#This Row];[SG (x)]])"));
  }

  @Test
  void namesInTextsAndOtherFunctionsAreNotCalls() {
    assertEquals(List.of(), in("=\"GRAVITY.TOBRIX(1)\"&TOBRIX(2)&MY.GRAVITY.TOBRIX(1)"));
  }
}
