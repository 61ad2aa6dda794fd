package meadcell.calc.extension;

import static meadcell.calc.extension.Xml.with;

import java.util.List;
import java.util.function.Function;
import javax.xml.stream.XMLStreamException;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Words;

/** The office's configuration of our functions: their names and what the function wizard says. */
final class WizardTexts {
  private final Xml xml;
  private final List<Words> languages;
  private final int most;

  private WizardTexts(Xml xml, List<Words> languages, int most) {
    this.xml = xml;
    this.languages = languages;
    this.most = most;
  }

  static byte[] write(Catalogue catalogue, Iterable<String> families, List<Words> languages) {
    return Xml.document(
        xml ->
            xml.element(
                "oor:component-data",
                with(
                    "xmlns:oor", "http://openoffice.org/2001/registry",
                    "xmlns:xs", "http://www.w3.org/2001/XMLSchema",
                    "oor:name", "CalcAddIns",
                    "oor:package", "org.openoffice.Office"),
                () ->
                    xml.element(
                        "node",
                        with("oor:name", "AddInInfo"),
                        () -> {
                          for (String family : families) {
                            new WizardTexts(xml, languages, UnoInterface.most(catalogue))
                                .family(catalogue, family);
                          }
                        })));
  }

  private void family(Catalogue catalogue, String family) throws XMLStreamException {
    node(
        family,
        () ->
            xml.element(
                "node",
                with("oor:name", "AddInFunctions"),
                () -> {
                  for (FunctionSpec function : catalogue.functions(family)) {
                    node(function.member(), () -> function(function));
                  }
                }));
  }

  private void function(FunctionSpec function) throws XMLStreamException {
    local("DisplayName", language -> function.name());
    local("Description", function::description);
    xml.element("prop", with("oor:name", "Category"), () -> xml.text("value", with(), "Add-In"));
    local("CompatibilityName", language -> function.name());
    xml.element(
        "node",
        with("oor:name", "Parameters"),
        () -> {
          for (ArgSpec arg : function.args()) {
            for (String name : UnoInterface.extra(arg, most)) {
              argument(name, arg::description);
            }
            argument(arg.name(), arg::description);
          }
          if (function.takesUnits()) {
            argument(FunctionSpec.UNITS, FunctionSpec::unitsHelp);
          }
        });
  }

  private void argument(String name, Function<Words, String> description)
      throws XMLStreamException {
    node(
        name,
        () -> {
          local("DisplayName", language -> name);
          local("Description", description);
        });
  }

  private void node(String name, Xml.Content content) throws XMLStreamException {
    xml.element("node", with("oor:name", name, "oor:op", "replace"), content);
  }

  private void local(String property, Function<Words, String> text) throws XMLStreamException {
    xml.element(
        "prop",
        with("oor:name", property),
        () -> {
          for (Words language : languages) {
            xml.text("value", with("xml:lang", language.tag()), text.apply(language));
          }
        });
  }
}
