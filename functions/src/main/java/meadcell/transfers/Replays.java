package meadcell.transfers;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import meadcell.catalogue.Rows;

/** The latest replays: a sheet asks the same log in many cells. Equal rows are the same log. */
final class Replays {
  private static final int MOST_KEPT = 8;

  private record Asked(List<TransferRow> rows, OptionalDouble endOfDay, Slack slack) {}

  private static final Map<Asked, TransferLog> LATEST =
      Collections.synchronizedMap(
          new LinkedHashMap<>(16, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<Asked, TransferLog> eldest) {
              return size() > MOST_KEPT;
            }
          });

  private Replays() {}

  static TransferLog of(Rows<TransferRow> transfers, OptionalDouble endOfDay, Slack slack) {
    Asked asked = new Asked(transfers.list(), endOfDay, slack);
    TransferLog known = LATEST.get(asked);
    if (known == null) {
      known = new TransferLog(transfers, endOfDay, slack);
      LATEST.put(asked, known);
    }
    return known;
  }
}
