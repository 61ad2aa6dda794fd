package meadcell.blend;

import java.util.HashMap;
import java.util.Map;
import meadcell.blend.Analyses.Analysis;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.transfers.Step;
import meadcell.transfers.TransferLog;

/**
 * Whether what a vessel holds is at rest, so that its sugar and strength can be carried. It is not:
 *
 * <ul>
 *   <li>from the day on which something fermentable comes in, until an analysis;
 *   <li>before an analysis that shows a ferment against what was carried, back to the analysis or
 *       filling before it;
 *   <li>after an analysis that shows one against an earlier analysis of the same ferment, until the
 *       next that shows none, or sugar that no longer matters.
 * </ul>
 *
 * A log is passed twice: what an analysis shows of the days before it is known only then.
 */
final class Rest implements Carry.Watch {
  /**
   * Sugar up to which a mead is dry, g/L: EU and OIV (from memory). Strength from which a drink
   * counts as alcoholic, % vol: Regulation (EU) 1169/2011, article 28.
   */
  private static final double DRY = 4;

  private static final double ALCOHOLIC = 1.2;

  /** A change of so many standard uncertainties is none by chance, but once in 700 times. */
  private static final double COVERAGE = 3;

  /** Relative uncertainty of a mixing ratio: two volumes of 0.5 %. */
  private static final double OF_RATIO = 0.007;

  /** Since when, and what told so. */
  private record Since(double day, Refusal refusal) {}

  private final TransferLog log;
  private final Property property;
  private final Analyses own;
  private final Analyses strengths;
  private final Analyses sugars;

  /** By the analysis, or the number of the step, after which a vessel is not at rest. */
  private final Map<Object, Since> known;

  private final Map<Object, Since> found = new HashMap<>();

  private final Since[] since;
  private final boolean[] worked;
  private final boolean[] seen;
  private final double[] doubt;
  private final Object[] begunBy;
  private final double[] begunOn;
  private double valueBefore;

  Rest(TransferLog log, Property property, Analyses strengths, Analyses sugars) {
    this(log, property, strengths, sugars, Map.of());
  }

  private Rest(
      TransferLog log,
      Property property,
      Analyses strengths,
      Analyses sugars,
      Map<Object, Since> known) {
    this.log = log;
    this.property = property;
    this.strengths = strengths;
    this.sugars = sugars;
    this.known = known;
    own = property.equals(Property.STRENGTH) ? strengths : sugars;
    since = new Since[log.size()];
    worked = new boolean[log.size()];
    seen = new boolean[log.size()];
    doubt = new double[log.size()];
    begunBy = new Object[log.size()];
    begunOn = new double[log.size()];
  }

  /** {@return a second pass, which knows what the first has found} */
  Rest again() {
    return new Rest(log, property, strengths, sugars, found);
  }

  void refuseRestless(int lot, double day) {
    if (since[lot] != null && since[lot].day() < Math.floor(day)) {
      throw since[lot].refusal();
    }
  }

  @Override
  public void analysed(Analysis analysis, double carried) {
    int vessel = analysis.lot();
    boolean shown = shows(analysis, carried);
    if (shown) {
      Refusal refusal =
          refusal(BlendReason.CHANGED_BETWEEN, vessel)
              .with("since", begunOn[vessel], Quantity.DATE)
              .with("day", analysis.day(), Quantity.DATE)
              .with("before", carried, Quantity.NUMBER, 3)
              .with("after", analysis.value(), Quantity.NUMBER, 3);
      found.put(begunBy[vessel], new Since(begunOn[vessel], refusal));
    }
    since[vessel] = known.get(analysis);
    if (shown && worked[vessel] && seen[vessel] && !isDry(vessel, analysis.day())) {
      Refusal refusal =
          refusal(BlendReason.STILL_CHANGES, vessel)
              .with("day", analysis.day(), Quantity.DATE)
              .with("before", carried, Quantity.NUMBER, 3)
              .with("after", analysis.value(), Quantity.NUMBER, 3)
              .with("dry", DRY, Quantity.GRAM_PER_LITRE);
      since[vessel] = new Since(analysis.day(), refusal);
    }
    seen[vessel] = true;
    doubt[vessel] = analysis.uncertainty();
    begunBy[vessel] = analysis;
    begunOn[vessel] = analysis.day();
  }

  /** What it was may ferment. */
  @Override
  public void added(int vessel) {
    worked[vessel] = true;
    seen[vessel] = false;
  }

  private boolean isDry(int vessel, double day) {
    Analysis sugar = sugars.latest(vessel, day);
    return sugar != null && Math.floor(sugar.day()) == Math.floor(day) && sugar.value() <= DRY;
  }

  /** In a ferment, sugar falls and strength rises. */
  private boolean shows(Analysis analysis, double carried) {
    double change = analysis.value() - carried;
    double byFerment = property.equals(Property.STRENGTH) ? change : -change;
    return byFerment > COVERAGE * Math.hypot(analysis.uncertainty(), doubt[analysis.lot()]);
  }

  private Refusal refusal(BlendReason reason, int vessel) {
    return new Refusal(reason).with("property", property.name()).with("vessel", log.name(vessel));
  }

  @Override
  public void step(Carry carry, Step step) {
    valueBefore = carry.valueOf(step.to());
  }

  @Override
  public void done(Carry carry, int position, Step step) {
    int to = step.to();
    double value = carry.valueOf(to);
    if (step.kind() == Step.Kind.GAUGED) {
      // how much of the change by evaporation is true hangs on the air
      doubt[to] +=
          Double.isNaN(value) ? 0 : value * Math.abs(1 - step.row().volumeL() / step.heldL());
      return;
    }
    boolean came = step.kind() == Step.Kind.CAME;
    if (step.heldL() == 0) {
      since[to] = known.get(position);
      worked[to] = false;
      seen[to] = false;
      doubt[to] = 0;
      begunBy[to] = position;
      begunOn[to] = step.day();
    }
    double share = step.row().volumeL() / (step.heldL() + step.row().volumeL());
    double change = step.heldL() == 0 ? 0 : Math.abs(value - valueBefore);
    doubt[to] = (1 - share) * doubt[to] + share * doubtOf(step) + OF_RATIO * change;
    if (came && isFermentable(step.from(), step.day())) {
      worked[to] = true;
      seen[to] = false;
      Refusal refusal =
          refusal(BlendReason.FERMENTABLE_CAME, to)
              .with("liquid", log.name(step.from()))
              .with("day", step.day(), Quantity.DATE);
      keepEarlier(to, new Since(step.day(), refusal));
    } else if (!came && since[step.from()] != null) {
      worked[to] = true;
      keepEarlier(to, since[step.from()]);
    }
  }

  private double doubtOf(Step step) {
    if (step.kind() == Step.Kind.MOVED) {
      return doubt[step.from()];
    }
    Analysis source = own.latest(step.from(), step.day());
    return source == null ? 0 : source.uncertainty();
  }

  private void keepEarlier(int vessel, Since other) {
    if (since[vessel] == null || other.day() < since[vessel].day()) {
      since[vessel] = other;
    }
  }

  /** What has no alcohol, and sugar for all that analyses say. */
  private boolean isFermentable(int source, double day) {
    Analysis strength = strengths.latest(source, day);
    Analysis sugar = sugars.latest(source, day);
    boolean alcoholic = strength != null && strength.value() >= ALCOHOLIC;
    boolean dry = sugar != null && sugar.value() <= DRY;
    return !alcoholic && !dry;
  }
}
