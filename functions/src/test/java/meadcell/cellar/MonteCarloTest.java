package meadcell.cellar;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import java.util.stream.Stream;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.LiteralCall;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The uncertainty of functions that end on a label or in a decision about safety, against draws
 * from the distributions of their arguments (JCGM 101), with the uncertainties that a cellar has.
 */
class MonteCarloTest {
  private static final int DRAWS = 40_000;
  private static final double WITHIN = 0.05;

  private static Stream<String> cases() {
    return Stream.of(
        "ALCOHOL.ABV|{1.1;0.995}|{0.001;0.001}|",
        "ALCOHOL.ABV|{1.12;1.01}|{0.001;0.001}|{1;2}",
        "ALCOHOL.SUGARLEFT|{1.13;1.02}|{0.002;0.001}|",
        "ALCOHOL.DRYEXTRACT|{1.02;13}|{0.0005;0.3}|",
        "ALCOHOL.FROMDISTILLATE|{0.983}|{0.0002}|",
        "BOTTLE.CORKPRESSURE|{750;14;15;25;13;20;1.2}|{5;0.7;1;1;0.3;3;0.1}|",
        "BOTTLE.LABELRISK|{13.5;12.3;0.4}|{0;0.2;0.05}|",
        "BOTTLE.DRINKS|{750;12}|{5;0.3}|",
        "BOTTLE.PRESSURE|{4;20;12;30}|{0.3;2;0.3;3}|",
        "BOTTLE.CO2|{300;20;12;30}|{20;1;0.3;3}|",
        "BOTTLE.REFERMENT|{12;13;1.2;30}|{2;0.3;0.2;2}|",
        "BOTTLE.WORSTPRESSURE|{1.1;0.995;14.1;20}|{0.001;0.0005;0.3;2}|",
        "BOTTLE.PRIMING|{100;5;86}|{2;0.3;2}|",
        "BOTTLE.DELLE|{120;15}|{8;0.3}|",
        "BOTTLE.VOLUMEAT|{225;12;22;14;100}|{1;1;1;0.3;10}|",
        "SULFITE.MOLECULAR|{30;3.5}|{3;0.05}|",
        "SULFITE.FREENEEDED|{0.8;3.5}|{0;0.05}|",
        "SULFITE.DOSE|{225;20;57.6;33}|{3;2;1;5}|",
        "FERMENT.ROOMCO2|{0.3;60;2}|{0.04;5;0.2}|",
        "BARREL.SAMPLEMAX|{5;40;0.99}|{0.5;2;0.005}|",
        "BARREL.BYWEIGHT|{280;50;1.01}|{0.5;2;0.001}|",
        "BLEND.FORTIFY|{100;14;60;18}|{1;0.3;0.5;0}|",
        "LAB.VOLATILE|{0.8;0.1;10}|{0.05;0.001;0.05}|");
  }

  @TestFactory
  Stream<DynamicTest> agreesWithDraws() {
    return cases().map(row -> DynamicTest.dynamicTest(row, () -> check(row.split("\\|", -1))));
  }

  private static void check(String... parts) {
    String shared = parts[3].isEmpty() ? "" : ";" + parts[3];
    LiteralCall call =
        LiteralCall.parse(
            "CELLAR.UNCERTAINTY(\"%s\";%s;%s%s)".formatted(parts[0], parts[1], parts[2], shared));
    double propagated = (Double) Cellar.catalogue().get(call.function()).call(call.arguments());
    double drawn = drawn(Cellar.catalogue().get(parts[0]), call.arguments());
    assertEquals(1, propagated / drawn, WITHIN, () -> propagated + " and " + drawn);
  }

  private static double drawn(FunctionSpec function, Object[] call) {
    double[] x = numbers(call[1]);
    double[] u = numbers(call[2]);
    boolean shared = call.length > 3;
    Random random = new Random(40_000);
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < DRAWS; i++) {
      Object[] drawn = new Object[x.length];
      double common = random.nextGaussian();
      for (int k = 0; k < x.length; k++) {
        drawn[k] = x[k] + u[k] * (shared ? common : random.nextGaussian());
      }
      double value = (Double) function.call(drawn);
      sum += value;
      squares += value * value;
    }
    return Math.sqrt((squares - sum * sum / DRAWS) / (DRAWS - 1));
  }

  private static double[] numbers(Object cells) {
    Object[][] rows = (Object[][]) cells;
    return Stream.of(rows).mapToDouble(row -> (Double) row[0]).toArray();
  }
}
