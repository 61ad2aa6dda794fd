package meadcell.batch.fill;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import meadcell.batch.book.BookSheet;
import meadcell.batch.book.CellContent;
import meadcell.batch.book.Figures;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;
import meadcell.batch.plan.Conversion;
import meadcell.batch.plan.PlanFormula;
import meadcell.batch.plan.Reading;
import meadcell.catalogue.Catalogue;
import meadcell.catalogue.Kind;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Unit;
import meadcell.catalogue.Words;

/**
 * What a formula takes in place of a reference.
 *
 * @param formula the operand: the cell itself, converted where its header names another unit, or a
 *     number that was read from a text
 * @param note how it was read, where that is not plain; empty otherwise
 * @param problem why nothing can be taken; empty if something is
 * @param isBlank whether the cell holds nothing
 */
record Input(String formula, String note, String problem, boolean isBlank) {
  // beyond these a number is a gravity on another scale, as 1085 is (common practice, no source)
  private static final double LEAST_GRAVITY = 0.9;
  private static final double MOST_GRAVITY = 1.3;

  /** What programs without the functions show in place of every result. */
  static final Value UNCOMPUTED = new Value.Error("#NAME?");

  private static final Set<Quantity> PERCENTS =
      EnumSet.of(
          Quantity.PERCENT, Quantity.PERCENT_VOL, Quantity.PERCENT_MASS, Quantity.PERCENT_PER_YEAR);

  private static Input plain(String formula) {
    return new Input(formula, "", "", false);
  }

  private static Input noted(String formula, String note) {
    return new Input(formula, note, "", false);
  }

  static Input problem(String sentence) {
    return new Input(null, "", sentence, false);
  }

  /**
   * Reads one cell for one use.
   *
   * @param isFilled whether this run fills the cell, so that its stored value says nothing
   */
  static Input read(
      BookSheet sheet,
      boolean isFilled,
      Place place,
      String written,
      Unit headerUnit,
      PlanFormula.Reference reference,
      Catalogue catalogue) {
    CellContent stored = sheet.content(place);
    boolean isUnknown = isFilled || stored.isFormula() && stored.value().equals(UNCOMPUTED);
    CellContent content =
        isUnknown ? new CellContent(Value.BLANK, stored.formula(), stored.look()) : stored;
    String name = reference.name();
    if (content.isBlank()) {
      return new Input(null, "", name + " in " + place + " is blank.", true);
    }
    if (content.value() instanceof Value.Error error) {
      return problem(name + " in " + place + " is the error " + error + ".");
    }
    PlanFormula.Use use = reference.use().orElse(null);
    if (use == null || use.arg().kind() != Kind.NUMBER) {
      return isConvertedInside(reference, headerUnit)
          ? problem(
              name
                  + " is in "
                  + headerUnit.word()
                  + "; inside a calculation it cannot be converted. Give it to the function alone.")
          : plain(written);
    }
    Quantity quantity = use.arg().quantity();
    Optional<Unit> target = quantity.unitIn(use.system());
    Unit from = headerUnit == null ? target.orElse(null) : headerUnit;
    if (from != null && target.isPresent() && !from.fits(target.get())) {
      return problem(
          name
              + " is in "
              + from.word()
              + "; "
              + use.arg().name()
              + " takes "
              + target.get().word()
              + ".");
    }
    if (content.value() instanceof Value.Truth) {
      return problem(name + " in " + place + " is TRUE or FALSE; a number is due.");
    }
    boolean isGravity = quantity == Quantity.SPECIFIC_GRAVITY;
    if (content.value() instanceof Value.Text typed) {
      return isGravity && !content.isFormula() && headerUnit == null
          ? gravity(name, place, typed.text(), catalogue)
          : text(name, place, typed.text(), from, target);
    }
    if (!(content.value() instanceof Value.Number plain)) { // a formula that has no result yet
      return plain(converted(written, from, target));
    }
    double number = plain.number();
    if (isGravity
        && from == Unit.GRAVITY
        && !content.isFormula()
        && (number < LEAST_GRAVITY || number > MOST_GRAVITY)) {
      return gravity(name, place, Figures.of(number), catalogue);
    }
    if (content.look() == CellContent.Look.PERCENT && PERCENTS.contains(quantity)) {
      return noted(written + "*100", name + " in " + place + " is shown as a percentage.");
    }
    return plain(converted(written, from, target));
  }

  /** A whole column; its cells are taken as they are. */
  static Input range(Place first, Place last, Unit unit, PlanFormula.Reference reference) {
    Optional<Unit> target =
        reference.use().flatMap(use -> use.arg().quantity().unitIn(use.system()));
    if (unit != null && target.isPresent() && unit != target.get()) {
      return problem(
          "the column "
              + reference.name()
              + " is in "
              + unit.word()
              + ", not in "
              + target.get().word()
              + ".");
    }
    return plain(first.fixed() + ":" + last.fixed());
  }

  private static boolean isConvertedInside(PlanFormula.Reference reference, Unit unit) {
    return unit != null
        && reference.inCall()
        && reference.use().isEmpty()
        && unit != Unit.GRAVITY
        && unit != Unit.PERCENT_VOL
        && unit != Unit.DAY;
  }

  private static String converted(String operand, Unit from, Optional<Unit> target) {
    return from == null || target.isEmpty() ? operand : Conversion.of(operand, from, target.get());
  }

  private static Input text(
      String name, Place place, String text, Unit headerUnit, Optional<Unit> target) {
    Reading reading = Reading.of(text);
    String cell = name + " in " + place + " is \"" + text + "\"";
    if (!reading.isUnderstood()) {
      return problem(cell + "; " + reading.why() + ".");
    }
    Unit unit = reading.unit().orElse(headerUnit);
    if (unit != null && target.isPresent() && !unit.fits(target.get())) {
      return problem(cell + "; " + unit.word() + " is not a unit for " + target.get().word() + ".");
    }
    String operand = converted(reading.number(), unit, target);
    return noted(
        operand,
        cell + ", read as " + reading.number() + (unit == null ? "" : " " + unit.word()) + ".");
  }

  /** Gravities have their own reader, with its own rules. */
  private static Input gravity(String name, Place place, String text, Catalogue catalogue) {
    String cell = name + " in " + place + " is \"" + text + "\"";
    try {
      double gravity =
          (Double) catalogue.get("GRAVITY.READ").call(Reading.withoutApproximately(text));
      return noted(Figures.of(gravity), cell + ", read as " + Figures.of(gravity) + ".");
    } catch (Refusal refusal) {
      String why =
          refusal.text("why", Words.ENGLISH).map(said -> said + ".").orElse(refusal.getMessage());
      return problem(cell + "; " + why);
    }
  }
}
