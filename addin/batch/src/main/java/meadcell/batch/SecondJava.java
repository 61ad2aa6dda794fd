package meadcell.batch;

import java.io.File;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;

/**
 * Large work in a second Java, started with the collector and the compiler that suit it: an option
 * that a jar cannot give itself. It halves processor time and memory. Small work is done sooner
 * than a second Java starts.
 */
final class SecondJava {
  /** Set where the options are chosen already: in this second Java, and by a launcher. */
  static final String CHOSEN = "meadcell.launched";

  static final long LARGE_BYTES = 100_000;

  private static final List<String> OPTIONS =
      List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-D" + CHOSEN + "=true");

  private SecondJava() {}

  /** The exit code of the work; empty where it is to be done here. */
  static OptionalInt run(String[] args) {
    if (System.getProperty(CHOSEN) != null || !isJar(classPath()) || bytes(args) < LARGE_BYTES) {
      return OptionalInt.empty();
    }
    List<String> given = ManagementFactory.getRuntimeMXBean().getInputArguments();
    if (given.stream().anyMatch(option -> option.startsWith("-XX:"))) {
      return OptionalInt.empty(); // someone has chosen
    }
    CompletableFuture<Process> java = new CompletableFuture<>();
    Thread endsWithThis = new Thread(() -> java.join().destroy());
    Runtime.getRuntime().addShutdownHook(endsWithThis);
    try {
      java.complete(new ProcessBuilder(command(given, args)).inheritIO().start());
    } catch (IOException e) {
      Runtime.getRuntime().removeShutdownHook(endsWithThis);
      return OptionalInt.empty(); // here, then: slower, with the same result
    }
    return OptionalInt.of(java.join().onExit().join().exitValue());
  }

  private static String classPath() {
    return System.getProperty("java.class.path");
  }

  private static boolean isJar(String classPath) {
    return classPath.endsWith(".jar") && !classPath.contains(File.pathSeparator);
  }

  /** How large the files are that these arguments name; 0 where another Java may not get them. */
  static long bytes(String... args) {
    long sum = 0;
    for (String arg : args) {
      try {
        Path file = Path.of(arg);
        sum += Files.isRegularFile(file) ? Files.size(file) : 0;
      } catch (InvalidPathException | IOException e) {
        return 0; // a letter that the terminal's locale does not know: the command says so
      }
    }
    return sum;
  }

  private static List<String> command(List<String> given, String[] args) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(OPTIONS);
    command.addAll(given);
    command.addAll(List.of("-jar", classPath()));
    command.addAll(List.of(args));
    return command;
  }
}
