package meadcell.blend;

import java.util.ArrayList;
import java.util.List;
import meadcell.catalogue.Numbers;
import meadcell.catalogue.Refusal;

/** The lots to blend from and the limits of the blend's properties, read from their tables. */
final class Stock {
  /** Columns before the first property: available, cost. */
  private static final int FIRST_PROPERTY = 2;

  /** A lot that may be used, and the row of the table it stands in. */
  record Lot(int row, double availableL, double cost) {}

  /** A property with at least one limit; a missing one is infinite. Values go by lot. */
  record Property(int number, double[] values, double minimum, double maximum) {}

  final int rows;
  final List<Lot> lots = new ArrayList<>();
  final List<Property> properties = new ArrayList<>();

  Stock(Object[][] stock, Object[][] targets, boolean costsMatter) {
    rows = stock.length;
    int count = stock[0].length - FIRST_PROPERTY;
    if (count < 1) {
      throw Refusal.inconsistent(
          "stock needs three columns or more: available, cost, and a column per property.");
    }
    if (targets.length != 2 || targets[0].length != count) {
      throw Refusal.inconsistent(
          "targets must have two rows, minimum and maximum, and a column for each of the "
              + count
              + " properties in stock; it has "
              + targets.length
              + " rows and "
              + targets[0].length
              + " columns.");
    }
    for (int row = 0; row < rows; row++) {
      if (!Cells.isBlank(stock[row])) {
        addLot(stock[row], row, costsMatter);
      }
    }
    if (lots.isEmpty()) {
      throw Refusal.wrongKind("stock has no lot of which anything is available.");
    }
    for (int p = 0; p < count; p++) {
      addProperty(stock, targets, p);
    }
  }

  double availableL() {
    return lots.stream().mapToDouble(Lot::availableL).sum();
  }

  private void addLot(Object[] cells, int row, boolean costsMatter) {
    String where = " in row " + (row + 1) + " of stock";
    double availableL = Cells.notBelow0(cells[0], "available" + where);
    double cost = costsMatter ? Cells.number(cells[1], "cost" + where) : 0;
    if (availableL > 0) {
      lots.add(new Lot(row, availableL, cost));
    }
  }

  private void addProperty(Object[][] stock, Object[][] targets, int p) {
    String name = "property " + (p + 1);
    double minimum = limit(targets[0][p], "minimum of " + name, Double.NEGATIVE_INFINITY);
    double maximum = limit(targets[1][p], "maximum of " + name, Double.POSITIVE_INFINITY);
    if (minimum > maximum) {
      throw Refusal.inconsistent(
          "minimum of "
              + name
              + " is "
              + Numbers.text(minimum)
              + ", above its maximum, "
              + Numbers.text(maximum)
              + ".");
    }
    if (Double.isFinite(minimum) || Double.isFinite(maximum)) {
      double[] values =
          lots.stream()
              .mapToDouble(
                  lot ->
                      Cells.number(
                          stock[lot.row()][FIRST_PROPERTY + p],
                          name + " in row " + (lot.row() + 1) + " of stock"))
              .toArray();
      properties.add(new Property(p + 1, values, minimum, maximum));
    }
  }

  private static double limit(Object cell, String where, double free) {
    return cell == null ? free : Cells.number(cell, where);
  }
}
