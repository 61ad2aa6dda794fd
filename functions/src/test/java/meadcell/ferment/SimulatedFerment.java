package meadcell.ferment;

import java.util.Arrays;
import java.util.Random;
import meadcell.density.EthanolWater;
import meadcell.density.Mixture;

/**
 * A ferment as rate equations make it, and no curve that we fit: yeast that grows by Monod's law
 * until its nitrogen is gone, sugar that it turns at a rate falling with the alcohol (Levenspiel's
 * (1 − E/Eₘ)ⁿ), a second sugar that it takes slowly. The gravity follows from sugar and alcohol.
 * The spans of the parameters are from memory.
 */
final class SimulatedFerment {
  private static final double HOURS = 1;

  /** The end is where it comes to in so many times the days of its first nine tenths. */
  private static final int LENGTH = 30;

  private final Course course;
  private final double stepsPerDay;
  private double coldFrom = Double.POSITIVE_INFINITY;
  private double coldTo = Double.POSITIVE_INFINITY;
  private double coldPace;
  private double stopsAt = Double.POSITIVE_INFINITY;

  private SimulatedFerment(Yeast yeast, double daysToNineTenths) {
    course = yeast.ferment();
    stepsPerDay = course.steps() / (double) LENGTH / daysToNineTenths;
  }

  /** g/L after each step of {@link #HOURS} at its own pace. */
  private record Course(double[] extract, double[] ethanol) {
    int steps() {
      return extract.length;
    }

    double gravity(double step) {
      double place = Math.min(step, steps() - 1.001);
      int i = (int) place;
      return Mixture.gravity(
          extract[i] + (place - i) * (extract[i + 1] - extract[i]),
          (ethanol[i] + (place - i) * (ethanol[i + 1] - ethanol[i]))
              / EthanolWater.PURE_ETHANOL_DENSITY_20);
    }

    /** The first step at which this share of the fall is done. */
    int stepOf(double share, int steps) {
      double level = gravity(0) + share * (gravity(steps - 1) - gravity(0));
      int before = 0;
      int after = steps - 1;
      while (after - before > 1) {
        int middle = (before + after) / 2;
        if (gravity(middle) > level) {
          before = middle;
        } else {
          after = middle;
        }
      }
      return after;
    }
  }

  /** One sugar; inhibition by alcohol about in proportion. */
  static SimulatedFerment monod(Random random, double daysToNineTenths) {
    return new SimulatedFerment(new Yeast(random, false), daysToNineTenths);
  }

  /**
   * Inhibition that grows with about the square of the alcohol, and some sugar that goes slowly.
   */
  static SimulatedFerment longTail(Random random, double daysToNineTenths) {
    return new SimulatedFerment(new Yeast(random, true), daysToNineTenths);
  }

  SimulatedFerment withColdSpell(double from, double to, double pace) {
    coldFrom = from;
    coldTo = to;
    coldPace = pace;
    return this;
  }

  SimulatedFerment stoppedAt(double day) {
    stopsAt = day;
    return this;
  }

  double gravity(double day) {
    double reached = Math.min(day, stopsAt);
    double cold = Math.max(0, Math.min(reached, coldTo) - coldFrom);
    return course.gravity((reached - (1 - coldPace) * cold) * stepsPerDay);
  }

  double fallPerDay(double day) {
    double moment = 4 / stepsPerDay;
    return (gravity(day - moment) - gravity(day)) / moment;
  }

  double end() {
    return course.gravity(course.steps());
  }

  /** When this share of its fall is done, were there no cold spell. */
  double dayOf(double share) {
    return course.stepOf(share, course.steps()) / stepsPerDay;
  }

  private static final class Yeast {
    private final double growth;
    private final double mostCells;
    private final double uptake;
    private final double halfSaturation;
    private final double mostEthanol;
    private final double inhibition;
    private final double yield;
    private final double glycerol;
    private final double slowPace;
    private double cells;
    private double sugar;
    private double slowSugar;
    private double rest;
    private double ethanol;

    Yeast(Random random, boolean longTail) {
      growth = between(random, 0.04, 0.2);
      mostCells = between(random, 1.5, 6);
      uptake = between(random, 0.3, 1.5);
      halfSaturation = between(random, 1, 15);
      mostEthanol = between(random, 95, 150);
      inhibition = longTail ? between(random, 1.5, 2.5) : between(random, 0.5, 1.5);
      yield = between(random, 0.45, 0.485);
      glycerol = between(random, 0.04, 0.1);
      slowPace = between(random, 0.03, 0.12);
      cells = between(random, 0.1, 0.8);
      double solids = between(random, 150, 330);
      rest = between(random, 0.05, 0.13) * solids;
      slowSugar = longTail ? between(random, 0.02, 0.06) * solids : 0;
      sugar = solids - rest - slowSugar;
    }

    private void step() {
      double alcohol = Math.pow(Math.max(0, 1 - ethanol / mostEthanol), inhibition);
      double fed = sugar / (halfSaturation + sugar);
      double pace = HOURS * uptake * cells * alcohol;
      double sugarLeft = sugar / (1 + pace / (halfSaturation + sugar));
      double slowLeft = slowSugar / (1 + slowPace * pace / (halfSaturation + slowSugar));
      double eaten = sugar - sugarLeft + slowSugar - slowLeft;
      cells += HOURS * growth * cells * (1 - cells / mostCells) * alcohol * fed;
      sugar = sugarLeft;
      slowSugar = slowLeft;
      ethanol += yield * eaten;
      rest += glycerol * yield * eaten;
    }

    Course ferment() {
      double[] extracts = new double[1024];
      double[] ethanols = new double[1024];
      for (int i = 0; ; i++) {
        if (i == extracts.length) {
          int length = LENGTH * new Course(extracts, ethanols).stepOf(0.9, i);
          if (length <= i) {
            return new Course(Arrays.copyOf(extracts, length), Arrays.copyOf(ethanols, length));
          }
          extracts = Arrays.copyOf(extracts, 2 * i);
          ethanols = Arrays.copyOf(ethanols, 2 * i);
        }
        extracts[i] = sugar + slowSugar + rest;
        ethanols[i] = ethanol;
        step();
      }
    }
  }

  static double between(Random random, double least, double most) {
    return least + (most - least) * random.nextDouble();
  }
}
