package meadcell.batch.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import meadcell.batch.ExitCode;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Drafts or fills, whichever is next: what a log needs that is dropped on the program's icon. */
@Command(
    name = "drop",
    header = "Drafts a plan beside logs; where there is one, fills them by it.",
    description = {
      "",
      "Example: meadcell drop my-log.xlsx",
      "",
      "Dropping files or a folder on the program's icon does the same. The plan of my-log.xlsx is"
          + " my-log-plan.xlsx beside it, or else plan.xlsx, which is for all logs of the folder."
          + " Filled logs go to a folder \"filled\" beside the logs, with a sheet of what to look"
          + " at; the logs themselves stay as they are. A plan may be dropped, too: its logs are"
          + " filled.",
      ""
    })
public final class Drop implements Callable<Integer> {
  private static final Pattern LOG = Pattern.compile("(?i)[^.~].*\\.(xlsx|xlsm|xls|ods|csv)");
  private static final Pattern PLAN = Pattern.compile("(?i)(.+-)?plan\\.xlsx");
  private static final String COMMON_PLAN = "plan.xlsx";
  private static final String FILLED = "filled";

  @Parameters(arity = "0..*", paramLabel = "LOG", description = "Logs, or folders of logs.")
  private List<Path> dropped = List.of();

  @Option(
      names = "--window",
      description = "Open what was made, and keep the window until Enter is pressed.")
  private boolean window;

  @Spec private CommandSpec spec;

  private final List<Path> made = new ArrayList<>();

  @Override
  public Integer call() throws IOException {
    int code = ExitCode.OK;
    if (dropped.isEmpty()) {
      spec.commandLine().getOut().println(FirstSteps.TEXT);
    }
    try {
      for (Map.Entry<Path, Set<Path>> logs : byPlan().entrySet()) {
        code = Math.max(code, next(logs.getKey(), List.copyOf(logs.getValue())));
      }
    } finally {
      if (window) {
        Desk.open(made);
        Desk.waitForEnter(spec.commandLine().getOut());
      }
    }
    return code;
  }

  /** The logs, by the plan that there is or is to be drafted. */
  private Map<Path, Set<Path>> byPlan() throws IOException {
    Set<Path> logs = new LinkedHashSet<>();
    for (Path file : dropped) {
      Path place = file.toAbsolutePath().normalize();
      if (Files.isDirectory(place)) {
        logs.addAll(logsIn(place));
      } else if (!Files.exists(place)) {
        throw new NoSuchFileException(file.toString());
      } else if (isPlan(place)) {
        logs.addAll(logsOf(place));
      } else {
        logs.add(place);
      }
    }
    Map<Path, Set<Path>> byPlan = new TreeMap<>();
    Map<Path, Set<Path>> without = new TreeMap<>();
    for (Path log : logs) {
      Path own = ownPlan(log);
      Path common = log.resolveSibling(COMMON_PLAN);
      if (Files.exists(own) || Files.exists(common)) {
        Path plan = Files.exists(own) ? own : common;
        byPlan.computeIfAbsent(plan, key -> new LinkedHashSet<>()).add(log);
      } else {
        without.computeIfAbsent(common, key -> new LinkedHashSet<>()).add(log);
      }
    }
    without.forEach(
        (common, some) ->
            byPlan.put(some.size() == 1 ? ownPlan(some.iterator().next()) : common, some));
    return byPlan;
  }

  private static boolean isPlan(Path file) {
    return PLAN.matcher(file.getFileName().toString()).matches();
  }

  private static Path ownPlan(Path log) {
    return log.resolveSibling(stem(log) + "-" + COMMON_PLAN);
  }

  private static String stem(Path log) {
    return log.getFileName().toString().replaceFirst("\\.[^.]*$", "");
  }

  private static List<Path> logsIn(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> LOG.matcher(file.getFileName().toString()).matches())
          .filter(file -> Files.isRegularFile(file) && !isPlan(file))
          .sorted()
          .toList();
    }
  }

  private static List<Path> logsOf(Path plan) throws IOException {
    String name = plan.getFileName().toString().toLowerCase(Locale.ROOT);
    return logsIn(plan.getParent()).stream()
        .filter(
            log ->
                name.equals(COMMON_PLAN)
                    ? !Files.exists(ownPlan(log))
                    : ownPlan(log).getFileName().toString().equalsIgnoreCase(name))
        .toList();
  }

  private int next(Path plan, List<Path> logs) {
    List<String> command = new ArrayList<>();
    boolean isDrafted = Files.exists(plan);
    command.add(isDrafted ? "fill" : "draft");
    logs.forEach(log -> command.add(log.toString()));
    command.addAll(List.of("--plan", plan.toString()));
    Path filled = plan.resolveSibling(FILLED);
    if (isDrafted) {
      command.addAll(List.of("--out", filled.toString(), "--report-sheet"));
    }
    CommandLine tool = spec.root().commandLine();
    int code = tool.execute(command.toArray(String[]::new));
    if (!isDrafted && Files.exists(plan)) {
      made.add(plan);
      tool.getOut()
          .println("Look at " + plan.getFileName() + ", correct it, and drop the log here again.");
    } else if (isDrafted && Files.exists(filled)) {
      made.add(logs.size() == 1 ? filled.resolve(logs.get(0).getFileName()) : filled);
    }
    return code;
  }
}
