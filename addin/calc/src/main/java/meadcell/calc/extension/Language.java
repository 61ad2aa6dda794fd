package meadcell.calc.extension;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;

/**
 * A language of the wizard's texts and of the guide. Phrases are looked up by the English one as it
 * stands in the declarations; one that has no translation, because it is new or was changed, stays
 * English.
 */
final class Language implements UnaryOperator<String> {
  private static final List<String> TRANSLATED = List.of("de");

  private final String tag;
  private final Map<String, String> phrases;
  private final Set<String> asked = new TreeSet<>();

  private Language(String tag, Map<String, String> phrases) {
    this.tag = tag;
    this.phrases = phrases;
  }

  /** English, and every language that has a file of phrases. */
  static List<Language> all() {
    List<Language> all = new ArrayList<>(List.of(new Language("en", null)));
    TRANSLATED.forEach(tag -> all.add(new Language(tag, read("phrases_" + tag + ".tsv"))));
    return all;
  }

  /** English and its translation on each line, with a tab between. */
  private static Map<String, String> read(String file) {
    try (InputStream in = Language.class.getResourceAsStream(file)) {
      Map<String, String> phrases = new HashMap<>();
      for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList()) {
        String[] pair = line.split("\t");
        if (pair.length != 2 || phrases.put(pair[0], pair[1]) != null) {
          throw new IllegalStateException(file + ": not a pair, or a second one: " + line);
        }
      }
      return phrases;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  String tag() {
    return tag;
  }

  @Override
  public String apply(String english) {
    if (phrases == null || english.isEmpty()) {
      return english;
    }
    asked.add(english);
    return phrases.getOrDefault(english, english);
  }

  /** Phrases that were asked for and had no translation. */
  Set<String> missing() {
    Set<String> missing = new TreeSet<>(asked);
    if (phrases != null) {
      missing.removeAll(phrases.keySet());
    }
    return missing;
  }

  /** Phrases that have a translation and were not asked for. */
  Set<String> unused() {
    Set<String> unused = new TreeSet<>(phrases.keySet());
    unused.removeAll(asked);
    return unused;
  }

  /** Phrases that have a translation. */
  Set<String> translated() {
    return phrases.keySet();
  }
}
