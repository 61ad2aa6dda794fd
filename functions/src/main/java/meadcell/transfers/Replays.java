package meadcell.transfers;

import java.util.List;
import java.util.OptionalDouble;
import meadcell.catalogue.Rows;

/** The latest replays. Equal rows are the same log. */
final class Replays {
  private record Asked(List<TransferRow> rows, OptionalDouble endOfDay, Slack slack) {}

  private static final Latest<Asked, TransferLog> LATEST = new Latest<>();

  private Replays() {}

  static TransferLog of(Rows<TransferRow> transfers, OptionalDouble endOfDay, Slack slack) {
    return LATEST.answer(
        new Asked(transfers.list(), endOfDay, slack),
        asked -> new TransferLog(transfers, endOfDay, slack));
  }
}
