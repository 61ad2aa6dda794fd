package meadcell.calc.extension;

import static meadcell.calc.extension.Xml.with;

import javax.xml.stream.XMLStreamException;
import meadcell.calc.UnoNames;
import meadcell.calc.menu.Menu;

/** Which services the jars give; the office reads it without starting Java. */
final class Components {
  private Components() {}

  static byte[] write(Iterable<String> families) {
    return Xml.document(
        xml ->
            xml.element(
                "components",
                with("xmlns", "http://openoffice.org/2010/uno-components"),
                () -> {
                  component(
                      xml,
                      Extension.JAR,
                      () -> {
                        for (String family : families) {
                          implementation(
                              xml,
                              UnoNames.implementationOf(family),
                              family,
                              "com.sun.star.sheet.AddIn");
                        }
                      });
                  component(
                      xml,
                      Extension.MENU_JAR,
                      () -> implementation(xml, Menu.class.getName(), Menu.SERVICE));
                }));
  }

  private static void component(Xml xml, String jar, Xml.Content implementations)
      throws XMLStreamException {
    xml.element(
        "component", with("loader", "com.sun.star.loader.Java2", "uri", jar), implementations);
  }

  private static void implementation(Xml xml, String name, String... services)
      throws XMLStreamException {
    xml.element(
        "implementation",
        with("name", name),
        () -> {
          for (String service : services) {
            xml.empty("service", "name", service);
          }
        });
  }
}
