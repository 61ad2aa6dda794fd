package meadcell.blend;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import meadcell.transfers.Step;
import meadcell.transfers.TransferLog;

/** The analyses of one property, by the lots of a log. */
final class Analyses {
  /**
   * An analysis.
   *
   * @param lot index of its lot
   * @param uncertainty NaN where nothing tells it
   */
  record Analysis(int lot, double day, double value, double uncertainty, int row) {}

  /** Water holds nothing, unless an analysis says so. */
  private static final String WATER = "water";

  private final Map<Integer, TreeMap<Double, Analysis>> byLot = new HashMap<>();
  private final OptionalInt water;
  private final Set<Integer> sources = new HashSet<>();

  /** Of two analyses of a lot and day, the later row counts. */
  Analyses(TransferLog log, Iterable<AnalysisRow> rows, Property property) {
    water = log.indexOf(WATER);
    for (Step step : log.steps()) {
      if (step.kind() == Step.Kind.CAME) {
        sources.add(step.from());
      }
    }
    for (AnalysisRow row : rows) {
      if (property.isNamed(row.property())) {
        OptionalInt lot = log.indexOf(row.lot());
        if (lot.isPresent()) {
          add(lot.getAsInt(), row, property);
        } else {
          Misspelt.refuse(log, row.lot(), "analyses", row.row());
        }
      }
    }
  }

  private void add(int lot, AnalysisRow row, Property property) {
    double value = property.inRange(row);
    byLot
        .computeIfAbsent(lot, l -> new TreeMap<>())
        .put(
            row.day(), new Analysis(lot, row.day(), value, property.uncertaintyOf(row), row.row()));
  }

  /** {@return whether liquid of this name comes from outside the log} */
  boolean isSource(int lot) {
    return sources.contains(lot);
  }

  /** {@return the last analysis of a lot up to the end of a day; null where there is none} */
  Analysis latest(int lot, double day) {
    TreeMap<Double, Analysis> ofLot = byLot.get(lot);
    Map.Entry<Double, Analysis> found =
        ofLot == null ? null : ofLot.lowerEntry(Math.floor(day) + 1);
    if (found == null && water.isPresent() && water.getAsInt() == lot) {
      return new Analysis(lot, day, 0, 0, 0);
    }
    return found == null ? null : found.getValue();
  }

  /**
   * {@return the analyses by the number of steps that went before them} A sample tells what its
   * vessel holds once nothing more comes into it that day, unless both have a time; what is drawn
   * after that is like it.
   */
  Map<Integer, List<Analysis>> byPosition(List<Step> steps) {
    Map<Analysis, Integer> position = new HashMap<>();
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      TreeMap<Double, Analysis> ofLot = byLot.getOrDefault(step.to(), new TreeMap<>());
      for (double day : new double[] {Math.floor(step.day()), step.day()}) {
        if (ofLot.containsKey(day)) {
          position.put(ofLot.get(day), i + 1);
        }
      }
    }
    Map<Integer, List<Analysis>> by = new HashMap<>();
    byLot.values().stream()
        .flatMap(ofLot -> ofLot.values().stream())
        .sorted(Comparator.comparingDouble(Analysis::day))
        .forEach(
            analysis ->
                by.computeIfAbsent(
                        position.getOrDefault(analysis, firstOf(steps, analysis.day())),
                        p -> new ArrayList<>())
                    .add(analysis));
    return by;
  }

  /** {@return how many steps are of earlier days} */
  static int firstOf(List<Step> steps, double day) {
    int low = 0;
    int high = steps.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (steps.get(middle).day() < day) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
