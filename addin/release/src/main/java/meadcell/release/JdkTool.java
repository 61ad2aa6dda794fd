package meadcell.release;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.spi.ToolProvider;

/** Runs the tools that every JDK brings, in this process. */
final class JdkTool {
  private JdkTool() {}

  static void run(String name, List<String> arguments) throws IOException {
    ToolProvider tool =
        ToolProvider.findFirst(name)
            .orElseThrow(() -> new IOException("This Java has no " + name + "; a JDK is needed."));
    StringWriter said = new StringWriter();
    PrintWriter writer = new PrintWriter(said);
    if (tool.run(writer, writer, arguments.toArray(String[]::new)) != 0) {
      throw new IOException(name + " " + String.join(" ", arguments) + "\n" + said);
    }
  }

  static void run(String name, String... arguments) throws IOException {
    run(name, List.of(arguments));
  }
}
