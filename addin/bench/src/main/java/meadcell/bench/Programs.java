package meadcell.bench;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.io.FileUtils;

/** The programs that are timed, each in a process of its own. */
record Programs(Path jar, Path folder) {
  static final String OUT = "--out";

  List<String> meadcell(Object... arguments) {
    List<String> command = java();
    command.addAll(List.of("-jar", jar.toString()));
    for (Object argument : arguments) {
      command.add(argument.toString());
    }
    return command;
  }

  List<String> bare(Path log, Path target) throws Exception {
    Path classes =
        Path.of(BarePoi.class.getProtectionDomain().getCodeSource().getLocation().toURI());
    List<String> command = java();
    command.addAll(List.of("-cp", jar + File.pathSeparator + classes));
    command.addAll(List.of(BarePoi.class.getName(), log.toString(), target.toString()));
    command.addAll(List.of("" + Logs.FIRST_ROW, "" + Logs.COLUMNS, "" + Logs.RESULTS));
    return command;
  }

  private static List<String> java() {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    return new ArrayList<>(List.of(java));
  }

  /** Starts a command without results of an earlier run, which it would find right and leave. */
  Process start(List<String> command) throws IOException {
    int out = command.indexOf(OUT);
    if (out >= 0) {
      FileUtils.deleteDirectory(new File(command.get(out + 1)));
    }
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("log.txt").toFile())
        .start();
  }

  void run(List<String> command) throws IOException, InterruptedException {
    if (start(command).waitFor() != 0) {
      throw new IOException(Files.readString(folder.resolve("log.txt")));
    }
  }
}
