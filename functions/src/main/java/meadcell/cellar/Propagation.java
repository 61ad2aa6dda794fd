package meadcell.cellar;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.Refusal;

/**
 * Standard uncertainty of a function's value: JCGM 100:2008, 5.1.2 with the higher-order terms of
 * its note. Terms, each of an independent source in units of its standard uncertainty:
 *
 * <p>u² = Σ f′ᵢ² + ½ Σ f″ᵢ² + Σ_{i&lt;j} f″ᵢⱼ²
 *
 * <p>Differences are taken over √3 standard uncertainties to each side, or over what the function
 * takes of it: at this step a central difference also holds what the third derivative adds where
 * the inputs are normal (Nørgaard, Poulsen, Ravn 2000, Automatica 36:1627; from memory). One
 * instrument that read several arguments is one source: they step together.
 */
final class Propagation {
  /** How often a step that the function does not take is halved. */
  private static final int HALVINGS = 12;

  private static final double STEP = Math.sqrt(3);

  /** A smaller part of a variance is rounding. */
  private static final double NOISE = 1e-20;

  private final ScalarCall call;
  private final double[] values;
  private final double[] uncertainties;
  private final double here;
  private final List<Source> sources = new ArrayList<>();

  /** What moves together, and what the function makes of it, per standard uncertainty. */
  private final class Source {
    final int[] places;
    final double up;
    final double down;
    final double slope;
    final double bend;

    Source(int... places) {
      this.places = places;
      Step above = reach(1);
      Step below = reach(-1);
      up = above.size();
      down = below.size();
      if (up == 0 && down == 0) {
        throw new Refusal(CellarReason.NO_STEP).with("place", places[0] + 1);
      }
      double rise = above.value() - here;
      double fall = here - below.value();
      if (up > 0 && down > 0) {
        double area = up * down * (up + down);
        slope = (down * down * rise + up * up * fall) / area;
        bend = 2 * (down * rise - up * fall) / area;
      } else {
        slope = up > 0 ? rise / up : fall / down;
        bend = 0;
      }
    }

    private Step reach(int direction) {
      double size = STEP;
      for (int i = 0; i <= HALVINGS; i++) {
        Object[] moved = call.copy();
        if (moves(moved, direction * size)) {
          OptionalDouble value = tried(moved);
          if (value.isPresent()) {
            return new Step(size, value.getAsDouble());
          }
        }
        size /= 2;
      }
      return new Step(0, here);
    }

    /** Moves its arguments; whether all stay in their ranges. */
    boolean moves(Object[] arguments, double step) {
      for (int place : places) {
        double value = values[place] + step * uncertainties[place];
        if (!spec(place).takes(value, call.system())) {
          return false;
        }
        arguments[place] = value;
      }
      return true;
    }
  }

  private record Step(double size, double value) {}

  /**
   * @param uncertainties of each argument; 0 for an exact one
   * @param shared places, from 0, that one instrument read
   */
  Propagation(ScalarCall call, double[] uncertainties, List<int[]> shared) {
    this.call = call;
    this.uncertainties = uncertainties;
    this.values = new double[uncertainties.length];
    boolean[] grouped = new boolean[uncertainties.length];
    shared.forEach(
        places -> {
          for (int place : places) {
            grouped[place] = true;
          }
        });
    List<int[]> together = new ArrayList<>(shared);
    for (int place = 0; place < uncertainties.length; place++) {
      if (uncertainties[place] > 0) {
        values[place] = value(place);
        if (!grouped[place]) {
          together.add(new int[] {place});
        }
      }
    }
    here = call.answer(call.copy());
    together.forEach(places -> sources.add(new Source(places)));
  }

  private double value(int place) {
    call.number(place);
    if (call.argument(place) == null) {
      throw new Refusal(CellarReason.UNCERTAIN_BLANK).with("place", place + 1);
    }
    return (Double) call.argument(place);
  }

  private ArgSpec spec(int place) {
    return call.function().args().get(place);
  }

  private OptionalDouble tried(Object[] arguments) {
    try {
      return OptionalDouble.of(call.answer(arguments));
    } catch (Refusal outside) {
      return OptionalDouble.empty();
    }
  }

  /** The mixed second difference of two sources, over the corners that the function takes. */
  private double twist(Source a, Source b) {
    for (double size = 1; size >= Math.scalb(1.0, -HALVINGS); size /= 2) {
      double high = size * a.up;
      double low = -size * a.down;
      double right = size * b.up;
      double left = -size * b.down;
      OptionalDouble highRight = corner(a, high, b, right);
      OptionalDouble highLeft = corner(a, high, b, left);
      OptionalDouble lowRight = corner(a, low, b, right);
      OptionalDouble lowLeft = corner(a, low, b, left);
      if (highRight.isPresent()
          && highLeft.isPresent()
          && lowRight.isPresent()
          && lowLeft.isPresent()) {
        double difference =
            highRight.getAsDouble()
                - highLeft.getAsDouble()
                - lowRight.getAsDouble()
                + lowLeft.getAsDouble();
        return difference / ((high - low) * (right - left));
      }
    }
    throw new Refusal(CellarReason.NO_STEP).with("place", b.places[0] + 1);
  }

  private OptionalDouble corner(Source a, double stepA, Source b, double stepB) {
    Object[] moved = call.copy();
    return a.moves(moved, stepA) && b.moves(moved, stepB) ? tried(moved) : OptionalDouble.empty();
  }

  /** {@return the standard uncertainty, in the unit that the function gives} */
  double uncertainty() {
    double variance = 0;
    for (double part : parts()) {
      variance += part;
    }
    return Math.sqrt(variance);
  }

  /** {@return what each source adds to the variance; what two add only together is halved} */
  private double[] parts() {
    double[] parts = new double[sources.size()];
    for (int i = 0; i < parts.length; i++) {
      Source source = sources.get(i);
      parts[i] += source.slope * source.slope + source.bend * source.bend / 2;
      for (int j = 0; j < i; j++) {
        double twist = twist(source, sources.get(j));
        parts[i] += twist * twist / 2;
        parts[j] += twist * twist / 2;
      }
    }
    return parts;
  }

  /**
   * {@return what each argument adds to the variance, %; below 0 where what it shares with others
   * cancels}
   */
  double[] shares() {
    double[] parts = parts();
    double variance = 0;
    double apart = 0;
    double[] shares = new double[uncertainties.length];
    for (int i = 0; i < parts.length; i++) {
      Source source = sources.get(i);
      int count = source.places.length;
      double rest = parts[i];
      for (int place : source.places) {
        double slope = count == 1 ? source.slope : new Source(place).slope;
        apart += slope * slope;
        shares[place] = slope * source.slope;
        rest -= shares[place];
      }
      for (int place : source.places) {
        shares[place] += rest / count;
      }
      variance += parts[i];
    }
    if (variance <= NOISE * apart) {
      throw new Refusal(CellarReason.NOTHING_MOVES);
    }
    for (int place = 0; place < shares.length; place++) {
      shares[place] *= 100 / variance;
    }
    return shares;
  }
}
