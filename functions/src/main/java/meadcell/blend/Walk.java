package meadcell.blend;

import java.util.List;
import meadcell.density.Evaporation;
import meadcell.transfers.Latest;
import meadcell.transfers.TransferLog;

/** A property carried through a log to every vessel, with what may stand against it. */
final class Walk {
  /** Of a humidity that is not told, % (common practice, no source). */
  private static final double U_HUMIDITY = 10;

  /** Of the neutral humidity, 65 to 70 %, taken as rectangular. */
  private static final double U_NEUTRAL = 1.5;

  private static final double DRIEST = 1;

  /** What a cell asks, but for the lot. */
  record Asked(
      TransferLog log,
      List<AnalysisRow> analyses,
      List<AdditionRow> additions,
      Property property,
      double endOfDay,
      double humidity,
      boolean humidityIsGuessed) {
    Carry carry(double humidity, double endOfDay, Carry.Watch watch) {
      return new Carry(
          log,
          new Analyses(log, analyses, property),
          new Additions(log, additions, analyses, property),
          property.amounts(humidity),
          endOfDay,
          watch);
    }
  }

  private static final Latest<Asked, Walk> LATEST = new Latest<>();

  private final Asked asked;
  private final Carry carry;
  private final Carry inDrierAir;
  private final Rest rest;

  private Walk(Asked asked) {
    this.asked = asked;
    if (asked.property.fermentChanges()) {
      Rest first =
          new Rest(
              asked.log,
              asked.property,
              new Analyses(asked.log, asked.analyses, Property.STRENGTH),
              new Analyses(asked.log, asked.analyses, Property.SUGAR));
      asked.carry(asked.humidity, Double.POSITIVE_INFINITY, first);
      rest = first.again();
      carry = asked.carry(asked.humidity, asked.endOfDay, rest);
    } else {
      rest = null;
      carry = asked.carry(asked.humidity, asked.endOfDay, new Carry.Watch() {});
    }
    inDrierAir =
        asked.property.equals(Property.STRENGTH)
            ? asked.carry(drier(), asked.endOfDay, new Carry.Watch() {})
            : carry;
  }

  static Walk of(Asked asked) {
    return LATEST.answer(asked, Walk::new);
  }

  /** By one standard uncertainty; that of the neutral humidity as the same of the air's. */
  private double drier() {
    double ofNeutral = (100 - asked.humidity) / (100 - Evaporation.NEUTRAL_HUMIDITY) * U_NEUTRAL;
    double u = Math.hypot(asked.humidityIsGuessed ? U_HUMIDITY : 0, ofNeutral);
    return Math.max(DRIEST, asked.humidity - u);
  }

  Carry carry() {
    return carry;
  }

  void refuseRestless(int lot) {
    if (rest != null) {
      rest.refuseRestless(lot, asked.endOfDay);
    }
  }

  /** {@return by how much a value changes with the humidity's standard uncertainty} */
  double byHumidity(int lot) {
    return inDrierAir.valueOf(lot) - carry.valueOf(lot);
  }
}
