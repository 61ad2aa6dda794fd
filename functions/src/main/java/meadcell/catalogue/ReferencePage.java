package meadcell.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** One function's page: the same sections in the terminal, in the office and in the manual. */
public record ReferencePage(String title, List<Section> sections) {

  /** A headed part of the page; each line stands alone. */
  public record Section(String heading, List<String> lines) {}

  public static ReferencePage of(FunctionSpec function) {
    return of(function, UnaryOperator.identity());
  }

  /** The same in another language, given what turns our phrases into it, line by line. */
  public static ReferencePage of(FunctionSpec function, UnaryOperator<String> words) {
    CellarFunction declaration = function.declaration();
    List<String> arguments = new ArrayList<>();
    for (ArgSpec arg : function.args()) {
      arguments.add(arg.name() + ": " + arg.description(words));
    }
    if (function.takesUnits()) {
      arguments.add(FunctionSpec.UNITS + ": " + words.apply(FunctionSpec.UNITS_HELP));
    }
    List<Section> sections = new ArrayList<>();
    add(sections, words, "Purpose", lines(declaration.summary(), words));
    add(sections, words, "Use", List.of(function.signature()));
    add(sections, words, "Arguments", arguments);
    add(sections, words, "Result", List.of(function.result().description(words)));
    add(sections, words, "Formula", lines(declaration.formula(), words));
    add(sections, words, "Example", List.of(example(function, words)));
    add(sections, words, "Note", lines(declaration.note(), words));
    add(sections, words, "Caution", lines(declaration.caution(), words));
    add(sections, words, "Source", lines(declaration.source(), words));
    return new ReferencePage(function.name(), List.copyOf(sections));
  }

  private static void add(
      List<Section> sections, UnaryOperator<String> words, String heading, List<String> lines) {
    if (!lines.isEmpty()) {
      sections.add(new Section(words.apply(heading), lines));
    }
  }

  private static List<String> lines(String text, UnaryOperator<String> words) {
    return text.lines().map(words).toList();
  }

  /** The declared example with what it really gives. */
  private static String example(FunctionSpec function, UnaryOperator<String> words) {
    String call = function.declaration().example();
    Object result = function.call(LiteralCall.parse(call).arguments());
    return words.apply("%s gives %s").formatted(call, shown(result));
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
