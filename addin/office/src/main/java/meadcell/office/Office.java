package meadcell.office;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

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
  private Session session;
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
  public Office(String program, int seconds) {
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
      Path source = session().home().resolve("copy." + from);
      Path results = session.home().resolve("results");
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

  private Session session() throws IOException {
    if (session == null) {
      session = new Session("meadcell-recalculation");
      Runtime.getRuntime().addShutdownHook(new Thread(this::close)); // after an interrupt, too
      session.set(Session.recalculation(true));
    }
    return session;
  }

  private void convert(Path source, String to, Path results) throws IOException, Failed {
    ProcessBuilder command =
        session.command(
            List.of(
                program,
                "--headless",
                "--norestore",
                session.profile(),
                "--convert-to",
                to,
                "--outdir",
                results.toString(),
                source.toString()));
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
      Session.end(process);
    }
  }

  @Override
  public void close() {
    if (process != null) {
      Session.end(process);
    }
    if (session == null) {
      return;
    }
    try {
      session.close();
    } catch (IOException e) {
      throw new UncheckedIOException(
          "The temporary folder " + session.home() + " was not removed.", e);
    }
  }
}
