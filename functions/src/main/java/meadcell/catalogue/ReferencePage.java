package meadcell.catalogue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** One function's page: the same sections in the terminal, in the office and in the manual. */
public record ReferencePage(String title, List<Section> sections) {

  /** A headed part of the page; each line stands alone. */
  public record Section(String heading, List<String> lines) {}

  /**
   * {@return the page in English}
   *
   * @param function the function
   */
  public static ReferencePage of(FunctionSpec function) {
    return of(function, Words.ENGLISH);
  }

  /**
   * {@return the page in a language}
   *
   * @param function the function
   * @param words the language
   */
  public static ReferencePage of(FunctionSpec function, Words words) {
    List<String> arguments = new ArrayList<>();
    for (ArgSpec arg : function.args()) {
      arguments.add(arg.name() + ": " + arg.description(words));
    }
    if (function.takesUnits()) {
      arguments.add(FunctionSpec.UNITS + ": " + FunctionSpec.unitsHelp(words));
    }
    Map<Phrase, List<String>> parts = new LinkedHashMap<>();
    parts.put(Phrase.PURPOSE, lines(function.summary(words)));
    parts.put(Phrase.USE, List.of(function.signature()));
    parts.put(Phrase.ARGUMENTS, arguments);
    parts.put(Phrase.RESULT, List.of(function.result().description(words)));
    parts.put(Phrase.FORMULA, lines(function.formula(words)));
    parts.put(Phrase.EXAMPLE, List.of(example(function, words)));
    parts.put(Phrase.NOTE, lines(function.note(words)));
    parts.put(Phrase.CAUTION, lines(function.caution(words)));
    parts.put(Phrase.SOURCE, lines(function.source(words)));
    List<Section> sections = new ArrayList<>();
    parts.forEach(
        (heading, lines) -> {
          if (!lines.isEmpty()) {
            sections.add(new Section(words.say(heading), lines));
          }
        });
    return new ReferencePage(function.name(), List.copyOf(sections));
  }

  private static List<String> lines(String text) {
    return text.lines().toList();
  }

  /** The declared example with what it really gives. */
  private static String example(FunctionSpec function, Words words) {
    String call = function.declaration().example();
    try {
      Object result = function.callIn(words, LiteralCall.parse(call).arguments());
      return words.say(Phrase.EXAMPLE_GIVES, "call", call, "result", words.shown(result));
    } catch (Refusal refusal) {
      throw new IllegalStateException(
          call + ", an example, is refused: " + refusal.getMessage(), refusal);
    }
  }

  /**
   * {@return the page as plain text of the given width}
   *
   * @param width how many letters a line holds at most
   */
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
