package meadcell.batch.command;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import meadcell.batch.ExitCode;
import meadcell.batch.calculation.Calculator;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** One value from the command line, or one a line from standard input. */
@Command(
    name = "eval",
    header = "Evaluates a formula.",
    description = {
      "",
      "Example: meadcell eval \"BARREL.VOLUME(50;64;81)\"",
      "",
      "Arguments are separated by ; or by , and ranges are written {100,50} for a row, {100;50} for"
          + " a column. Calls nest, and ordinary spreadsheet arithmetic works around them."
    })
public final class Eval implements Callable<Integer> {
  @Parameters(
      arity = "1..*",
      paramLabel = "FORMULA",
      description =
          "The formulas; - reads one a line from standard input and answers each, in order.")
  private List<String> formulas;

  @Option(
      names = "--json",
      description =
          "One JSON object a line, in full precision: expression, then value (a number, a text or"
              + " rows of them), or error and why.")
  private boolean json;

  @Spec private CommandSpec spec;

  /** Made when asked for: it takes as long as a short answer. */
  private static final class Json {
    static final Gson WRITER = new GsonBuilder().disableHtmlEscaping().create();
  }

  @Override
  public Integer call() throws IOException {
    Calculator calculator = new Calculator(Cellar.catalogue());
    boolean all = true;
    for (String formula : formulas) {
      if (formula.equals("-")) {
        BufferedReader in =
            new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        for (String line = in.readLine(); line != null; line = in.readLine()) {
          if (!line.isBlank()) {
            all &= answer(calculator, line);
          }
        }
      } else {
        all &= answer(calculator, formula);
      }
    }
    return all ? ExitCode.OK : ExitCode.REFUSED;
  }

  private boolean answer(Calculator calculator, String expression) {
    Calculator.Answer answer = calculator.evaluate(expression);
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      Map<String, Object> object = new LinkedHashMap<>();
      object.put("expression", expression);
      if (answer.isValue()) {
        object.put("value", answer.value());
      } else {
        object.put("error", answer.error());
        object.put("why", answer.why());
      }
      out.println(Json.WRITER.toJson(object));
    } else if (answer.isValue()) {
      out.println(Words.ENGLISH.shown(answer.value()));
    } else {
      out.println(answer.error() + " " + answer.why());
    }
    out.flush(); // a script may wait for each line
    return answer.isValue();
  }
}
