package meadcell.bench;

import java.util.concurrent.TimeUnit;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.LiteralCall;
import meadcell.cellar.Cellar;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/** Every function's declared example through the catalogue, as a host calls it. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class FunctionsBenchmark {
  @Param("GRAVITY.CORRECT")
  public String name;

  private FunctionSpec function;
  private Object[] arguments;

  @Setup
  public void declare() {
    function = Cellar.catalogue().get(name);
    arguments = LiteralCall.parse(function.declaration().example()).arguments();
  }

  @Benchmark
  public Object call() {
    return function.call(arguments);
  }

  /** Runs all functions, or those named in the arguments, and prints microseconds a call. */
  public static void main(String[] names) throws Exception {
    String[] all = Cellar.catalogue().names().toArray(String[]::new);
    new Runner(
            new OptionsBuilder()
                .include(FunctionsBenchmark.class.getName())
                .param("name", names.length == 0 ? all : names)
                .forks(1)
                .warmupIterations(4)
                .warmupTime(TimeValue.milliseconds(500))
                .measurementIterations(3)
                .measurementTime(TimeValue.milliseconds(500))
                .build())
        .run();
  }
}
