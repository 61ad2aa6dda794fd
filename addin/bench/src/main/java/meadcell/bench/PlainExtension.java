package meadcell.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import meadcell.calc.UnoNames;
import meadcell.calc.extension.Archive;
import meadcell.calc.extension.Extension;
import meadcell.calc.extension.TypeLibrary;
import meadcell.calc.extension.UnoInterface;
import meadcell.calc.extension.UnoInterface.Method;
import meadcell.calc.extension.UnoInterface.Parameter;

/**
 * An extension of plain Java functions that give back their first argument, a cell or a column:
 * what any add-in costs, to compare ours with.
 */
final class PlainExtension {
  private static final UnoInterface FUNCTIONS =
      new UnoInterface(
          UnoNames.interfaceOf("PLAIN"),
          List.of(
              new Method("one", "double", List.of(new Parameter("a", "double"))),
              new Method("column", "any", List.of(new Parameter("a", "[]any"))),
              new Method(
                  "four",
                  "double",
                  List.of(
                      new Parameter("a", "double"),
                      new Parameter("b", "double"),
                      new Parameter("c", "double"),
                      new Parameter("d", "any"),
                      new Parameter("e", "any")))));

  private static final String COMPONENT =
      """
      package meadcell.plain;
      public final class Plain extends com.sun.star.lib.uno.helper.WeakBase
          implements meadcell.uno.XPlain, com.sun.star.lang.XServiceInfo {
        private static final String[] SERVICES = {"PLAIN", "com.sun.star.sheet.AddIn"};
        public Plain(com.sun.star.uno.XComponentContext context) {}
        public static com.sun.star.lang.XSingleComponentFactory __getComponentFactory(String name) {
          return com.sun.star.lib.uno.helper.Factory.createComponentFactory(Plain.class, SERVICES);
        }
        public double one(double a) { return a; }
        public Object column(Object[] a) {
          Object[][] cells = (Object[][]) a[0];
          double[][] numbers = new double[cells.length][1];
          for (int i = 0; i < numbers.length; i++) { numbers[i][0] = (Double) cells[i][0]; }
          return numbers;
        }
        public double four(double a, double b, double c, Object d, Object e) { return a; }
        public String getImplementationName() { return Plain.class.getName(); }
        public String[] getSupportedServiceNames() { return SERVICES; }
        public boolean supportsService(String name) {
          return java.util.Arrays.asList(SERVICES).contains(name);
        }
      }
      """;

  private static final String COMPONENTS =
      """
      <?xml version="1.0" encoding="UTF-8"?>
      <components xmlns="http://openoffice.org/2010/uno-components">
        <component loader="com.sun.star.loader.Java2" uri="plain.jar">
          <implementation name="meadcell.plain.Plain">
            <service name="PLAIN"/>
            <service name="com.sun.star.sheet.AddIn"/>
          </implementation>
        </component>
      </components>
      """;

  private static final String NAMES =
      """
      <?xml version="1.0" encoding="UTF-8"?>
      <oor:component-data xmlns:oor="http://openoffice.org/2001/registry"
        oor:name="CalcAddIns" oor:package="org.openoffice.Office">
        <node oor:name="AddInInfo">
          <node oor:name="PLAIN" oor:op="replace">
            <node oor:name="AddInFunctions">
              NODES
            </node>
          </node>
        </node>
      </oor:component-data>
      """;

  private static final String NODE =
      """
      <node oor:name="%s" oor:op="replace">
        <prop oor:name="DisplayName"><value xml:lang="en">PLAIN.%s</value></prop>
      </node>
      """;

  private static final String MANIFEST =
      """
      <?xml version="1.0" encoding="UTF-8"?>
      <manifest:manifest xmlns:manifest="http://openoffice.org/2001/manifest">
        <manifest:file-entry manifest:full-path="plain.rdb"
          manifest:media-type="application/vnd.sun.star.uno-typelibrary;type=RDB"/>
        <manifest:file-entry manifest:full-path="plain.components"
          manifest:media-type="application/vnd.sun.star.uno-components"/>
        <manifest:file-entry manifest:full-path="names.xcu"
          manifest:media-type="application/vnd.sun.star.configuration-data"/>
      </manifest:manifest>
      """;

  private PlainExtension() {}

  /** Writes the package into a folder. */
  static Path write(Path folder) throws IOException {
    Path type = folder.resolve(FUNCTIONS.name() + ".java");
    Files.writeString(type, FUNCTIONS.javaSource());
    Path component = Files.writeString(folder.resolve("Plain.java"), COMPONENT);
    Path classes = Extension.compiled(folder.resolve("classes"), 17, List.of(type, component));
    byte[] jar =
        new Archive()
            .add("META-INF/MANIFEST.MF", Extension.manifest("meadcell.plain.Plain", "plain.jar"))
            .addAll("", classes)
            .bytes();
    byte[] types = TypeLibrary.write(UnoNames.MODULE, List.of(FUNCTIONS));
    return Files.write(
        folder.resolve("plain.oxt"),
        new Archive()
            .add("META-INF/manifest.xml", MANIFEST.getBytes(StandardCharsets.UTF_8))
            .add("plain.components", COMPONENTS.getBytes(StandardCharsets.UTF_8))
            .add("names.xcu", NAMES.replace("NODES", nodes()).getBytes(StandardCharsets.UTF_8))
            .add("plain.rdb", types)
            .add("plain.jar", jar)
            .bytes());
  }

  private static String nodes() {
    return FUNCTIONS.methods().stream()
        .map(method -> NODE.formatted(method.name(), method.name().toUpperCase(Locale.ROOT)))
        .collect(Collectors.joining());
  }
}
