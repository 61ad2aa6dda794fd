package meadcell.batch.fill;

import meadcell.batch.layout.Table;
import meadcell.batch.plan.Conversion;
import meadcell.batch.plan.PlanRow;
import meadcell.catalogue.Unit;

/**
 * The unit that a result is to be in, because its header or label names it.
 *
 * @param from what the formula gives, or null where that is not known
 * @param to what the header names, or null
 * @param problem why the result cannot be given in it; empty if it can
 */
record ResultUnit(Unit from, Unit to, String problem) {
  static ResultUnit of(PlanRow row, Table.Column column) {
    return of(row, column.unit(), column.strange());
  }

  static ResultUnit of(PlanRow row, Unit to, String strange) {
    Unit from = row.formula().unit().orElse(null);
    String problem = "";
    if (from != null && !strange.isEmpty()) {
      problem = "its header names the unit \"" + strange + "\", which is not known.";
    } else if (from != null && to != null && !from.fits(to)) {
      problem = "its header names " + to.word() + "; the formula gives " + from.word() + ".";
    }
    return new ResultUnit(from, to, problem);
  }

  String convert(String formula) {
    return from == null || to == null ? formula : Conversion.of(formula, from, to);
  }
}
