package meadcell.catalogue;

import java.util.ArrayList;
import java.util.List;

/** One function's page: the same sections in the terminal, in the office and in the manual. */
public record ReferencePage(String title, List<Section> sections) {

  /** A headed part of the page; each line stands alone. */
  public record Section(String heading, List<String> lines) {}

  public static ReferencePage of(FunctionSpec function) {
    CellarFunction declaration = function.declaration();
    List<Section> sections = new ArrayList<>();
    add(sections, "Purpose", declaration.summary());
    add(sections, "Use", function.signature());
    List<String> arguments = new ArrayList<>();
    for (ArgSpec arg : function.args()) {
      arguments.add(arg.name() + ": " + arg.description());
    }
    if (function.takesUnits()) {
      arguments.add(FunctionSpec.UNITS + ": " + FunctionSpec.UNITS_HELP);
    }
    sections.add(new Section("Arguments", arguments));
    add(sections, "Result", function.result().description());
    add(sections, "Formula", declaration.formula());
    add(sections, "Example", example(function));
    add(sections, "Note", declaration.note());
    add(sections, "Caution", declaration.caution());
    add(sections, "Source", declaration.source());
    sections.removeIf(section -> section.lines().isEmpty());
    return new ReferencePage(function.name(), List.copyOf(sections));
  }

  private static void add(List<Section> sections, String heading, String text) {
    sections.add(new Section(heading, text.isEmpty() ? List.of() : text.lines().toList()));
  }

  /** The declared example with what it really gives. */
  private static String example(FunctionSpec function) {
    String call = function.declaration().example();
    return call + " gives " + shown(function.call(LiteralCall.parse(call).arguments()));
  }

  /** A result as one line: cells by commas, rows by semicolons. */
  public static String shown(Object result) {
    if (result instanceof Double number) {
      return Numbers.text(number);
    }
    if (result instanceof Object[][] rows) {
      List<String> lines = new ArrayList<>();
      for (Object[] row : rows) {
        List<String> cells = new ArrayList<>();
        for (Object cell : row) {
          cells.add(cell == null ? "" : shown(cell));
        }
        lines.add(String.join(", ", cells));
      }
      return String.join("; ", lines);
    }
    return String.valueOf(result);
  }

  /** The page as plain text of the given width. */
  public String text(int width) {
    StringBuilder out = new StringBuilder(title).append('\n');
    for (Section section : sections) {
      out.append('\n').append(section.heading()).append('\n');
      for (String line : section.lines()) {
        wrap(out, line, width);
      }
    }
    return out.toString();
  }

  private static void wrap(StringBuilder out, String line, int width) {
    int column = 0;
    for (String word : line.split(" ")) {
      if (column > 0 && column + 1 + word.length() > width) {
        out.append('\n');
        column = 0;
      }
      out.append(column == 0 ? "  " : " ").append(word);
      column += word.length() + (column == 0 ? 2 : 1);
    }
    out.append('\n');
  }
}
