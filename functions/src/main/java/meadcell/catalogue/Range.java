package meadcell.catalogue;

import java.util.ArrayList;
import java.util.List;

/**
 * The numbers that are allowed, in the metric unit; infinite where there is no limit.
 *
 * @param from smallest value allowed
 * @param to largest value allowed
 * @param above values must be larger than this
 * @param below values must be smaller than this
 */
public record Range(double from, double to, double above, double below) {
  private static final int DIGITS = 4;

  /**
   * {@return the numbers between two, both of them allowed}
   *
   * @param from the smallest
   * @param to the largest
   */
  public static Range between(double from, double to) {
    return new Range(from, to, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
  }

  /**
   * {@return whether a metric value is allowed}
   *
   * @param value the value, in the metric unit
   */
  public boolean contains(double value) {
    return value >= from && value <= to && value > above && value < below;
  }

  /** {@return the smallest value allowed, or the one that all must exceed} */
  public double lowest() {
    return Math.max(from, above);
  }

  /** {@return the largest value allowed, or the one below which all must stay} */
  public double highest() {
    return Math.min(to, below);
  }

  /**
   * {@return in words, without the unit: {@code 2 to 45}; empty where every number is allowed}
   *
   * @param quantity what it measures
   * @param system the units of the caller
   * @param words the language
   */
  public String text(Quantity quantity, UnitSystem system, Words words) {
    if (Double.isFinite(from) && Double.isFinite(to)) {
      return words.say(
          Phrase.BETWEEN,
          "from",
          bound(from, quantity, system, words),
          "to",
          bound(to, quantity, system, words));
    }
    List<String> limits = new ArrayList<>();
    limit(limits, Phrase.AT_LEAST, from, quantity, system, words);
    limit(limits, Phrase.ABOVE, above, quantity, system, words);
    limit(limits, Phrase.AT_MOST, to, quantity, system, words);
    limit(limits, Phrase.BELOW, below, quantity, system, words);
    return String.join(", ", limits);
  }

  private static void limit(
      List<String> limits,
      Phrase phrase,
      double metric,
      Quantity quantity,
      UnitSystem system,
      Words words) {
    if (Double.isFinite(metric)) {
      limits.add(words.say(phrase, "limit", bound(metric, quantity, system, words)));
    }
  }

  private static String bound(double metric, Quantity quantity, UnitSystem system, Words words) {
    return words.number(quantity.fromMetric(metric, system), DIGITS);
  }
}
