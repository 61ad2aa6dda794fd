package meadcell.samples;

import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Puts what POI says of a font into the order of ECMA-376 part 1, 18.8.22. */
final class Fonts {
  private static final String STYLES = "xl/styles.xml";
  private static final Pattern FONT = Pattern.compile("<font>(.*?)</font>", Pattern.DOTALL);
  private static final Pattern ELEMENT = Pattern.compile("<(\\w+)[^>]*/>");
  private static final List<String> ORDER =
      List.of(
          "b",
          "i",
          "strike",
          "condense",
          "extend",
          "outline",
          "shadow",
          "u",
          "vertAlign",
          "sz",
          "color",
          "name",
          "family",
          "charset",
          "scheme");

  private Fonts() {}

  static byte[] ordered(String part, byte[] content) {
    if (!part.equals(STYLES)) {
      return content;
    }
    String styles = new String(content, StandardCharsets.UTF_8);
    return FONT.matcher(styles)
        .replaceAll(
            font -> Matcher.quoteReplacement("<font>" + elements(font.group(1)) + "</font>"))
        .getBytes(StandardCharsets.UTF_8);
  }

  private static String elements(String font) {
    return ELEMENT
        .matcher(font)
        .results()
        .sorted(Comparator.comparingInt(element -> ORDER.indexOf(element.group(1))))
        .map(MatchResult::group)
        .collect(Collectors.joining());
  }
}
