package meadcell.blend;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Rows;
import meadcell.transfers.Step;
import meadcell.transfers.TransferLog;

/** What every vessel's liquid took up of oxygen, way by way, mg in a litre. */
final class Uptake {
  private static final double DAYS_PER_YEAR = 365.25;

  /** Wood for each litre of the barrel that rates are told of, cm²/L: that of BARREL.OAKRATIO. */
  private static final double REFERENCE_AREA = 85.86;

  /** Less than this part of the content is a topping (common practice, no source). */
  private static final double TOPPING = 0.1;

  private final double firstDay;
  private final Map<Way, Double> rates;
  private final Map<Integer, AirRow> air = new HashMap<>();
  private final List<Map<Way, Double>> taken = new ArrayList<>();
  private final double[] volumeL;
  private final double[] passedUntil;
  private final Set<Integer> open = new HashSet<>();

  /**
   * @param firstDay what comes in after it counts
   */
  Uptake(TransferLog log, Rows<AirRow> vessels, double firstDay, Map<Way, Double> rates) {
    this.firstDay = Math.floor(firstDay);
    this.rates = rates;
    for (AirRow row : vessels) {
      OptionalInt vessel = log.indexOf(row.vessel());
      if (vessel.isEmpty()) {
        Misspelt.refuse(log, row.vessel(), "vessels", row.row());
      } else if (air.putIfAbsent(vessel.getAsInt(), row) != null) {
        throw new Refusal(BlendReason.VESSEL_TWICE)
            .with("row", row.row())
            .with("vessel", row.vessel());
      }
    }
    for (int vessel = 0; vessel < log.size(); vessel++) {
      taken.add(new EnumMap<>(Way.class));
    }
    volumeL = new double[log.size()];
    passedUntil = new double[log.size()];
    double day = 0;
    for (Step step : log.steps()) {
      if (Math.floor(step.day()) > day) {
        close(day);
        day = Math.floor(step.day());
      }
      pass(step.to(), day);
      pass(step.from(), day);
      if (step.kind() != Step.Kind.GAUGED) {
        move(step, day);
      }
      volumeL[step.to()] =
          step.kind() == Step.Kind.GAUGED
              ? step.row().volumeL()
              : step.heldL() + step.row().volumeL();
      open.add(step.to());
      if (step.kind() == Step.Kind.MOVED) {
        volumeL[step.from()] = step.leftL();
        open.add(step.from());
      }
    }
    close(day);
    for (int vessel = 0; vessel < volumeL.length; vessel++) {
      pass(vessel, Math.floor(log.day()));
    }
  }

  double of(int vessel, Way way) {
    return taken.get(vessel).getOrDefault(way, 0.0);
  }

  private void move(Step step, double day) {
    int to = step.to();
    double moved = step.row().volumeL();
    double share = moved / (step.heldL() + moved);
    boolean came = step.kind() == Step.Kind.CAME;
    for (Way way : Way.values()) {
      double before = step.heldL() == 0 ? 0 : of(to, way);
      double in = came ? 0 : of(step.from(), way);
      taken.get(to).put(way, (1 - share) * before + share * in);
    }
    AirRow target = air.get(to);
    if (target != null && target.bottles()) {
      add(to, Way.FILLING, share, day);
    } else if (step.heldL() > 0 && share < TOPPING) {
      add(to, Way.TOPPING, 1, day);
    } else if (!came) {
      add(to, Way.RACKING, share, day);
    }
  }

  private void add(int vessel, Way way, double times, double day) {
    if (day > firstDay) {
      taken.get(vessel).merge(way, times * rates.get(way), Double::sum);
    }
  }

  /** Through the wood since the last row. */
  private void pass(int vessel, double day) {
    AirRow row = air.get(vessel);
    double days = day - Math.max(firstDay, passedUntil[vessel]);
    if (row != null && volumeL[vessel] > 0 && days > 0) {
      add(vessel, Way.WOOD, row.areaCm2PerL() / REFERENCE_AREA * days / DAYS_PER_YEAR, day);
    }
    passedUntil[vessel] = day;
  }

  /** The headspaces that are left when the vessels are closed for the night. */
  private void close(double day) {
    for (int vessel : open) {
      AirRow row = air.get(vessel);
      if (row != null && row.capacityL().isPresent() && volumeL[vessel] > 0) {
        double headspaceL = Math.max(0, row.capacityL().getAsDouble() - volumeL[vessel]);
        add(vessel, Way.OPENING, headspaceL / volumeL[vessel], day);
      }
    }
    open.clear();
  }
}
