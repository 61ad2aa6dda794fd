package meadcell.lab;

import java.util.Comparator;
import java.util.List;
import meadcell.catalogue.Place;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/**
 * A bench trial: what was added, and what was read then. It only rises or only falls; between two
 * readings it is taken as straight, beyond the first and last one as unknown.
 */
final class Curve {
  private static final int LEAST_READINGS = 3;

  /** Standard uncertainties to either side, 95 of 100. */
  private static final double COVERAGE = 2;

  /** A reading, and the row it stands in. */
  record Reading(int row, double added, double value) {}

  /** An addition, and between which two of the trial it surely lies. */
  record Addition(double estimate, double lower, double upper) {}

  private final List<Reading> readings;
  private final Quantity quantity;

  /** 1 where readings rise, −1 where they fall. */
  private final double direction;

  Curve(List<Reading> given, Quantity quantity) {
    this.quantity = quantity;
    if (given.size() < LEAST_READINGS) {
      throw new Refusal(LabReason.TOO_FEW_READINGS)
          .with("given", given.size())
          .with("least", LEAST_READINGS);
    }
    readings = given.stream().sorted(Comparator.comparingDouble(Reading::added)).toList();
    direction = Math.signum(last().value - first().value);
    for (int i = 1; i < readings.size(); i++) {
      Reading before = readings.get(i - 1);
      Reading now = readings.get(i);
      if (now.added == before.added) {
        throw new Refusal(LabReason.SAME_ADDITION).about("trial", Place.row(now.row));
      }
      if (direction * (now.value - before.value) <= 0) {
        throw new Refusal(LabReason.TURNS_BACK).about("trial", Place.row(now.row));
      }
    }
  }

  private Reading first() {
    return readings.get(0);
  }

  private Reading last() {
    return readings.get(readings.size() - 1);
  }

  /** {@return what must be added for a reading} */
  double at(String argument, double target) {
    if (reached(first(), target) > 0 || reached(last(), target) < 0) {
      throw new Refusal(LabReason.OUTSIDE_TRIAL)
          .about(argument)
          .with("target", target, quantity)
          .with("start", first().value, quantity)
          .with("end", last().value, quantity);
    }
    int i = 1;
    while (reached(readings.get(i), target) < 0) {
      i++;
    }
    Reading from = readings.get(i - 1);
    Reading to = readings.get(i);
    return from.added + (target - from.value) / (to.value - from.value) * (to.added - from.added);
  }

  /**
   * {@return what must be added for a reading: at least what was not yet enough in the trial, at
   * most what was too much, for readings of that standard uncertainty}
   */
  Addition between(String argument, double target, double u) {
    double estimate = at(argument, target);
    double lower = Double.NaN;
    double upper = Double.NaN;
    for (Reading reading : readings) {
      double beyond = reached(reading, target);
      if (beyond <= -COVERAGE * u) {
        lower = reading.added;
      }
      if (beyond >= COVERAGE * u && Double.isNaN(upper)) {
        upper = reading.added;
      }
    }
    if (Double.isNaN(lower) && first().added == 0) {
      lower = 0; // less than nothing is not added
    }
    if (Double.isNaN(lower) || Double.isNaN(upper)) {
      throw new Refusal(LabReason.NEAR_THE_END)
          .about(argument)
          .with("target", target, quantity)
          .with("end", Double.isNaN(upper) ? last().value : first().value, quantity)
          .with("u", u, quantity);
    }
    return new Addition(estimate, lower, upper);
  }

  /** How far a reading is beyond a target, in the trial's direction. */
  private double reached(Reading reading, double target) {
    return direction * (reading.value - target);
  }
}
