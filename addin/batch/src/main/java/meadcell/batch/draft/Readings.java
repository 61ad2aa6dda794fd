package meadcell.batch.draft;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Figures;
import meadcell.batch.book.Value;
import meadcell.batch.plan.Concept;
import meadcell.batch.plan.Concept.Scale;
import meadcell.batch.plan.Header;
import meadcell.batch.plan.Reading;
import meadcell.batch.plan.Vocabulary;
import meadcell.batch.plan.Vocabulary.Meaning;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Unit;

/** The values below a header or beside a label, and whether they bear its name out. */
final class Readings {
  /** So many must be what the name says; the rest are slips, which filling leaves out. */
  private static final double MOST = 0.8;

  /** A gravity read again scatters less (common practice, no source). */
  private static final double SCATTER = 0.004;

  /** A ferment that has begun has taken more than this (common practice, no source). */
  private static final double FALL = 0.01;

  private static final double POINTS_PER_BRIX = 4;

  /** °Bx: a must has more, and a refractometer never shows less in what was one. */
  private static final double MUST = 10;

  private static final double LOWEST_REFRACTION = 2;
  private static final double THOUSANDFOLD = 2;

  private final Catalogue catalogue;
  private final List<Double> numbers = new ArrayList<>();
  private final Set<String> different = new HashSet<>();
  private int typed;
  private int withTemperature;
  private int dates;
  private int filled;

  Readings(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  void add(CellContent content, String inline) {
    if (content.isBlank()) {
      return;
    }
    filled++;
    different.add(content.value().toString().strip());
    if (content.value() instanceof Value.Number number) {
      numbers.add(number.number());
      dates += content.look() == CellContent.Look.DATE ? 1 : 0;
      return;
    }
    String text = inline == null ? content.typedText() : inline;
    if (text == null) {
      return;
    }
    Reading reading = Reading.of(text);
    if (reading.isUnderstood() && reading.unit().isEmpty()) {
      numbers.add(Double.valueOf(reading.number()));
    } else if (reading.isUnderstood() || isGravity(text)) {
      typed++;
    }
    withTemperature += isTaken("GRAVITY.READTEMPERATURE", text) ? 1 : 0;
  }

  private boolean isGravity(String text) {
    return isTaken("GRAVITY.READ", Reading.withoutApproximately(text));
  }

  private boolean isTaken(String function, String text) {
    try {
      catalogue.get(function).call(text);
      return true;
    } catch (Refusal notOne) {
      return false;
    }
  }

  int count() {
    return numbers.size() + typed;
  }

  boolean areDates() {
    return dates > MOST * filled && filled > 0;
  }

  boolean areRising() {
    for (int i = 1; i < numbers.size(); i++) {
      if (numbers.get(i) < numbers.get(i - 1)) {
        return false;
      }
    }
    return numbers.size() > 1;
  }

  boolean haveTemperature() {
    return withTemperature > MOST * filled && withTemperature > 0;
  }

  /** How many different values there are. */
  int different() {
    return different.size();
  }

  /** Where a gravity rises by more than its readings scatter; empty where it does not. */
  private String rise(Concept concept, Unit unit) {
    boolean isGravity = concept == Concept.GRAVITY || concept == Concept.TRUE_GRAVITY;
    double scatter = unit == Unit.GRAVITY ? SCATTER : 1000 * SCATTER / POINTS_PER_BRIX;
    for (int i = 1; isGravity && i < numbers.size(); i++) {
      double before = inRange(numbers.get(i - 1), unit);
      double after = inRange(numbers.get(i), unit);
      if (after - before > scatter) {
        return "it rises from "
            + Figures.of(before)
            + " to "
            + Figures.of(after)
            + ": was honey or fruit added, or does another batch begin? Strength and sugar then need"
            + " another original gravity.";
      }
    }
    return "";
  }

  /** Whether these gravities fall as those of a ferment do. */
  boolean fall(Unit unit) {
    double fall = unit == Unit.GRAVITY ? FALL : 1000 * FALL / POINTS_PER_BRIX;
    return numbers.size() > 1
        && inRange(numbers.get(0), unit) - inRange(numbers.get(numbers.size() - 1), unit) > fall;
  }

  /**
   * Whether these degrees Brix end so low that a hydrometer must have shown them: a refractometer
   * reads the alcohol of a dry mead as about a third of the must's degrees.
   */
  boolean areOfHydrometer() {
    double least = numbers.stream().mapToDouble(n -> n).min().orElse(Double.NaN);
    return least < LOWEST_REFRACTION && numbers.get(0) > MUST && fall(Unit.BRIX);
  }

  private static double inRange(double number, Unit unit) {
    return unit == Unit.GRAVITY && number > THOUSANDFOLD ? number / 1000 : number;
  }

  /**
   * What they are, by name and values together.
   *
   * @param unit the unit they are in, or null
   * @param doubt what a person should look at, or empty
   * @param contradiction why they are not what the name says, or empty
   */
  record Verdict(Unit unit, String doubt, String contradiction) {}

  Verdict verdict(Meaning meaning, Header header, boolean isUnitWritten) {
    Verdict said = byNameAndRange(meaning, header, isUnitWritten);
    String rise = rise(meaning.concept(), said.unit);
    return said.doubt.isEmpty() ? new Verdict(said.unit, rise, said.contradiction) : said;
  }

  private Verdict byNameAndRange(Meaning meaning, Header header, boolean isUnitWritten) {
    Concept concept = meaning.concept();
    if (!header.strange().isEmpty() && !Vocabulary.isWord(header.name())) {
      return new Verdict(null, "", "the unit \"" + header.strange() + "\" is not known.");
    }
    if (concept.scales().isEmpty() || numbers.isEmpty()) {
      return new Verdict(meaning.unit(), "", "");
    }
    if (meaning.unit() != null) {
      Optional<Scale> scale = concept.in(meaning.unit());
      boolean isHeld = scale.isPresent() && holds(scale.get());
      String named = isUnitWritten ? "its unit" : "its name";
      return new Verdict(
          meaning.unit(),
          meaning.isWeak() ? weak(concept) : "",
          isHeld ? "" : range() + " is not what " + named + " says. " + question(concept));
    }
    List<Scale> fitting = concept.scales().stream().filter(this::holds).toList();
    boolean isGravity =
        concept.scales().get(0).unit() == Unit.GRAVITY
            && !fitting.isEmpty()
            && fitting.get(0).unit() == Unit.GRAVITY;
    if (fitting.isEmpty() || concept.scales().get(0).unit() == Unit.GRAVITY && !isGravity) {
      return new Verdict(null, "", range() + " does not fit its name. " + question(concept));
    }
    Unit first = fitting.get(0).unit();
    if (fitting.size() == 1 || isGravity) {
      return new Verdict(first, meaning.isWeak() && !isGravity ? weak(concept) : "", "");
    }
    return new Verdict(
        first,
        "its unit is not written; "
            + range()
            + " may be "
            + String.join(" or ", fitting.stream().map(scale -> scale.unit().word()).toList())
            + ", taken as "
            + first.word()
            + ".",
        "");
  }

  private boolean holds(Scale scale) {
    long held = numbers.stream().filter(number -> scale.holds(List.of(number))).count();
    return held >= MOST * numbers.size();
  }

  private static String weak(Concept concept) {
    return "its name may mean something else than " + concept.word() + ".";
  }

  private String question(Concept concept) {
    List<String> units =
        concept.scales().stream()
            .filter(scale -> scale.unit() != null && holds(scale))
            .map(scale -> scale.unit().word())
            .toList();
    return units.isEmpty()
        ? "What is it?"
        : "Is it in " + String.join(" or ", units) + "? Then write that into its header.";
  }

  /** {@code 12 to 24}. */
  private String range() {
    double least = numbers.stream().mapToDouble(n -> n).min().orElseThrow();
    double most = numbers.stream().mapToDouble(n -> n).max().orElseThrow();
    String from = Figures.of(least);
    return least == most ? from : from + " to " + Figures.of(most);
  }
}
