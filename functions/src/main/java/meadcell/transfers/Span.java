package meadcell.transfers;

/**
 * What a vessel lost between two measurements of its content that follow each other, beyond what
 * rows say.
 *
 * @param from day of the first
 * @param to day of the second
 * @param follows whether the first is the second of the span before
 * @param lostL what was missing at the second, L; below 0 where more was found
 * @param startVarianceL2 variance of the first
 * @param flowVarianceL2 variance of all that went in and out between them
 * @param endVarianceL2 variance of the second
 * @param litreDays what it held between them, by the account, times days
 */
public record Span(
    double from,
    double to,
    boolean follows,
    double lostL,
    double startVarianceL2,
    double flowVarianceL2,
    double endVarianceL2,
    double litreDays) {

  /**
   * {@return the part of it that lies between two days; its loss counts as even over its days}
   *
   * @param first the first day
   * @param last the last day
   */
  public double shareBetween(double first, double last) {
    if (from == to) {
      return from >= first && to <= last ? 1 : 0;
    }
    return Math.max(0, Math.min(to, last) - Math.max(from, first)) / (to - from);
  }
}
