package meadcell.batch;

import java.io.PrintWriter;
import java.io.StringWriter;

/** One run of the tool inside the test. */
public record Run(int code, String out, String err) {
  public static Run of(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.commandLine(new PrintWriter(out), new PrintWriter(err)).execute(args);
    return new Run(code, out.toString(), err.toString());
  }
}
