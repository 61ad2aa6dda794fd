package meadcell.panel;

import java.util.ArrayList;
import java.util.List;

/** Who is served what in which order: every order as often as the others, to tasters by lot. */
final class Orders {
  private Orders() {}

  /** {@return a row for each taster, a column for each place, meads from 1} */
  static int[][] meads(int meads, int tasters, Draw draw) {
    List<int[]> rows = new ArrayList<>();
    while (rows.size() < tasters) {
      int[] names = draw.order(meads);
      for (int[] row : part(Williams.squares(meads), tasters - rows.size(), draw)) {
        int[] named = new int[meads];
        for (int place = 0; place < meads; place++) {
          named[place] = names[row[place]] + 1;
        }
        rows.add(named);
      }
    }
    return byLot(rows, draw).toArray(int[][]::new);
  }

  /** {@return for each taster one of the orders} */
  static List<String> of(List<String> orders, int tasters, Draw draw) {
    List<String> rows = new ArrayList<>();
    while (rows.size() < tasters) {
      List<String> block = byLot(orders, draw);
      rows.addAll(block.subList(0, Math.min(block.size(), tasters - rows.size())));
    }
    return byLot(rows, draw);
  }

  /** Whole squares first: any rows of one hold a mead at most once at each place. */
  private static List<int[]> part(int[][][] squares, int most, Draw draw) {
    List<int[]> rows = new ArrayList<>();
    for (int square : draw.order(squares.length)) {
      for (int row : draw.order(squares[square].length)) {
        if (rows.size() < most) {
          rows.add(squares[square][row]);
        }
      }
    }
    return rows;
  }

  private static <T> List<T> byLot(List<T> rows, Draw draw) {
    List<T> lot = new ArrayList<>();
    for (int row : draw.order(rows.size())) {
      lot.add(rows.get(row));
    }
    return lot;
  }
}
