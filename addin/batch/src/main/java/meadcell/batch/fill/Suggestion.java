package meadcell.batch.fill;

import java.util.Map;
import java.util.stream.Collectors;
import meadcell.catalogue.Nearest;

/** What a name that was not found may have meant, as it is written on the sheet. */
final class Suggestion {
  private static final int MOST = 12;

  private Suggestion() {}

  /**
   * The end of a sentence.
   *
   * @param written what is there by its name
   */
  static String of(String name, Map<String, String> written) {
    return Nearest.to(name, written.keySet())
        .map(near -> " Did you mean \"" + written.getOrDefault(near, near) + "\"?")
        .orElseGet(() -> thereIs(written));
  }

  private static String thereIs(Map<String, String> written) {
    String there =
        written.entrySet().stream()
            .filter(entry -> entry.getKey().length() < 40)
            .map(entry -> "\"" + entry.getValue() + "\"")
            .limit(MOST)
            .collect(Collectors.joining(", "));
    return there.isEmpty()
        ? ""
        : " There is: " + there + (written.size() > MOST ? " and more." : ".");
  }
}
