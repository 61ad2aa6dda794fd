package meadcell.transfers;

import java.util.OptionalDouble;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/**
 * How much more than its account a vessel may turn out to have held.
 *
 * @param tolerance as a part of the most it held since it was last empty; without it, twice the
 *     combined standard uncertainty of the account and of the row
 */
public record Slack(OptionalDouble tolerance) {
  /** A remainder, as a part of the fill, that is only rounding. */
  static final double ROUNDING = 1e-12;

  /** Twice the standard uncertainty holds 95 of 100 measurements. */
  private static final double COVERAGE = 2;

  /** {@return what uncertainty explains} */
  public static Slack byUncertainty() {
    return new Slack(OptionalDouble.empty());
  }

  /**
   * {@return a part of the fill}
   *
   * @param percent tolerance, % of the fill
   */
  public static Slack ofFill(double percent) {
    return new Slack(OptionalDouble.of(percent / 100));
  }

  /** What a row draws or finds beyond the account. */
  record Excess(
      String vessel, int row, boolean gauged, double volumeL, double fillL, double varianceL2) {}

  void refuseBeyond(Excess excess) {
    double rounding = ROUNDING * excess.fillL;
    if (excess.fillL == 0 && excess.volumeL > 0) {
      throw refusal(
          excess, excess.gauged ? TransferReason.GAUGED_EMPTY : TransferReason.DRAWN_FROM_EMPTY);
    }
    if (tolerance.isEmpty()) {
      double explained = COVERAGE * Math.sqrt(excess.varianceL2);
      if (excess.volumeL > explained + rounding) {
        throw refusal(
                excess,
                excess.gauged
                    ? TransferReason.GAUGED_UNEXPLAINED
                    : TransferReason.DRAWN_UNEXPLAINED)
            .with("excess", excess.volumeL, Quantity.VOLUME, 3)
            .with("explained", explained, Quantity.VOLUME, 3);
      }
    } else if (excess.volumeL > tolerance.getAsDouble() * excess.fillL + rounding) {
      throw refusal(
              excess, excess.gauged ? TransferReason.GAUGED_BEYOND : TransferReason.DRAWN_BEYOND)
          .with("excess", 100 * excess.volumeL / excess.fillL, Quantity.PERCENT, 3)
          .with("tolerance", 100 * tolerance.getAsDouble(), Quantity.PERCENT);
    }
  }

  private static Refusal refusal(Excess excess, TransferReason reason) {
    return new Refusal(reason).with("row", excess.row).with("vessel", excess.vessel);
  }
}
