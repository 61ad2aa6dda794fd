package meadcell.release;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Fills the folder {@code target/release} from what the build has packed. */
public final class Release {
  private static final String SYSTEM = System.getProperty("os.name").toLowerCase(Locale.ROOT);

  /** What the packages say of themselves. */
  static final String SUMMARY = "Cellar arithmetic for meadmakers, inside their spreadsheets";

  /** By this, Windows knows that a package takes the place of an earlier one. */
  private static final String UPGRADED = "f4797882-c7ff-4e18-839c-dd00fec15756";

  private final Path project;
  private final Path work;
  private final Path pages;
  private final String version;
  private final Path release;
  private final Path packages;
  private final List<Path> libraries;

  private Release(Path project, Path target, String version, String libraries) {
    this.project = project;
    this.work = target.resolve("work");
    this.pages = target.resolve("pages");
    this.version = version;
    this.release = project.resolve("target/release");
    this.packages = project.resolve("addin/package/target");
    this.libraries = Stream.of(libraries.split(File.pathSeparator)).map(Path::of).toList();
  }

  static boolean isOn(String system) {
    return SYSTEM.contains(system);
  }

  /** Arguments: the project's folder, the folder to work in, the version, the libraries. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    Path project = Path.of(arguments[0]).toRealPath();
    Path target = Path.of(arguments[1]).toAbsolutePath();
    try {
      new Release(project, target, arguments[2], arguments[3]).make();
    } catch (IOException e) {
      System.err.println(e.getMessage()); // Maven itself shows no more than that there was one
      throw e;
    }
  }

  private void make() throws IOException, InterruptedException {
    Folders.delete(work);
    Folders.delete(release);
    Files.createDirectories(work);
    Files.createDirectories(release);
    Files.copy(packages.resolve("meadcell.oxt"), release.resolve("meadcell.oxt"));
    copyListOfParts(packages.resolve("meadcell.cdx.json"));
    Folders.unzip(release.resolve("meadcell.oxt"), "guide/", release);
    for (Path sample : Folders.files(project.resolve("sample-workbooks"))) {
      if (sample.getParent().endsWith("sample-workbooks")) {
        Path samples = Files.createDirectories(release.resolve("samples"));
        Files.copy(sample, samples.resolve(sample.getFileName()));
      }
    }
    Path tool = tool();
    if (isOn("linux")) {
      new DebianPackage(project, pages, work).make(tool, version, release);
    } else {
      installer(tool);
    }
    Folders.copy(tool, release.resolve(tool.getFileName()));
    checksums();
  }

  /** Maven makes it only online; one that an earlier build left may be of other libraries. */
  private void copyListOfParts(Path parts) throws IOException {
    if (Files.notExists(parts)) {
      System.out.println("Without " + parts.getFileName() + ": Maven was offline.");
      return;
    }
    String list = Files.readString(parts);
    String notice = Files.readString(project.resolve("addin/package/src/legal/NOTICE"));
    for (Path library : libraries) {
      String[] named = library.getFileName().toString().split("-(?=\\d)", 2);
      boolean isPacked = notice.contains("\n- " + named[0]);
      if (isPacked && !list.contains("/" + named[0] + "@" + named[1].replace(".jar", "?"))) {
        throw new IOException(
            parts.getFileName()
                + " is of an earlier build, without "
                + named[0]
                + "; build online.");
      }
    }
    Files.copy(parts, release.resolve(parts.getFileName()));
  }

  /** The folder with its own Java. */
  private Path tool() throws IOException, InterruptedException {
    OwnRuntime runtime = new OwnRuntime(packages.resolve("meadcell.jar"), libraries, work);
    List<Path> linked = runtime.archiveClasses(usualRuns());
    List<String> arguments =
        new ArrayList<>(
            List.of(
                "--type",
                "app-image",
                "--name",
                "meadcell",
                "--app-version",
                version,
                "--runtime-image",
                runtime.folder().toString(),
                "--module",
                OwnRuntime.MAIN,
                "--icon",
                icon().toString(),
                "--dest",
                work.resolve("image").toString()));
    String options = "";
    if (!linked.isEmpty()) { // jpackage's start knows one, that of the last run
      options = "-XX:AOTCache=$APPDIR/" + linked.get(linked.size() - 1).getFileName();
      arguments.addAll(List.of("--java-options", options));
    }
    if (isOn("windows")) {
      arguments.addAll(
          List.of("--win-console", "--add-launcher", "Drop logs here=" + drop(options)));
    }
    JdkTool.run("jpackage", arguments);
    Path image = Folders.files(work.resolve("image")).get(0);
    while (!image.getParent().equals(work.resolve("image"))) {
      image = image.getParent();
    }
    for (Path file : linked) {
      Files.copy(file, app(image).resolve(file.getFileName()));
    }
    if (isOn("linux")) {
      leaner(image);
    }
    Path share = Files.createDirectories(image.resolve("share"));
    Folders.copy(pages.resolve("completion"), share.resolve("completion"));
    Folders.copy(pages.resolve("man1"), share.resolve("man/man1"));
    Files.copy(project.resolve("LICENSE"), share.resolve("LICENSE"));
    Files.copy(project.resolve("addin/package/src/legal/NOTICE"), share.resolve("NOTICE"));
    Folders.copy(packages.resolve("classes/META-INF/licenses"), share.resolve("licenses"));
    return image;
  }

  private Path icon() throws IOException {
    return Mark.write(work.resolve("meadcell." + ofSystem("ico", "icns", "png")));
  }

  private static String ofSystem(String windows, String mac, String linux) {
    return isOn("windows") ? windows : isOn("mac") ? mac : linux;
  }

  /**
   * What is different in the start that logs are dropped on; on Linux the desktop entry says it.
   */
  private Path drop(String options) throws IOException {
    return Files.writeString(
        work.resolve("drop.properties"),
        "win-console=true\njava-options=-Dmeadcell.icon=true " + options + "\n");
  }

  /** The folder of the image that its launcher calls $APPDIR. */
  private static Path app(Path image) throws IOException {
    return Folders.files(image).stream()
        .filter(file -> file.endsWith("meadcell.cfg"))
        .findFirst()
        .orElseThrow()
        .getParent();
  }

  /** jpackage's own start takes nearly as long again as a short run. */
  private void leaner(Path image) throws IOException {
    Path script = project.resolve("addin/release/src/main/linux/meadcell");
    Path start = image.resolve("bin/meadcell");
    Files.copy(script, start, StandardCopyOption.REPLACE_EXISTING);
    Files.setPosixFilePermissions(start, PosixFilePermissions.fromString("rwxr-xr-x"));
    Files.delete(image.resolve("lib/libapplauncher.so"));
  }

  /**
   * What is to be quick, the usual work last: also on a workbook with names, of which POI reads.
   */
  private List<List<String>> usualRuns() {
    Path log = project.resolve("sample-workbooks/old-log.xlsx");
    Path named = project.resolve("sample-workbooks/first-week.xlsx");
    Path plan = project.resolve("sample-workbooks/old-log-plan.xlsx");
    String out = work.resolve("runs").toString();
    return List.of(
        List.of("eval", "BARREL.VOLUME(50;64;81)"),
        List.of("fill", named.toString(), log.toString(), "--plan", plan.toString(), "--out", out));
  }

  private void installer(Path tool) throws IOException {
    List<String> arguments =
        new ArrayList<>(
            List.of(
                "--type",
                ofSystem("msi", "dmg", "deb"),
                "--name",
                "meadcell",
                "--app-version",
                version,
                "--app-image",
                tool.toString(),
                "--description",
                SUMMARY,
                "--license-file",
                project.resolve("LICENSE").toString(),
                "--icon",
                icon().toString(),
                "--dest",
                release.toString()));
    if (isOn("windows")) {
      arguments.addAll(
          List.of(
              "--win-menu",
              "--win-menu-group",
              "Meadcell",
              "--win-shortcut",
              "--win-per-user-install",
              "--win-upgrade-uuid",
              UPGRADED));
    }
    JdkTool.run("jpackage", arguments);
  }

  private void checksums() throws IOException {
    StringBuilder sums = new StringBuilder();
    for (Path file : Folders.files(release)) {
      sums.append(sha256(file)).append("  ");
      sums.append(release.relativize(file).toString().replace('\\', '/')).append('\n');
    }
    Files.writeString(release.resolve("SHA256SUMS"), sums);
  }

  private static String sha256(Path file) throws IOException {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(digest.digest(Files.readAllBytes(file)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e); // every Java has it
    }
  }
}
