package meadcell.calc.extension;

import static meadcell.calc.extension.Xml.with;

import java.util.List;
import meadcell.calc.menu.Menu;
import meadcell.calc.menu.Texts;

/**
 * What the menu, the button and the key call: a little Basic, which runs without Java and can so
 * say that there is none. Where there is one, the menu's own Java does the work.
 */
final class BasicLibrary {
  /** The library, which is a folder of the package. */
  private static final String NAME = "Meadcell";

  private static final String MODULE = "Cellar";

  /** What cannot be said in Java. */
  private static final List<String> TROUBLES = List.of("javaAbsent", "javaOff", "javaFails");

  private static final String CODE =
      """
      Option Explicit

      Sub Sample
        Run("sample")
      End Sub

      Sub Guide
        Run("guide")
      End Sub

      Sub Pages
        Run("pages")
      End Sub

      Sub Explain
        Run("explain")
      End Sub

      Sub Check
        Run("check")
      End Sub

      Sub Run(entry As String)
        Dim found As String
        found = Trouble()
        If found = "" Then
          createUnoService("SERVICE").trigger(entry)
        Else
          MsgBox(found, 48, "Meadcell")
        End If
      End Sub

      ' Why there are no functions; empty where Java runs, which then can say for itself.
      Function Trouble() As String
        Dim machine, menu
        On Error Goto Failed
        machine = createUnoService("com.sun.star.java.JavaVirtualMachine")
        If IsNull(machine) Then
          Trouble = Say("javaAbsent")
          Exit Function
        End If
        If Not machine.isVMEnabled() Then
          Trouble = Say("javaOff")
          Exit Function
        End If
        menu = createUnoService("SERVICE")
        If IsNull(menu) Then Trouble = Say("javaFails")
        Exit Function
        Failed:
        Trouble = Say("javaFails")
      End Function

      Function Language() As String
        Dim path(0) As New com.sun.star.beans.NamedValue
        path(0).Name = "nodepath"
        path(0).Value = "/org.openoffice.Setup/L10N"
        Language = Left(createUnoService("com.sun.star.configuration.ConfigurationProvider") _
          .createInstanceWithArguments("com.sun.star.configuration.ConfigurationAccess", path()) _
          .getByName("ooLocale"), 2)
      End Function

      Function Say(what As String) As String
        Say = Said(Language() & "." & what)
        If Say = "" Then Say = Said("en." & what)
      End Function

      Function Said(key As String) As String
        Select Case key
      SAID
        End Select
      End Function
      """;

  private BasicLibrary() {}

  /** Adds the library to a package. */
  static void addTo(Archive archive, List<String> languages) {
    archive.add(NAME + "/script.xlb", contents(MODULE));
    archive.add(NAME + "/dialog.xlb", contents()); // the office shows an error where it is missing
    archive.add(NAME + "/" + MODULE + ".xba", module(languages));
  }

  private static byte[] contents(String... elements) {
    return Xml.document(
        xml ->
            xml.element(
                "library:library",
                with(
                    "xmlns:library", "http://openoffice.org/2000/library",
                    "library:name", NAME,
                    "library:readonly", "false",
                    "library:passwordprotected", "false"),
                () -> {
                  for (String element : elements) {
                    xml.empty("library:element", "library:name", element);
                  }
                }));
  }

  private static byte[] module(List<String> languages) {
    StringBuilder said = new StringBuilder();
    for (String language : languages) {
      for (String trouble : TROUBLES) {
        String text = new Texts(language).say(trouble).replace("\"", "\"\"");
        said.append("    Case \"%s.%s\"\n      Said = \"%s\"\n".formatted(language, trouble, text));
      }
    }
    String code =
        CODE.replace("SERVICE", Menu.SERVICE).replace("SAID", said.toString().stripTrailing());
    return Xml.document(
        xml ->
            xml.text(
                "script:module",
                with(
                    "xmlns:script", "http://openoffice.org/2000/script",
                    "script:name", MODULE,
                    "script:language", "StarBasic"),
                code));
  }
}
