package meadcell.calc.build;

import static meadcell.calc.build.Xml.with;

import meadcell.calc.UnoNames;

/** Which services the component jar gives; the office reads it without starting Java. */
final class Components {
  private Components() {}

  static byte[] write(Iterable<String> families) {
    return Xml.document(
        xml ->
            xml.element(
                "components",
                with("xmlns", "http://openoffice.org/2010/uno-components"),
                () ->
                    xml.element(
                        "component",
                        with("loader", "com.sun.star.loader.Java2", "uri", Extension.JAR),
                        () -> {
                          for (String family : families) {
                            xml.element(
                                "implementation",
                                with("name", UnoNames.implementationOf(family)),
                                () -> {
                                  xml.empty("service", "name", family);
                                  xml.empty("service", "name", "com.sun.star.sheet.AddIn");
                                });
                          }
                        })));
  }
}
