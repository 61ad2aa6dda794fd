package meadcell.batch.calculation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;

/**
 * What formulas show about the words of their calls: a word is proven if it took part in a right
 * result, unless that would let a wrong one through. Of a wrong result's words, all of which were
 * in right ones, the one that is wrong most often is not proven.
 */
final class Evidence implements Proven {
  private record Trial(String formula, Set<String> words, boolean right) {}

  private final List<Trial> trials = new ArrayList<>();
  private final List<String> doubted = new ArrayList<>();
  private Set<String> words = new LinkedHashSet<>();

  @Override
  public boolean holds(String key, Supplier<List<String>> call) {
    words.addAll(call.get());
    return true;
  }

  /** Ends what is held together as one formula's. */
  void conclude(String formula, boolean right) {
    trials.add(new Trial(formula, words, right));
    words = new LinkedHashSet<>();
  }

  /** Forgets the words since the last conclusion. */
  void abandon() {
    words = new LinkedHashSet<>();
  }

  /** The proven words. */
  Set<String> proven() {
    Set<String> proven = new TreeSet<>();
    trials.stream().filter(Trial::right).forEach(trial -> proven.addAll(trial.words));
    List<Trial> open = new ArrayList<>(trials.stream().filter(trial -> !trial.right).toList());
    open.removeIf(trial -> !proven.containsAll(trial.words));
    while (!open.isEmpty()) {
      Map<String, Integer> right = count(trials.stream().filter(Trial::right).toList());
      Map<String, Integer> wrong = count(open);
      String least =
          wrong.keySet().stream()
              .min(
                  Comparator.comparingDouble(
                          (String word) -> right.getOrDefault(word, 0) / (double) wrong.get(word))
                      .thenComparing(word -> word))
              .orElseThrow(() -> new IllegalStateException("wrong without a call: " + open));
      proven.remove(least);
      doubted.add(
          least
              + "\t"
              + open.stream()
                  .filter(trial -> trial.words.contains(least))
                  .map(Trial::formula)
                  .distinct()
                  .toList());
      open.removeIf(trial -> trial.words.contains(least));
    }
    return proven;
  }

  /** The words of right results that are not proven all the same, with the wrong formulas. */
  String told() {
    return String.join("\n", doubted);
  }

  /** The formulas with wrong results of which all words are in a table. */
  List<String> wrongThrough(Set<String> table) {
    return trials.stream()
        .filter(trial -> !trial.right && table.containsAll(trial.words))
        .map(Trial::formula)
        .distinct()
        .toList();
  }

  private static Map<String, Integer> count(List<Trial> trials) {
    Map<String, Integer> counts = new HashMap<>();
    for (Trial trial : trials) {
      trial.words.forEach(word -> counts.merge(word, 1, Integer::sum));
    }
    return counts;
  }
}
