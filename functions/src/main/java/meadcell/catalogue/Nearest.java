package meadcell.catalogue;

import java.util.Locale;
import java.util.Optional;

/** The known name nearest to a mistyped one, by edit distance. */
public final class Nearest {
  private Nearest() {}

  /** {@return the nearest name that differs in less than half of its letters, ignoring case} */
  public static Optional<String> to(String given, Iterable<String> known) {
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
