package meadcell.batch.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import meadcell.batch.book.Books;
import meadcell.batch.book.Encryption;
import meadcell.batch.book.FileRefused;
import meadcell.batch.book.SafeFile;
import meadcell.batch.report.Report;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Where results go. */
final class Destination {
  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Folder for the results; the workbooks themselves stay as they are.")
  private Path out;

  @Option(
      names = "--in-place",
      description = "Change the workbooks themselves; each keeps a copy with .bak behind its name.")
  private boolean inPlace;

  @Option(names = "--force", description = "Replace a different file of the same name in --out.")
  private boolean force;

  @Option(names = "--dry-run", description = "Report the same, write nothing.")
  private boolean dryRun;

  /** In which folder of {@link #out} a file goes, where not in itself. */
  private final Map<Path, Path> folders = new HashMap<>();

  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  boolean isDryRun() {
    return dryRun;
  }

  /** Where a result goes: not in place of a symbolic link, but of what it leads to. */
  Path of(Path file) throws IOException {
    Path name = Path.of(Books.written(file.getFileName().toString()));
    Path target = out == null ? file.resolveSibling(name) : out.resolve(folder(file)).resolve(name);
    return SafeFile.real(target);
  }

  /** Of files with equal names those folders that tell them apart; of others none. */
  private Path folder(Path file) {
    return folders.getOrDefault(file, Path.of(""));
  }

  /** Refuses options that contradict each other, or would lose a file. */
  void check(List<Path> files) throws IOException {
    if (inPlace == (out != null) && !(dryRun && !inPlace)) {
      throw usage("Say where the results go: either --out DIR or --in-place.");
    }
    keepApart(files);
    Set<Path> targets = new HashSet<>();
    for (Path file : files) {
      if (!targets.add(of(file).toAbsolutePath().normalize())) {
        throw usage("Two workbooks would both become " + of(file) + ".");
      }
      if (out != null
          && Files.exists(of(file))
          && Files.exists(file)
          && Files.isSameFile(of(file), file)) {
        throw usage("--out is the workbook's own folder; use --in-place for that.");
      }
    }
    if (out != null && !dryRun) {
      Files.createDirectories(out);
      for (Path folder : folders.values()) {
        Files.createDirectories(out.resolve(folder));
      }
    }
  }

  /** Files of one name from several folders keep the folders in which they differ. */
  private void keepApart(List<Path> files) {
    Map<String, List<Path>> byName = new HashMap<>();
    for (Path file : files) {
      String name = Books.written(file.getFileName().toString());
      byName.computeIfAbsent(name, key -> new ArrayList<>()).add(file);
    }
    for (List<Path> same : byName.values()) {
      if (out == null || same.size() < 2) {
        continue;
      }
      List<Path> parents =
          same.stream().map(file -> file.toAbsolutePath().normalize().getParent()).toList();
      int common = 0;
      while (isCommon(parents, common)) {
        common++;
      }
      for (int i = 0; i < same.size(); i++) {
        Path parent = parents.get(i);
        if (common < parent.getNameCount()) {
          folders.put(same.get(i), parent.subpath(common, parent.getNameCount()));
        }
      }
    }
  }

  private static boolean isCommon(List<Path> parents, int at) {
    return parents.stream()
        .allMatch(
            parent ->
                at < parent.getNameCount()
                    && parent.getName(at).equals(parents.get(0).getName(at)));
  }

  private ParameterException usage(String sentence) {
    return new ParameterException(command.commandLine(), sentence);
  }

  /** Puts one workbook's new content in place, unless that is there already. */
  FileResult store(Path file, Encryption source, byte[] content, Report report, InputOptions input)
      throws IOException {
    Path target = of(file);
    boolean exists = Files.exists(target);
    if (dryRun) {
      return FileResult.of(file, target, FileResult.Status.DRY_RUN, report);
    }
    if (exists && holds(target, content, source, input)) {
      return FileResult.of(file, target, FileResult.Status.UNCHANGED, report);
    }
    boolean isNew = !inPlace || !target.equals(SafeFile.real(file));
    if (exists && isNew && !force) {
      return FileResult.failed(
          file,
          target,
          FileResult.Status.NOT_WRITTEN,
          target + " is there already and differs; --force replaces it.");
    }
    byte[] sealed = source.sealed(content);
    SafeFile.write(target, file, inPlace ? freeBackup(target) : null, s -> s.write(sealed));
    return FileResult.of(file, target, FileResult.Status.WRITTEN, report);
  }

  /** Compares what the files hold: the same content is encrypted differently each time. */
  private static boolean holds(Path target, byte[] content, Encryption like, InputOptions input) {
    try {
      return input.read(target).holds(content, like);
    } catch (FileRefused e) {
      return false; // another password, or no workbook
    }
  }

  private static Path freeBackup(Path file) {
    Path backup = file.resolveSibling(file.getFileName() + ".bak");
    for (int i = 2; Files.exists(backup); i++) {
      backup = file.resolveSibling(file.getFileName() + ".bak" + i);
    }
    return backup;
  }
}
