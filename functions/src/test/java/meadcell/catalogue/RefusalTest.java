package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Every number just outside its limits, not a number or a text is refused, and the sentence names
 * the argument, the value and the limit.
 */
class RefusalTest {
  private static final double BEYOND = 1e-6;

  @TestFactory
  Stream<DynamicTest> everyNumberIsGuarded() {
    return Fresh.catalogue().functions().stream()
        .flatMap(
            f ->
                f.args().stream()
                    .filter(arg -> arg.kind() == Kind.NUMBER)
                    .map(
                        arg ->
                            DynamicTest.dynamicTest(
                                f.name() + " " + arg.name(), () -> assertGuarded(f, arg))));
  }

  private static void assertGuarded(FunctionSpec function, ArgSpec arg) {
    Range declared = arg.range();
    List<Double> outside = new ArrayList<>();
    for (double low : new double[] {declared.from(), declared.above()}) {
      if (Double.isFinite(low)) {
        outside.add(low - BEYOND * Math.max(1, Math.abs(low)));
      }
    }
    for (double high : new double[] {declared.to(), declared.below()}) {
      if (Double.isFinite(high)) {
        outside.add(high + BEYOND * Math.max(1, Math.abs(high)));
      }
    }
    if (Double.isFinite(declared.above())) {
      outside.add(declared.above());
    }
    if (Double.isFinite(declared.below())) {
      outside.add(declared.below());
    }
    if (arg.zeroIsBlank()) {
      outside.add(0.0);
    }
    assertTrue(outside.size() >= 2 || arg.zeroIsBlank(), "limits on both sides");
    outside.removeIf(value -> arg.isLeftOutBy(value, UnitSystem.METRIC));
    for (double value : outside) {
      Refusal refusal = refusal(function, arg, value);
      assertEquals(Refusal.Kind.OUT_OF_RANGE, refusal.kind(), refusal.getMessage());
      String sentence = refusal.getMessage();
      String measured = Words.ENGLISH.measured(value, arg.quantity(), UnitSystem.METRIC);
      assertTrue(measured.contains(Numbers.text(value)), measured);
      assertTrue(sentence.startsWith(arg.name() + " is " + measured), sentence);
      String range = arg.range(UnitSystem.METRIC);
      assertTrue(sentence.contains(declared.contains(value) ? "other than 0" : range), sentence);
    }
    for (Object wrong : new Object[] {Double.NaN, Double.POSITIVE_INFINITY, "x", "1,5", ""}) {
      if (arg.isLeftOutBy(wrong, UnitSystem.METRIC)) {
        continue;
      }
      Refusal refusal = refusal(function, arg, wrong);
      assertEquals(Refusal.Kind.WRONG_KIND, refusal.kind());
      assertTrue(refusal.getMessage().startsWith(arg.name()), refusal.getMessage());
    }
  }

  private static Refusal refusal(FunctionSpec function, ArgSpec arg, Object value) {
    Object[] example = LiteralCall.parse(function.declaration().example()).arguments();
    int last = example.length - 1;
    boolean named =
        function.takesUnits() && last >= 0 && UnitSystem.named(example[last]).isPresent();
    Object[] metric = named ? Arrays.copyOf(example, last) : example;
    Object[] call = Arrays.copyOf(metric, Math.max(metric.length, function.args().size()));
    call[function.args().indexOf(arg)] = value;
    return assertThrows(Refusal.class, () -> function.call(call), () -> arg.name() + " " + value);
  }
}
