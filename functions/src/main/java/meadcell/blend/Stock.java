package meadcell.blend;

import java.util.ArrayList;
import java.util.List;
import meadcell.catalogue.Cell;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;

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

  Stock(Rows<LotRow> stock, Cell[][] targets, boolean costsMatter) {
    rows = stock.height();
    int count = stock.width() - FIRST_PROPERTY;
    if (count < 1) {
      throw new Refusal(BlendReason.STOCK_TOO_NARROW);
    }
    if (targets.length != 2 || targets[0].length != count) {
      throw new Refusal(BlendReason.TARGETS_SHAPE)
          .with("count", count)
          .with("rows", targets.length)
          .with("columns", targets[0].length);
    }
    List<LotRow> available = new ArrayList<>();
    for (LotRow row : stock) {
      double cost = costsMatter ? row.cost().number() : 0;
      if (row.availableL() > 0) {
        lots.add(new Lot(row.row() - 1, row.availableL(), cost));
        available.add(row);
      }
    }
    if (lots.isEmpty()) {
      throw new Refusal(BlendReason.NOTHING_AVAILABLE);
    }
    for (int p = 0; p < count; p++) {
      addProperty(available, targets, p);
    }
  }

  double availableL() {
    return lots.stream().mapToDouble(Lot::availableL).sum();
  }

  private void addProperty(List<LotRow> available, Cell[][] targets, int p) {
    double minimum = targets[0][p].isBlank() ? Double.NEGATIVE_INFINITY : targets[0][p].number();
    double maximum = targets[1][p].isBlank() ? Double.POSITIVE_INFINITY : targets[1][p].number();
    if (minimum > maximum) {
      throw new Refusal(BlendReason.MINIMUM_ABOVE_MAXIMUM)
          .with("property", p + 1)
          .with("minimum", minimum, Quantity.NUMBER)
          .with("maximum", maximum, Quantity.NUMBER);
    }
    if (Double.isFinite(minimum) || Double.isFinite(maximum)) {
      double[] values =
          available.stream().mapToDouble(lot -> lot.properties()[p].number()).toArray();
      properties.add(new Property(p + 1, values, minimum, maximum));
    }
  }
}
