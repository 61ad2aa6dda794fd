package meadcell.catalogue;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.StreamSupport;

/** The known names that somebody may have meant by an unknown one. */
public final class Nearest {
  private Nearest() {}

  /** More names than this with the word are no suggestion. */
  private static final int MOST = 4;

  /**
   * {@return the names that have the given one as a word of theirs, in singular or plural; else the
   * nearest by edit distance that differs in less than half of its letters} Case does not matter.
   *
   * @param given the name that was given
   * @param known the names that there are
   */
  public static Optional<String> to(String given, Iterable<String> known) {
    List<String> holding =
        StreamSupport.stream(known.spliterator(), false)
            .filter(name -> hasWord(name, given))
            .toList();
    return holding.isEmpty() || holding.size() > MOST
        ? byDistance(given, known)
        : Optional.of(String.join(", ", holding));
  }

  private static boolean hasWord(String name, String given) {
    return Arrays.stream(name.split("[^\\p{L}\\p{N}]+"))
        .anyMatch(word -> singular(word).equals(singular(given)));
  }

  private static String singular(String word) {
    return word.strip().toLowerCase(Locale.ROOT).replaceAll("ies$", "y").replaceAll("s$", "");
  }

  private static Optional<String> byDistance(String given, Iterable<String> known) {
    String best = null;
    int least = Integer.MAX_VALUE;
    for (String candidate : known) {
      int distance = distance(given.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
      if (distance < least && 2 * distance < candidate.length()) {
        least = distance;
        best = candidate;
      }
    }
    return Optional.ofNullable(best);
  }

  /** Levenshtein distance. */
  private static int distance(String a, String b) {
    int[] previous = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      previous[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] current = new int[b.length() + 1];
      current[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int substituted = previous[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        current[j] = Math.min(substituted, 1 + Math.min(previous[j], current[j - 1]));
      }
      previous = current;
    }
    return previous[b.length()];
  }
}
