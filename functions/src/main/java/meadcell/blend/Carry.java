package meadcell.blend;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import meadcell.blend.Additions.Addition;
import meadcell.blend.Analyses.Analysis;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.transfers.Step;
import meadcell.transfers.TransferLog;

/**
 * Carries a property through a log, and says how a lot's value hangs on every analysis and on every
 * row: what was done is written on a tape, which {@link Slopes} reads backwards.
 *
 * <p>What a gauge finds missing has evaporated. What it finds beyond the account puts back what
 * evaporated since the last analysis, which was too much; what is still beyond scales the content.
 *
 * <p>An addition makes unknown what its vessel holds at any time of that day, or gets first after
 * it, until an analysis of a later day.
 */
final class Carry {
  private final Amounts amounts;
  private final Analyses analyses;
  private final Additions additions;
  private final TransferLog log;
  private final Map<Double, double[]> ofSources = new HashMap<>();
  private final List<Entry> tape = new ArrayList<>();

  /** By vessel: what a litre holds, null where that is unknown, and why that is. */
  private final double[][] perLitre;

  private final Unknown[] unknown;

  /** By vessel: the last addition that was not measured since, and whether it met a liquid. */
  private final Addition[] added;

  private final boolean[] isMixedIn;
  private final double[] volumeL;
  private final double[] evaporatedL;

  /** Who is told what happens, in its order. */
  interface Watch {
    /** An analysis before it replaces what was carried, NaN if that is unknown. */
    default void analysed(Analysis analysis, double carried) {}

    /** Something was added to a vessel. */
    default void added(int vessel) {}

    /** A step is to come. */
    default void step(Carry carry, Step step) {}

    /** It has. */
    default void done(Carry carry, int position, Step step) {}
  }

  /** What was done, to be followed back. */
  interface Entry {
    void back(Slopes slopes);
  }

  /**
   * What makes a property unknown.
   *
   * @param lot index of the liquid or vessel
   * @param addition what was added to it; null where it came without an analysis
   */
  private record Unknown(int lot, Addition addition) {}

  Carry(
      TransferLog log,
      Analyses analyses,
      Additions additions,
      Amounts amounts,
      double endOfDay,
      Watch watch) {
    this.log = log;
    this.amounts = amounts;
    this.analyses = analyses;
    this.additions = additions;
    perLitre = new double[log.size()][];
    unknown = new Unknown[log.size()];
    added = new Addition[log.size()];
    isMixedIn = new boolean[log.size()];
    volumeL = new double[log.size()];
    evaporatedL = new double[log.size()];
    List<Step> steps = log.steps();
    Map<Integer, List<Analysis>> byPosition = analyses.byPosition(steps);
    Deque<Addition> toCome = new ArrayDeque<>(additions.byDay());
    double lastDay = Math.floor(endOfDay);
    for (int i = 0; i <= steps.size(); i++) {
      for (Analysis analysis : byPosition.getOrDefault(i, List.of())) {
        if (Math.floor(analysis.day()) <= lastDay) {
          addUpTo(analysis.day(), toCome, watch);
          analyse(analysis, watch);
        }
      }
      if (i == steps.size() || Math.floor(steps.get(i).day()) > lastDay) {
        addUpTo(lastDay, toCome, watch);
        break;
      }
      Step step = steps.get(i);
      addUpTo(step.day(), toCome, watch);
      watch.step(this, step);
      if (step.kind() == Step.Kind.GAUGED) {
        gauge(step);
      } else {
        mix(step);
      }
      watch.done(this, i, step);
    }
  }

  double volumeL(int vessel) {
    return volumeL[vessel];
  }

  boolean isKnown(int vessel) {
    return perLitre[vessel] != null;
  }

  /** {@return why a vessel's property is unknown} */
  Refusal refusal(Property property, int vessel) {
    Addition addition = unknown[vessel].addition();
    String lot = log.name(unknown[vessel].lot());
    Refusal refusal =
        addition == null
            ? new Refusal(BlendReason.NOT_ANALYSED).with("liquid", lot)
            : new Refusal(BlendReason.ADDED)
                .with("vessel", lot)
                .with("day", addition.day(), Quantity.DATE)
                .with("row", addition.row());
    return refusal.with("property", property.name());
  }

  /** {@return what a litre of the account holds} */
  double[] perLitre(int vessel) {
    return perLitre[vessel];
  }

  double valueOf(int vessel) {
    return perLitre[vessel] == null ? Double.NaN : amounts.value(perLitre[vessel]);
  }

  /** {@return how the value of a lot hangs on what it was carried from} */
  Slopes slopes(int lot) {
    Slopes slopes = new Slopes(volumeL.length);
    slopes.perLitre[lot] = Slopes.gradient(amounts::value, perLitre[lot]);
    for (int i = tape.size() - 1; i >= 0; i--) {
      tape.get(i).back(slopes);
    }
    return slopes;
  }

  private void addUpTo(double day, Deque<Addition> toCome, Watch watch) {
    while (!toCome.isEmpty() && toCome.peek().day() <= day) {
      Addition addition = toCome.pop();
      int vessel = addition.lot();
      added[vessel] = addition;
      isMixedIn[vessel] = volumeL[vessel] > 0;
      makeUnknown(vessel);
      watch.added(vessel);
    }
  }

  private void makeUnknown(int vessel) {
    perLitre[vessel] = null;
    unknown[vessel] = new Unknown(vessel, added[vessel]);
  }

  private void analyse(Analysis analysis, Watch watch) {
    int vessel = analysis.lot();
    if (added[vessel] == null || added[vessel].day() < Math.floor(analysis.day())) {
      added[vessel] = null;
      watch.analysed(analysis, valueOf(vessel));
      replace(analysis);
    }
  }

  private void replace(Analysis analysis) {
    int vessel = analysis.lot();
    if (volumeL[vessel] == 0 && !analyses.isSource(vessel)) {
      throw new Refusal(BlendReason.ANALYSIS_OF_EMPTY)
          .with("row", analysis.row())
          .with("lot", log.name(vessel));
    }
    if (volumeL[vessel] > 0) {
      perLitre[vessel] = amounts.of(analysis.value());
      evaporatedL[vessel] = 0;
      tape.add(
          slopes -> {
            slopes.analysed(analysis, amounts, slopes.perLitre[vessel]);
            slopes.perLitre[vessel] = null;
            slopes.evaporatedL[vessel] = 0;
          });
    }
  }

  private double[] of(Analysis source) {
    return source == null ? null : ofSources.computeIfAbsent(source.value(), amounts::of);
  }

  private void mix(Step step) {
    int from = step.from();
    int to = step.to();
    boolean came = step.kind() == Step.Kind.CAME;
    Addition changed = came ? additions.latest(from, step.day()) : null;
    Analysis source = came ? analyses.latest(from, step.day()) : null;
    if (changed != null && source != null && changed.day() >= Math.floor(source.day())) {
      source = null;
    }
    Unknown why = came ? new Unknown(from, changed) : unknown[from];
    double[] in = came ? of(source) : perLitre[from];
    double[] before = step.heldL() == 0 ? in : perLitre[to];
    if (step.heldL() == 0) {
      evaporatedL[to] = 0;
    }
    if (step.heldL() == 0 || before != null) {
      unknown[to] = why;
    }
    double moved = step.row().volumeL();
    double sum = step.heldL() + moved;
    double[] after = null;
    if (in != null && before != null && sum > 0) {
      after = new double[in.length];
      for (int k = 0; k < after.length; k++) {
        after[k] = (before[k] * step.heldL() + in[k] * moved) / sum;
      }
    }
    perLitre[to] = after;
    volumeL[to] = sum;
    if (!came) {
      volumeL[from] = step.leftL();
    }
    tape.add(new Mixed(step, came, source, amounts, in, before, after));
    meetAddition(step);
  }

  /** What comes in on the day of an addition, or first after it. */
  private void meetAddition(Step step) {
    int to = step.to();
    if (added[to] == null) {
      return;
    }
    if (added[to].day() == Math.floor(step.day()) || !isMixedIn[to]) {
      isMixedIn[to] = true;
      makeUnknown(to);
    } else if (step.heldL() == 0) {
      added[to] = null;
    }
  }

  /** Liquid of a source or of another vessel into what a vessel held. */
  private record Mixed(
      Step step,
      boolean came,
      Analysis source,
      Amounts amounts,
      double[] in,
      double[] before,
      double[] after)
      implements Entry {
    @Override
    public void back(Slopes slopes) {
      int from = step.from();
      int to = step.to();
      double held = step.heldL();
      double moved = step.row().volumeL();
      double[] slope = slopes.perLitre[to];
      double byMoved = slopes.volumeL[to];
      double byHeld = slopes.volumeL[to];
      slopes.perLitre[to] = null;
      if (slope != null && after != null) {
        double[] bySource = new double[slope.length];
        double[] byBefore = new double[slope.length];
        for (int k = 0; k < slope.length; k++) {
          byMoved += slope[k] * (in[k] - after[k]) / (held + moved);
          byHeld += slope[k] * (before[k] - after[k]) / (held + moved);
          bySource[k] = slope[k] * moved / (held + moved);
          byBefore[k] = slope[k] * held / (held + moved);
        }
        if (held > 0) {
          slopes.perLitre[to] = byBefore;
        }
        if (came) {
          slopes.analysed(source, amounts, bySource);
        } else {
          slopes.add(from, bySource);
        }
      }
      slopes.volumeL[to] = held > 0 ? byHeld : 0;
      slopes.evaporatedL[to] = held > 0 ? slopes.evaporatedL[to] : 0;
      if (!came) {
        if (step.leftL() > 0) {
          byMoved -= slopes.volumeL[from];
        } else {
          slopes.volumeL[from] = 0;
          slopes.evaporatedL[from] = 0;
        }
      }
      slopes.row(step.row(), byMoved);
    }
  }

  private void gauge(Step step) {
    int vessel = step.to();
    double account = step.heldL();
    double found = step.row().volumeL();
    double[] before = perLitre[vessel];
    double gone = evaporatedL[vessel];
    boolean scaled = found - account > gone;
    double[] after = null;
    if (found > 0 && account > 0 && before != null) {
      after = amounts.evaporated(before, account, scaled ? account + gone : found);
    }
    perLitre[vessel] = after;
    volumeL[vessel] = found;
    evaporatedL[vessel] = found == 0 || scaled ? 0 : gone + account - found;
    tape.add(new Gauged(step, amounts, before, after, scaled, gone));
  }

  /** A measured content. */
  private record Gauged(
      Step step, Amounts amounts, double[] before, double[] after, boolean scaled, double gone)
      implements Entry {
    @Override
    public void back(Slopes slopes) {
      int vessel = step.to();
      double account = step.heldL();
      double found = step.row().volumeL();
      double[] slope = slopes.perLitre[vessel];
      double byFound = slopes.volumeL[vessel];
      double byAccount = 0;
      double byGone = scaled ? 0 : slopes.evaporatedL[vessel];
      if (found == 0) {
        byFound = 0;
        byGone = 0;
        slope = null;
      }
      if (slope != null && after != null) {
        double left = scaled ? account + gone : found;
        double[] inputs = Arrays.copyOf(before, before.length + 2);
        inputs[before.length] = account;
        inputs[before.length + 1] = left;
        double[] wanted = slope;
        double[] gradient =
            Slopes.gradient(
                x -> {
                  double[] changed =
                      amounts.evaporated(
                          Arrays.copyOf(x, before.length), x[before.length], x[before.length + 1]);
                  double sum = 0;
                  for (int k = 0; k < changed.length; k++) {
                    sum += wanted[k] * changed[k];
                  }
                  return sum;
                },
                inputs);
        slope = Arrays.copyOf(gradient, before.length);
        byAccount += gradient[before.length];
        double byLeft = gradient[before.length + 1];
        if (scaled) {
          byAccount += byLeft;
          byGone += byLeft;
        } else {
          byFound += byLeft;
        }
      }
      if (!scaled && found > 0) {
        byAccount += slopes.evaporatedL[vessel];
        byFound -= slopes.evaporatedL[vessel];
      }
      slopes.perLitre[vessel] = slope;
      slopes.volumeL[vessel] = byAccount;
      slopes.evaporatedL[vessel] = byGone;
      slopes.row(step.row(), byFound);
    }
  }
}
