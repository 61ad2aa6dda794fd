package meadcell.release;

import java.io.IOException;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.lang.module.ModuleReference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;

/**
 * A Java with the tool in it and nothing that the tool does not need.
 *
 * <p>The tool becomes a module among Java's own: so the archive of its loaded classes, which saves
 * a third of a short run, holds wherever the folder is put. Java 17 takes an archive of a class
 * path only at the very path that it was made at.
 */
final class OwnRuntime {
  private static final String MODULE = "meadcell";

  /** How the tool is called in this runtime. */
  static final String MAIN = MODULE + "/meadcell.batch.Main";

  /**
   * Chosen by measurement, see {@code LauncherBenchmark}: for what people do at a prompt, other
   * collectors and the second compiler cost more than they save. What of a workbook outlives its
   * first collection stays to the end, so it is moved but once. What Java itself remarks would
   * stand among the results.
   */
  private static final String FLAGS =
      "-XX:+UseSerialGC -XX:TieredStopAtLevel=1 -Xms200m -Xmn100m -XX:MaxTenuringThreshold=0"
          + " -XX:-UsePerfData -Xlog:disable"
          + " -Djdk.reflect.useNativeAccessorOnly=true" // else it makes classes first
          + " -Dmeadcell.launched=true -Djava.awt.headless=true";

  private static final int FIRST_THAT_LINKS = 24;

  /** Of a file of linked classes; before it stands the command that it was made for. */
  static final String LINKED = ".aot";

  /** How a fill ends that finds no place in one of its workbooks. */
  private static final int NOT_FILLED = 7;

  private final Path work;
  private final Path folder;

  /**
   * What Java links to screens, sound, fonts and picture formats: nothing here draws, and on Linux
   * each would have to be installed first.
   */
  private static final List<String> UNUSED =
      List.of(
          "libawt_xawt.so",
          "libfontmanager.so",
          "libfreetype.so",
          "libjavajpeg.so",
          "libjawt.so",
          "libjsound.so",
          "liblcms.so",
          "libmlib_image.so",
          "libsplashscreen.so");

  /** Makes one from the packed tool and the libraries that it was packed from. */
  OwnRuntime(Path jar, List<Path> libraries, Path work) throws IOException {
    this.work = work;
    this.folder = work.resolve("runtime");
    JdkTool.run(
        "jlink",
        List.of(
            "--module-path",
            module(jar, services(jar, libraries)).toString(),
            "--add-modules",
            MODULE,
            "--strip-debug",
            "--no-header-files",
            "--no-man-pages",
            "--disable-plugin",
            "generate-jli-classes", // in another order each time, and linked beforehand anyway
            "--add-options",
            FLAGS,
            "--output",
            folder.toString()));
    for (String library : UNUSED) {
      Files.deleteIfExists(folder.resolve("lib").resolve(library));
    }
  }

  Path folder() {
    return folder;
  }

  /** The tool as a module; what it requires and provides is found by jdeps. */
  private Path module(Path jar, Set<String> services) throws IOException {
    Path sources = work.resolve("module");
    JdkTool.run(
        "jdeps",
        "--multi-release",
        "17",
        "--ignore-missing-deps",
        "--generate-open-module",
        sources.toString(),
        jar.toString());
    Path source =
        Folders.files(sources).stream()
            .filter(file -> file.endsWith("module-info.java"))
            .findFirst()
            .orElseThrow();
    StringBuilder uses = new StringBuilder();
    for (String service : services) {
      uses.append("    uses ").append(service.replace('$', '.')).append(";\n");
    }
    String text = Files.readString(source);
    Files.writeString(source, text.substring(0, text.lastIndexOf('}')) + uses + "}\n");
    Path classes = work.resolve("module-classes");
    JdkTool.run(
        "javac",
        "-nowarn",
        "-d",
        classes.toString(),
        "--patch-module",
        MODULE + "=" + jar,
        source.toString());
    Path module = Files.copy(jar, work.resolve(MODULE + ".jar"));
    ModernClasses.in(module, jar);
    JdkTool.run("jar", "--update", "--file", module.toString(), "-C", classes.toString(), ".");
    return module;
  }

  /** What the libraries look for among services: what they say as modules, and what is provided. */
  private static Set<String> services(Path jar, List<Path> libraries) throws IOException {
    Set<String> services = new TreeSet<>();
    for (Path library : libraries) {
      ModuleFinder.of(library).findAll().stream()
          .map(ModuleReference::descriptor)
          .map(ModuleDescriptor::uses)
          .forEach(services::addAll);
    }
    try (JarFile packed = new JarFile(jar.toFile())) {
      services.removeIf(name -> packed.getEntry(name.replace('.', '/') + ".class") == null);
      packed.stream()
          .map(JarEntry::getName)
          .filter(name -> name.matches("META-INF/services/[^/]+"))
          .forEach(name -> services.add(name.substring(name.lastIndexOf('/') + 1)));
    }
    return services;
  }

  /**
   * Keeps the classes that these runs load, ready for use, beside the virtual machine or, from Java
   * 24 on, also linked with each other and with their lambdas, in files to be named at the start:
   * one for each run, since all that is in it is loaded.
   *
   * @return those files
   */
  List<Path> archiveClasses(List<List<String>> runs) throws IOException, InterruptedException {
    List<Path> linked = new ArrayList<>();
    if (Runtime.version().feature() < FIRST_THAT_LINKS) {
      archive(runs);
    } else {
      for (List<String> run : runs) {
        linked.add(link(run));
      }
    }
    return linked;
  }

  /** Only G1 can archive objects; the collector that is used then loads them. */
  private Path link(List<String> run) throws IOException, InterruptedException {
    Path recorded = work.resolve(run.get(0) + ".conf");
    Path linked = work.resolve(run.get(0) + LINKED);
    String configuration = "-XX:AOTConfiguration=" + recorded;
    java(List.of("-XX:AOTMode=record", configuration), run);
    java(
        List.of(
            "-XX:AOTMode=create",
            configuration,
            "-XX:AOTCache=" + linked,
            "-XX:-UseSerialGC",
            "-XX:+UseG1GC"),
        List.of());
    return linked;
  }

  private void archive(List<List<String>> runs) throws IOException, InterruptedException {
    Set<String> loaded = new TreeSet<>();
    for (List<String> run : runs) {
      Path list = work.resolve("loaded.txt");
      java(List.of("-XX:DumpLoadedClassList=" + list), run);
      Files.readAllLines(list).stream()
          .filter(line -> !line.contains(" source: ")) // of a loader of its own
          .map(line -> line.replaceFirst(" id: \\d+$", "")) // counted anew in each run
          .forEach(loaded::add);
    }
    Path all = Files.write(work.resolve("classes.txt"), loaded);
    java(List.of("-Xshare:dump", "-XX:SharedClassListFile=" + all), List.of());
  }

  private void java(List<String> options, List<String> arguments)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(folder.resolve("bin/java").toString());
    command.addAll(options);
    command.addAll(List.of("-m", MAIN));
    command.addAll(arguments);
    Program.run(command, Map.of(), Set.of(0, NOT_FILLED));
  }
}
