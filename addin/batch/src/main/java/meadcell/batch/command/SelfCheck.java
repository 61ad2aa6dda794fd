package meadcell.batch.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import meadcell.batch.ExitCode;
import meadcell.batch.calculation.Calculator;
import meadcell.batch.proof.ProofPage;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.CheckRow;
import meadcell.catalogue.Evidence;
import meadcell.catalogue.Standing;
import meadcell.cellar.Cellar;
import org.apache.poi.Version;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Every shipped check value through the same evaluator that fills workbooks. */
@Command(
    name = "selfcheck",
    header = "Computes every check value and compares.",
    description = {
      "",
      "Example: meadcell selfcheck",
      "",
      "Prints one line for each value: verdict, call, got, expected, tolerance, kind, source,"
          + " where. Published: a number printed by someone else. Worked: by hand or by an"
          + " independent library, from a published formula. Practice: a rule of the trade without"
          + " a source. Memory: recalled, not read. Ends with 0 only if all hold."
    })
public final class SelfCheck implements Callable<Integer> {
  @Option(names = "--failed", description = "Print only what does not hold.")
  private boolean failedOnly;

  @Option(
      names = "--weakest",
      description =
          "Print the functions instead, the weakest proven first: strongest kind, then how many"
              + " values of each kind.")
  private boolean weakest;

  @Option(
      names = "--report",
      paramLabel = "FILE.html",
      description =
          "Write all of it as a page, too: formulas, sources, values with what came out, deviations"
              + " drawn, and on what machine. A file that is there already is not replaced.")
  private Path page;

  @Option(
      names = "--date",
      paramLabel = "DATE",
      description = "The date to write on the page; without it, none.")
  private String date;

  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    if (page != null && Files.exists(page)) {
      spec.commandLine().getErr().println(page + " is there already; left as it is.");
      return ExitCode.NOT_WRITTEN;
    }
    Catalogue catalogue = Cellar.catalogue();
    Calculator calculator = new Calculator(catalogue);
    List<CheckRow> rows = CheckRow.load(catalogue);
    List<CheckRow.Verdict> verdicts = rows.stream().map(calculator::check).toList();
    PrintWriter out = spec.commandLine().getOut();
    if (weakest) {
      Standing.weakestFirst(rows).forEach(standing -> out.println(line(standing)));
    } else {
      verdicts.stream()
          .filter(verdict -> !failedOnly || !verdict.holds())
          .forEach(verdict -> out.println(line(verdict)));
    }
    long holding = verdicts.stream().filter(CheckRow.Verdict::holds).count();
    out.println(holding + " of " + rows.size() + " check values hold: " + CheckRow.totals(rows));
    if (page != null) {
      byte[] written = ProofPage.of(catalogue, verdicts, host()).getBytes(StandardCharsets.UTF_8);
      Files.write(page, written, StandardOpenOption.CREATE_NEW);
    }
    return holding == rows.size() ? ExitCode.OK : ExitCode.CHECK_FAILED;
  }

  private static String line(CheckRow.Verdict verdict) {
    CheckRow row = verdict.row();
    return String.join(
        "\t",
        verdict.holds() ? "ok" : "FAILED",
        row.call(),
        "got " + verdict.gotText(),
        "expected " + verdict.expectedText(),
        "± " + row.tolerance(),
        row.kind().word(),
        row.source(),
        row.where());
  }

  private static String line(Standing standing) {
    return standing.best().word()
        + "\t"
        + standing.function()
        + Arrays.stream(Evidence.values())
            .map(kind -> "\t" + standing.count(kind) + " " + kind.word())
            .collect(Collectors.joining());
  }

  private Map<String, String> host() throws IOException {
    Map<String, String> host = new LinkedHashMap<>();
    host.put("Meadcell", Cellar.version());
    host.put("Date", date == null ? "none given" : date);
    host.put("Computed by", "Apache POI " + Version.getVersion() + ", as workbooks are filled");
    host.put("Java", Runtime.version() + ", " + System.getProperty("java.vendor"));
    host.put(
        "System",
        Stream.of("os.name", "os.version", "os.arch")
            .map(System::getProperty)
            .collect(Collectors.joining(" ")));
    host.put("SHA-256 of the jar", checksum());
    return host;
  }

  private static String checksum() throws IOException {
    try {
      Path jar =
          Path.of(SelfCheck.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      if (!Files.isRegularFile(jar)) {
        return "not packed: run from classes";
      }
      return Sha256.of(Files.readAllBytes(jar));
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e); // Java made it
    }
  }
}
