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
   * A cell that a reference stands for.
   *
   * @param written how a formula refers to it
   * @param unit the unit that its header or label names, or null
   * @param strange what stands there for a unit and is none that is known; empty otherwise
   * @param inline the reading, where a label stands before it in the cell; null otherwise
   */
  record Cell(Place place, String written, Unit unit, String strange, String inline) {}

  /**
   * Reads one cell for one use.
   *
   * @param isFilled whether this run fills the cell, so that its stored value says nothing
   */
  static Input read(
      BookSheet sheet,
      boolean isFilled,
      Cell cell,
      PlanFormula.Reference reference,
      Catalogue catalogue) {
    Place place = cell.place;
    String written = cell.written;
    Unit headerUnit = cell.unit;
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
    if (target.isPresent() && !cell.strange.isEmpty()) {
      return problem(unknown(name, cell));
    }
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
          ? gravity(name, cell, typed.text(), catalogue)
          : text(name, cell, typed.text(), from, target);
    }
    if (!(content.value() instanceof Value.Number plain)) { // a formula that has no result yet
      return plain(converted(written, from, target));
    }
    double number = plain.number();
    if (isGravity
        && from == Unit.GRAVITY
        && !content.isFormula()
        && (number < LEAST_GRAVITY || number > MOST_GRAVITY)) {
      return thousandfold(name, cell, number, catalogue);
    }
    if (content.look() == CellContent.Look.PERCENT && PERCENTS.contains(quantity)) {
      return noted(written + "*100", name + " in " + place + " is shown as a percentage.");
    }
    return plain(converted(written, from, target));
  }

  private static String unknown(String name, Cell cell) {
    return "the unit \"" + cell.strange + "\" of " + name + " is not known.";
  }

  /** A part of a column; its cells are taken as they are. */
  static Input range(String written, Cell cell, PlanFormula.Reference reference) {
    Optional<Unit> target =
        reference.use().flatMap(use -> use.arg().quantity().unitIn(use.system()));
    if (target.isPresent() && !cell.strange.isEmpty()) {
      return problem(unknown(reference.name(), cell));
    }
    if (cell.unit != null && target.isPresent() && cell.unit != target.get()) {
      return problem(
          "the column "
              + reference.name()
              + " is in "
              + cell.unit.word()
              + ", not in "
              + target.get().word()
              + ".");
    }
    return plain(written);
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

  /**
   * A reading typed as a text. While the cell holds this text, its number counts; once it is
   * corrected to a number, that one does, and any other text is an error. A text that may be taken
   * for a date, such as {@code 7.5 cm}, is not proven to compare alike everywhere: its number
   * stands by itself, until the plan fills the log again.
   */
  private static Input text(
      String name, Cell cell, String typed, Unit headerUnit, Optional<Unit> target) {
    String read = cell.inline == null ? typed : cell.inline;
    Reading reading = Reading.of(read);
    String said = name + " in " + cell.place + " is \"" + typed + "\"";
    if (!reading.isUnderstood()) {
      return problem(said + "; " + reading.why() + ".");
    }
    Unit unit = reading.unit().orElse(headerUnit);
    if (unit != null && target.isPresent() && !unit.fits(target.get())) {
      return problem(said + "; " + unit.word() + " is not a unit for " + target.get().word() + ".");
    }
    String number = converted(reading.number(), unit, target);
    return noted(
        whileItIs(cell, quoted(typed), number, converted(cell.written, headerUnit, target)),
        said + ", read as " + reading.number() + (unit == null ? "" : " " + unit.word()) + ".");
  }

  private static String whileItIs(Cell cell, String content, String then, String otherwise) {
    return "IF(" + cell.written + "=" + content + ", " + then + ", " + otherwise + ")";
  }

  private static String quoted(String text) {
    return '"' + text.replace("\"", "\"\"") + '"';
  }

  /** Gravities have their own reader, with its own rules; it reads the cell again when asked to. */
  private static Input gravity(String name, Cell cell, String typed, Catalogue catalogue) {
    String plain = Reading.withoutApproximately(cell.inline == null ? typed : cell.inline);
    String said = name + " in " + cell.place + " is \"" + typed + "\"";
    try {
      String gravity = Figures.of((Double) catalogue.get("GRAVITY.READ").call(plain));
      String formula =
          plain.equals(typed.strip())
              ? "IFERROR(GRAVITY.READ(" + cell.written + "), " + cell.written + ")"
              : whileItIs(cell, quoted(typed), gravity, cell.written);
      return noted(formula, said + ", read as " + gravity + ".");
    } catch (Refusal refusal) {
      return refused(said, refusal);
    }
  }

  /** A number such as 1085. */
  private static Input thousandfold(String name, Cell cell, double number, Catalogue catalogue) {
    String typed = Figures.of(number);
    String said = name + " in " + cell.place + " is " + typed;
    try {
      String gravity = Figures.of((Double) catalogue.get("GRAVITY.READ").call(typed));
      return noted(
          whileItIs(cell, typed, gravity, cell.written), said + ", read as " + gravity + ".");
    } catch (Refusal refusal) {
      return refused(said, refusal);
    }
  }

  private static Input refused(String said, Refusal refusal) {
    return problem(
        said
            + "; "
            + refusal
                .text("why", Words.ENGLISH)
                .map(why -> why + ".")
                .orElse(refusal.getMessage()));
  }
}
