package meadcell.bench;

import java.util.Locale;

/** What the benchmarks share: a stopwatch and a line of result. */
final class Timing {
  private Timing() {}

  /** Something to time. */
  interface Work {
    void run() throws Exception;
  }

  static double seconds(Work work) throws Exception {
    long start = System.nanoTime();
    work.run();
    return (System.nanoTime() - start) / 1e9;
  }

  static void print(String format, Object... values) {
    System.out.println(String.format(Locale.ROOT, format, values));
  }
}
