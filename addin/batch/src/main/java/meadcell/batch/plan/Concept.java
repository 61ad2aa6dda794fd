package meadcell.batch.plan;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import meadcell.catalogue.Range;
import meadcell.catalogue.Unit;

/**
 * What a column or a labelled cell of a cellar's log holds, with the units it is kept in and what a
 * cellar can read in each. The limits are wide: a value beyond them is another thing or another
 * unit (common practice, no source).
 */
public enum Concept {
  DATE,
  DAY(new Scale(null, 0, 3000)),
  /** Since the ferment began. */
  HOURS(new Scale(null, 0, 72_000)),
  GRAVITY(
      new Scale(Unit.GRAVITY, 0.98, 1.3),
      new Scale(Unit.BRIX, -5, 50),
      new Scale(Unit.OECHSLE, -20, 220),
      new Scale(Unit.BAUME, -2, 26)),
  TRUE_GRAVITY(new Scale(Unit.GRAVITY, 0.98, 1.3)),
  BRIX(new Scale(Unit.BRIX, -5, 50)),
  /** From the freezing of a mead to where a hydrometer is no more corrected. */
  TEMPERATURE(new Scale(Unit.CELSIUS, -2, 45), new Scale(Unit.FAHRENHEIT, 28, 113)),
  ORIGINAL(
      new Scale(Unit.GRAVITY, 1.02, 1.3),
      new Scale(Unit.BRIX, 5, 50),
      new Scale(Unit.OECHSLE, 20, 220),
      new Scale(Unit.BAUME, 2.5, 26)),
  FINAL(
      new Scale(Unit.GRAVITY, 0.98, 1.2),
      new Scale(Unit.BRIX, -5, 40),
      new Scale(Unit.OECHSLE, -20, 180),
      new Scale(Unit.BAUME, -2, 20)),
  EXPECTED(
      new Scale(Unit.GRAVITY, 0.98, 1.2),
      new Scale(Unit.BRIX, -5, 40),
      new Scale(Unit.OECHSLE, -20, 180),
      new Scale(Unit.BAUME, -2, 20)),
  CALIBRATION(new Scale(Unit.CELSIUS, 4, 30), new Scale(Unit.FAHRENHEIT, 39.2, 86)),
  ABV(new Scale(Unit.PERCENT_VOL, 0, 25)),
  PH(new Scale(null, 2.5, 5)),
  ACIDITY(new Scale(Unit.GRAM_PER_LITRE, 1, 20)),
  FREE_SO2(new Scale(Unit.MILLIGRAM_PER_LITRE, 0, 200)),
  TOTAL_SO2(new Scale(Unit.MILLIGRAM_PER_LITRE, 0, 400)),
  DIP(lengths(2, 130)),
  DROP(lengths(0.1, 60)),
  HEADSPACE(volumes(0, 2000)),
  HEAD(lengths(15, 110)),
  BILGE(lengths(18, 130)),
  LENGTH(lengths(20, 160)),
  STAVE(lengths(1, 8)),
  CAPACITY(volumes(3, 10000)),
  GROSS(masses(5, 5000)),
  EMPTY(masses(2, 1500)),
  TARE(masses(2, 1500)),
  DENSITY(
      new Scale(Unit.KILOGRAM_PER_LITRE, 0.97, 1.25), new Scale(Unit.POUND_PER_GALLON, 8.1, 10.5)),
  VOLUME(volumes(1, 50000)),
  HONEY(masses(0.1, 20000)),
  MOISTURE(new Scale(Unit.PERCENT_VOL, 13, 25)),
  TOPPED(volumes(0, 200)),
  VESSEL,
  BATCH,
  REMARK;

  /** What other trades measure or count, too, or what says nothing of any. */
  private static final Set<Concept> COMMON =
      EnumSet.of(
          DATE,
          DAY,
          HOURS,
          GRAVITY,
          TEMPERATURE,
          PH,
          HEAD,
          LENGTH,
          CAPACITY,
          GROSS,
          EMPTY,
          TARE,
          DENSITY,
          VOLUME,
          VESSEL,
          BATCH,
          REMARK);

  /** Whether the word alone says that a log is of a cellar. */
  public boolean isOfCellars() {
    return !COMMON.contains(this);
  }

  /**
   * A unit that it is kept in, and what can be read in it.
   *
   * @param unit null where it has none
   */
  public record Scale(Unit unit, Range range) {
    private Scale(Unit unit, double least, double most) {
      this(unit, Range.between(least, most));
    }

    private Scale as(Unit other) {
      double ratio = unit.factor() / other.factor();
      return new Scale(other, range.from() * ratio, range.to() * ratio);
    }

    /** Whether all these can be read in it. */
    public boolean holds(List<Double> values) {
      return values.stream().allMatch(this::holds);
    }

    /** A gravity may be written as its thousandfold. */
    private boolean holds(double value) {
      return range.contains(value) || unit == Unit.GRAVITY && range.contains(value / 1000);
    }
  }

  private final List<Scale> scales;

  Concept(Scale... scales) {
    this.scales = List.of(scales);
  }

  /** As people call it: {@code free so2}. */
  public String word() {
    return Vocabulary.usual(this);
  }

  /** Those it is usually kept in; empty where it is no number. */
  public List<Scale> scales() {
    return scales;
  }

  /** The scale of a unit, also of one that it is seldom kept in. */
  public Optional<Scale> in(Unit unit) {
    Optional<Scale> usual = scales.stream().filter(scale -> scale.unit == unit).findFirst();
    return usual.isPresent() || scales.isEmpty() || scales.get(0).unit == null
        ? usual
        : Optional.of(scales.get(0)).filter(first -> first.unit.fits(unit)).map(s -> s.as(unit));
  }

  private static Scale[] lengths(double leastCm, double mostCm) {
    return all(new Scale(Unit.CENTIMETRE, leastCm, mostCm), Unit.INCH, Unit.MILLIMETRE);
  }

  private static Scale[] volumes(double leastL, double mostL) {
    return all(new Scale(Unit.LITRE, leastL, mostL), Unit.GALLON);
  }

  private static Scale[] masses(double leastKg, double mostKg) {
    return all(new Scale(Unit.KILOGRAM, leastKg, mostKg), Unit.POUND);
  }

  private static Scale[] all(Scale metric, Unit... others) {
    return Stream.concat(Stream.of(metric), Stream.of(others).map(metric::as))
        .toArray(Scale[]::new);
  }
}
