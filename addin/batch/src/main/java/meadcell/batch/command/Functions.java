package meadcell.batch.command;

import java.io.PrintWriter;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The catalogue, one function a line. */
@Command(
    name = "functions",
    header = "Lists every function with its arguments.",
    description = {"", "Example: meadcell functions | grep -i headspace"})
public final class Functions implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    Catalogue catalogue = Cellar.catalogue();
    PrintWriter out = spec.commandLine().getOut();
    catalogue
        .families()
        .forEach(
            (name, family) -> {
              out.println(name + ": " + family.about(Words.ENGLISH));
              for (FunctionSpec function : catalogue.functions(name)) {
                out.println("  " + function.signature());
                out.println("      " + function.summary(Words.ENGLISH));
              }
            });
  }
}
