package meadcell.vessel;

import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.transfers.TransferLog;

/**
 * A vessel's account between two days, or the sum of all.
 *
 * @param vessel its name
 * @param openingL what it held before the first day, L
 * @param inL what came in, L
 * @param outL what went out, L
 * @param lostL what was lost, by a row or by a gauge, L
 * @param closingL what it held at the end of the last day, L
 */
public record Account(
    @Gives(value = "vessel", is = Quantity.TEXT) String vessel,
    @Gives(value = "opening", is = Quantity.VOLUME) double openingL,
    @Gives(value = "in", is = Quantity.VOLUME) double inL,
    @Gives(value = "out", is = Quantity.VOLUME) double outL,
    @Gives(value = "lost", is = Quantity.VOLUME) double lostL,
    @Gives(value = "closing", is = Quantity.VOLUME) double closingL) {

  static Account empty(String vessel) {
    return new Account(vessel, 0, 0, 0, 0, 0);
  }

  boolean isEmpty() {
    return openingL == 0 && inL == 0 && outL == 0 && lostL == 0 && closingL == 0;
  }

  /** With an entry more: before the first day, it makes the opening. */
  Account with(TransferLog.Posting posting, double volumeL, boolean before) {
    double change = posting == TransferLog.Posting.IN ? volumeL : -volumeL;
    return plus(
        new Account(
            vessel,
            before ? change : 0,
            before || posting != TransferLog.Posting.IN ? 0 : volumeL,
            before || posting != TransferLog.Posting.OUT ? 0 : volumeL,
            before || posting != TransferLog.Posting.LOST ? 0 : volumeL,
            change));
  }

  Account plus(Account other) {
    return new Account(
        vessel,
        openingL + other.openingL,
        inL + other.inL,
        outL + other.outL,
        lostL + other.lostL,
        closingL + other.closingL);
  }
}
