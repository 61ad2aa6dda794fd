package meadcell.batch.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import meadcell.batch.plan.Concept;
import meadcell.catalogue.Unit;

/** The lines that the inputs of one site allow, as they are found. */
final class Lines {
  /** Longer columns are read again and again for each of their rows. */
  static final int MOST_SO_FAR = 1000;

  private final Site site;
  private final List<Line> all = new ArrayList<>();

  Lines(Site site) {
    this.site = site;
  }

  Site site() {
    return site;
  }

  List<Line> all() {
    return all;
  }

  void add(String result, String formula, String format, String reason, Operand... operands) {
    List<Operand> parts = Stream.of(operands).filter(Objects::nonNull).toList();
    all.add(
        new Line(
            result,
            formula,
            format,
            reason,
            parts.stream().flatMap(operand -> operand.takes().stream()).distinct().toList(),
            parts.stream().flatMap(operand -> operand.doubts().stream()).distinct().toList()));
  }

  Input column(Concept concept) {
    return site.columns().get(concept);
  }

  /** One value for the whole table; doubtful where that is of several batches or barrels. */
  Operand label(Concept concept) {
    Input input = site.labels().get(concept);
    if (input == null) {
      return null;
    }
    Operand label = Operand.of("{" + concept.word() + "}", input);
    return site.isOfSeveral() && concept != Concept.CALIBRATION
        ? label.doubting("one " + concept.word() + " is taken for several batches or barrels.")
        : label;
  }

  Operand any(Concept concept) {
    return column(concept) == null ? label(concept) : row(column(concept));
  }

  static Operand row(Input input) {
    return Operand.of(reference(input), input);
  }

  static String reference(Input input) {
    return "[" + input.concept().word() + "]";
  }

  static String soFar(Input input) {
    return "[so far " + input.concept().word() + "]";
  }

  /** Gallons for one who measures in inches. */
  static String volume(Input length) {
    return length.unit() == Unit.INCH ? "gal" : "L";
  }

  static List<String> doubts(Input... inputs) {
    return Stream.of(inputs)
        .filter(Objects::nonNull)
        .filter(input -> !input.isSure())
        .map(input -> input.told() + ": " + input.doubt())
        .toList();
  }
}
