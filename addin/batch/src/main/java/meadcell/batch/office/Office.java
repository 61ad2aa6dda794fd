package meadcell.batch.office;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * An installed LibreOffice that computes workbooks without showing them. Its user profile and all
 * files lie in one temporary folder, which goes when this is closed or the program ends.
 */
public final class Office implements AutoCloseable {
  private static final int SECONDS = 60;

  /** The office gave no result, with the reason. */
  public static final class Failed extends Exception {
    private static final long serialVersionUID = 1;

    public Failed(String sentence) {
      super(sentence);
    }

    private Failed(String sentence, IOException cause) {
      super(sentence, cause);
    }
  }

  private final String program;
  private final int seconds;
  private Path home;
  private volatile Process process;

  /**
   * An office that is not started yet.
   *
   * @param program its command
   */
  public Office(String program) {
    this(program, SECONDS);
  }

  /** One that may work on a workbook for some seconds. */
  Office(String program, int seconds) {
    this.program = program;
    this.seconds = seconds;
  }

  /**
   * A workbook with all its formulas computed anew. One at a time: two offices cannot share a
   * profile.
   *
   * @param from file name ending of the workbook, such as {@code xls}
   * @param to that of the result
   */
  public synchronized byte[] recalculated(byte[] workbook, String from, String to) throws Failed {
    try {
      Path source = home().resolve("copy." + from);
      Path results = home().resolve("results");
      Path result = results.resolve("copy." + to);
      Files.deleteIfExists(result);
      Files.write(source, workbook);
      convert(source, to, results);
      if (!Files.exists(result)) {
        throw new Failed("LibreOffice could not read the workbook's copy.");
      }
      return Files.readAllBytes(result);
    } catch (IOException e) {
      throw new Failed("Working with LibreOffice failed: " + e, e);
    }
  }

  private Path home() throws IOException {
    if (home == null) {
      home = Files.createTempDirectory("meadcell-recalculation");
      Runtime.getRuntime().addShutdownHook(new Thread(this::close)); // after an interrupt, too
      Path user = Files.createDirectories(home.resolve("profile/user"));
      Files.writeString(user.resolve("registrymodifications.xcu"), RECALCULATE_ALWAYS);
    }
    return home;
  }

  private void convert(Path source, String to, Path results) throws IOException, Failed {
    ProcessBuilder command =
        new ProcessBuilder(
            program,
            "--headless",
            "--norestore",
            "-env:UserInstallation=" + home.resolve("profile").toUri(),
            "--convert-to",
            to,
            "--outdir",
            results.toString(),
            source.toString());
    File log = home.resolve("log").toFile();
    command.redirectErrorStream(true).redirectOutput(log);
    try {
      process = command.start();
    } catch (IOException e) {
      throw new Failed(
          "LibreOffice was not found as \""
              + program
              + "\"; --with-office=PROGRAM says where its soffice is.",
          e);
    }
    try {
      if (!process.waitFor(seconds, TimeUnit.SECONDS)) {
        throw new Failed("LibreOffice did not finish within " + seconds + " seconds.");
      }
      if (process.exitValue() != 0) {
        throw new Failed("LibreOffice ended with the error code " + process.exitValue() + ".");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new Failed("LibreOffice was interrupted.");
    } finally {
      end(process);
    }
  }

  /** Ends the office with the processes that its start script began. */
  private static void end(Process process) {
    List<ProcessHandle> begun = process.descendants().toList();
    process.destroyForcibly();
    begun.forEach(ProcessHandle::destroyForcibly);
    process.onExit().join();
    begun.forEach(child -> child.onExit().join());
  }

  @Override
  public void close() {
    if (process != null) {
      end(process);
    }
    if (home == null || !Files.exists(home)) {
      return;
    }
    try (Stream<Path> files = Files.walk(home)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException("The temporary folder " + home + " was not removed.", e);
    }
  }

  private static final String RECALCULATE_ALWAYS =
      """
      <?xml version="1.0" encoding="UTF-8"?>
      <oor:items xmlns:oor="http://openoffice.org/2001/registry">
      <item oor:path="/org.openoffice.Office.Calc/Formula/Load">
       <prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
      <item oor:path="/org.openoffice.Office.Calc/Formula/Load">
       <prop oor:name="ODFRecalcMode" oor:op="fuse"><value>0</value></prop></item>
      </oor:items>
      """;
}
