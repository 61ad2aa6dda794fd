package meadcell.calc.extension;

import com.sun.star.uno.XInterface;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.Manifest;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;
import meadcell.calc.AddIn;
import meadcell.calc.UnoNames;
import meadcell.calc.menu.Menu;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.CheckRow;
import meadcell.catalogue.Words;
import meadcell.cellar.Cellar;
import org.apache.commons.math3.util.FastMath;

/** Builds the package that the office installs, all of it from the catalogue. */
public final class Extension {
  /** The check workbook, in the package. */
  public static final String CHECKS = "checks.fods";

  static final String DESCRIPTION = "description.xml";

  /** As people get it. */
  private static final String PACKAGE = "meadcell.oxt";

  /** The component, in the package. */
  static final String JAR = "meadcell-calc.jar";

  /** The menu, in the package. */
  static final String MENU_JAR = "meadcell-menu.jar";

  private static final int FUNCTIONS_JAVA = 17;

  /** As old as the office's own classes: the menu must run wherever the office finds a Java. */
  private static final int MENU_JAVA = 8;

  private final Catalogue catalogue;
  private final List<String> families;
  private final List<Path> libraries;
  private final Path work;

  /**
   * @param loader where the families are found
   * @param libraries jars that hold them and what they need
   * @param work folder for intermediate files
   */
  public Extension(ClassLoader loader, List<Path> libraries, Path work) {
    this.catalogue = Catalogue.load(loader);
    this.families =
        catalogue.families().keySet().stream()
            .filter(family -> !catalogue.functions(family).isEmpty())
            .toList();
    this.libraries = libraries;
    this.work = work;
  }

  /**
   * Arguments: folder of the package's fixed files, Java sources, work folder, package to write,
   * address of the site where it will lie, or nothing.
   */
  public static void main(String[] arguments) throws IOException {
    Path target = Path.of(arguments[3]);
    Extension extension =
        new Extension(Extension.class.getClassLoader(), libraries(), Path.of(arguments[2]));
    Archive archive = extension.archive(Path.of(arguments[0]), Path.of(arguments[1]));
    if (arguments[4] != null) { // as Maven passes an empty one
      Site site = new Site(arguments[4]);
      archive.add(DESCRIPTION, site.described(archive.get(DESCRIPTION)));
      Files.write(target.resolveSibling(Site.UPDATES), site.updates(Cellar.version(), PACKAGE));
    }
    Files.write(target, archive.bytes());
  }

  /** The jars of the functions and of what they depend on. */
  public static List<Path> libraries() {
    return List.of(jarOf(Catalogue.class), jarOf(FastMath.class));
  }

  /** What is in the package. */
  Archive archive(Path fixed, Path sources) throws IOException {
    Archive archive =
        new Archive()
            .addAll("", fixed)
            .add("icon.png", Icon.sheet(false))
            .add("icon-dark.png", Icon.sheet(true))
            .add("explain_16.png", Icon.button(16))
            .add("explain_26.png", Icon.button(26))
            .add("meadcell.components", Components.write(families))
            .add("CalcAddIns.xcu", WizardTexts.write(catalogue, families, Words.all()))
            .add("meadcell.rdb", typeLibrary())
            .add(CHECKS, CheckWorkbook.write(CheckRow.load(catalogue)))
            .add(JAR, componentJar())
            .add(MENU_JAR, menuJar(sources));
    BasicLibrary.addTo(archive, Words.all().stream().map(Words::tag).toList());
    for (Words words : Words.all()) {
      archive.add(Menu.guide(words.tag()), GuideWorkbook.write(catalogue, families, words));
    }
    GuideSite.addTo(archive, catalogue, families);
    for (Path library : libraries) {
      archive.add(library.getFileName().toString(), Files.readAllBytes(library));
    }
    return archive;
  }

  byte[] typeLibrary() {
    return TypeLibrary.write(UnoNames.MODULE, interfaces());
  }

  List<UnoInterface> interfaces() {
    return families.stream().map(family -> UnoInterface.of(catalogue, family)).toList();
  }

  private byte[] componentJar() throws IOException {
    Path sources = Files.createDirectories(work.resolve("interfaces"));
    List<Path> files = new ArrayList<>();
    for (UnoInterface type : interfaces()) {
      files.add(Files.writeString(sources.resolve(type.name() + ".java"), type.javaSource()));
    }
    return new Archive()
        .add("META-INF/MANIFEST.MF", manifest(AddIn.class.getName(), libraryNames()))
        .addAll("", compiled(work.resolve("interface-classes"), FUNCTIONS_JAVA, files))
        .addFolder("meadcell/calc/", locationOf(AddIn.class).resolve("meadcell/calc"), ".class")
        .bytes();
  }

  private byte[] menuJar(Path sources) throws IOException {
    String folder = "meadcell/calc/menu/";
    List<Path> files;
    try (Stream<Path> all = Files.list(sources.resolve(folder))) {
      files = all.toList();
    }
    return new Archive()
        .addFolder(folder, locationOf(Menu.class).resolve(folder), ".properties")
        .add("META-INF/MANIFEST.MF", manifest(Menu.class.getName(), JAR + " " + libraryNames()))
        .addAll("", compiled(work.resolve("menu-classes"), MENU_JAVA, files))
        .bytes();
  }

  private String libraryNames() {
    return libraries.stream().map(l -> l.getFileName().toString()).collect(Collectors.joining(" "));
  }

  /** No UNO-Type-Path line: an empty one makes every call fail. */
  public static byte[] manifest(String entry, String classPath) throws IOException {
    Manifest manifest = new Manifest();
    Attributes attributes = manifest.getMainAttributes();
    attributes.put(Attributes.Name.MANIFEST_VERSION, "1.0");
    attributes.put(new Attributes.Name("RegistrationClassName"), entry);
    attributes.put(Attributes.Name.CLASS_PATH, classPath);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    manifest.write(bytes);
    return bytes.toByteArray();
  }

  public static Path compiled(Path classes, int release, List<Path> sources) throws IOException {
    Files.createDirectories(classes);
    List<String> command =
        new ArrayList<>(
            List.of(
                "--release",
                "" + release,
                "-Xlint:-options",
                "-classpath",
                jarOf(XInterface.class).toString(),
                "-d",
                classes.toString()));
    sources.forEach(source -> command.add(source.toString()));
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    if (compiler == null) {
      throw new IllegalStateException("the build needs a JDK, not a Java runtime alone");
    }
    if (compiler.run(null, null, null, command.toArray(String[]::new)) != 0) {
      throw new IllegalStateException("does not compile: " + sources);
    }
    return classes;
  }

  private static Path jarOf(Class<?> type) {
    Path jar = locationOf(type);
    if (!Files.isRegularFile(jar)) {
      throw new IllegalStateException(
          jar + " is not a jar; build with \"mvn package\" from the top, not phase by phase");
    }
    return jar;
  }

  private static Path locationOf(Class<?> type) {
    try {
      return new File(type.getProtectionDomain().getCodeSource().getLocation().toURI()).toPath();
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }
}
