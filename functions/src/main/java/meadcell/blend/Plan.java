package meadcell.blend;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Statement;
import org.apache.commons.math3.optim.linear.NoFeasibleSolutionException;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.util.MathArrays;

/**
 * How much of each lot. The unknowns are the lots' shares of the blend, and each property is scaled
 * so that the lots span 0 to 1: then one tolerance fits litres and mg/L alike.
 */
final class Plan {
  /** Rounding of the solver that is let pass, on the scale of the lots' span. */
  private static final double MISS = 1e-7;

  /** A minimum or maximum on the scale from {@code low} to {@code low + span}. */
  private record Limit(
      Stock.Property property, boolean isMaximum, double low, double span, double[] values) {
    double given() {
      return isMaximum ? property.maximum() : property.minimum();
    }

    double scaled() {
      return (given() - low) / span;
    }

    Relationship relationship() {
      return isMaximum ? Relationship.LEQ : Relationship.GEQ;
    }

    /** By how much shares miss it, below 0 where they keep it. */
    double missedBy(double[] shares) {
      double value = MathArrays.linearCombination(values, shares);
      return isMaximum ? value - scaled() : scaled() - value;
    }
  }

  private final Stock stock;
  private final double volumeL;
  private final List<Limit> limits = new ArrayList<>();

  private Plan(Stock stock, double volumeL) {
    this.stock = stock;
    this.volumeL = volumeL;
    for (Stock.Property property : stock.properties) {
      double low = Arrays.stream(property.values()).min().orElseThrow();
      double high = Arrays.stream(property.values()).max().orElseThrow();
      double span = high > low ? high - low : Math.max(1, Math.abs(high));
      double[] values = Arrays.stream(property.values()).map(v -> (v - low) / span).toArray();
      if (Double.isFinite(property.minimum())) {
        limits.add(new Limit(property, false, low, span, values));
      }
      if (Double.isFinite(property.maximum())) {
        limits.add(new Limit(property, true, low, span, values));
      }
    }
  }

  /** {@return volumes by row of the stock table} */
  static double[] volumes(Stock stock, double volumeL, Planning.Goal goal) {
    double available = stock.availableL() / volumeL;
    if (available < 1 - Programme.TOLERANCE) {
      throw new Refusal(BlendReason.TOO_LITTLE).with("share", 100 * available, Quantity.PERCENT, 3);
    }
    Plan plan = new Plan(stock, volumeL);
    double[] shares;
    try {
      shares = goal == Planning.Goal.COST ? plan.cheapest() : plan.closest();
    } catch (NoFeasibleSolutionException e) {
      throw plan.unreachable();
    }
    return plan.checked(shares);
  }

  private double[] cheapest() {
    Programme programme = programme(0);
    keepLimits(programme);
    double dearest = 1;
    for (int i = 0; i < lots(); i++) {
      programme.cost[i] = stock.lots.get(i).cost();
      dearest = Math.max(dearest, Math.abs(programme.cost[i]));
    }
    for (int i = 0; i < lots(); i++) {
      programme.cost[i] /= dearest;
    }
    return programme.solve();
  }

  /** Least sum of distances to the middles, each counted in half widths of its own range. */
  private double[] closest() {
    List<Limit> ranges =
        limits.stream()
            .filter(limit -> limit.isMaximum)
            .filter(limit -> Double.isFinite(limit.property.minimum()))
            .toList();
    if (ranges.isEmpty()) {
      throw new Refusal(BlendReason.NO_RANGE);
    }
    Programme programme = programme(ranges.size());
    keepLimits(programme);
    for (int r = 0; r < ranges.size(); r++) {
      Limit range = ranges.get(r);
      double half = (range.property.maximum() - range.property.minimum()) / 2 / range.span;
      double middle = range.scaled() - half;
      int distance = lots() + r;
      programme.require(range.values, distance, -half, Relationship.LEQ, middle);
      programme.require(range.values, distance, half, Relationship.GEQ, middle);
      programme.cost[distance] = 1;
    }
    return programme.solve();
  }

  /** The smallest relaxation of the targets, as a sum in spans, that has a plan. */
  private Refusal unreachable() {
    Programme programme = programme(limits.size());
    for (int i = 0; i < limits.size(); i++) {
      Limit limit = limits.get(i);
      int relaxation = lots() + i;
      programme.require(
          limit.values, relaxation, limit.isMaximum ? -1 : 1, limit.relationship(), limit.scaled());
      programme.cost[relaxation] = 1;
    }
    double[] solution = programme.solve();
    List<Statement> changes = new ArrayList<>();
    for (int i = 0; i < limits.size(); i++) {
      if (solution[lots() + i] > Programme.TOLERANCE) {
        changes.add(change(limits.get(i), solution[lots() + i]));
      }
    }
    if (changes.isEmpty()) {
      return new Refusal(BlendReason.BY_A_HAIR);
    }
    return new Refusal(BlendReason.NO_BLEND).with("changes", changes);
  }

  private static Statement change(Limit limit, double relaxation) {
    BigDecimal by =
        new BigDecimal((relaxation - Programme.TOLERANCE / 2) * limit.span)
            .round(new MathContext(3, RoundingMode.CEILING));
    return Statement.of(limit.isMaximum ? Change.MAXIMUM : Change.MINIMUM)
        .with("property", limit.property.number())
        .with("given", limit.given(), Quantity.NUMBER)
        .with("by", by.doubleValue(), Quantity.NUMBER);
  }

  private int lots() {
    return stock.lots.size();
  }

  /** Shares add up to 1 and take no more of a lot than there is. */
  private Programme programme(int furtherUnknowns) {
    Programme programme = new Programme(lots() + furtherUnknowns);
    double[] all = new double[lots()];
    Arrays.fill(all, 1);
    programme.require(all, Relationship.EQ, 1);
    for (int i = 0; i < lots(); i++) {
      if (most(i) < 1) {
        double[] one = new double[lots()];
        one[i] = 1;
        programme.require(one, Relationship.LEQ, most(i));
      }
    }
    return programme;
  }

  private double most(int lot) {
    return stock.lots.get(lot).availableL() / volumeL;
  }

  private void keepLimits(Programme programme) {
    for (Limit limit : limits) {
      double ease = limit.isMaximum ? Programme.TOLERANCE : -Programme.TOLERANCE;
      programme.require(limit.values, limit.relationship(), limit.scaled() + ease);
    }
  }

  private double[] checked(double[] solution) {
    double[] shares = Arrays.copyOf(solution, lots());
    double worst = Math.abs(Arrays.stream(shares).sum() - 1);
    for (int i = 0; i < shares.length; i++) {
      worst = Math.max(worst, Math.max(-shares[i], shares[i] - most(i)));
    }
    for (Limit limit : limits) {
      worst = Math.max(worst, limit.missedBy(shares));
    }
    if (worst > MISS) {
      throw new Refusal(BlendReason.LIMITS_NOT_KEPT);
    }
    double[] volumes = new double[stock.rows];
    for (int i = 0; i < shares.length; i++) {
      volumes[stock.lots.get(i).row()] =
          Math.min(stock.lots.get(i).availableL(), Math.max(0, shares[i]) * volumeL);
    }
    return volumes;
  }
}
