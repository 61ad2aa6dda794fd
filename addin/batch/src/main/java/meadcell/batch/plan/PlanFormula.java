package meadcell.batch.plan;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import meadcell.catalogue.ArgSpec;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Unit;
import meadcell.catalogue.UnitSystem;

/**
 * A formula as a plan writes it: {@code [Header]} is this row's value, {@code [all Header]} the
 * whole column, {@code [so far Header]} its part down to this row, {@code {Label}} a labelled cell;
 * array constants start with a number, a sign or a quote.
 */
public final class PlanFormula {
  /** What a reference points to. */
  public enum Target {
    ROW,
    COLUMN,
    SO_FAR,
    LABEL
  }

  /** Which argument of which of our functions a reference is, alone. */
  public record Use(FunctionSpec function, ArgSpec arg, UnitSystem system) {}

  /**
   * A reference in the formula.
   *
   * @param use where it is an argument by itself, else empty
   * @param inCall whether it stands somewhere inside one of our calls
   */
  public record Reference(Target target, String name, Optional<Use> use, boolean inCall) {
    @Override
    public boolean equals(Object object) {
      return object instanceof Reference other
          && target == other.target
          && name.equals(other.name)
          && use.equals(other.use)
          && inCall == other.inCall;
    }

    @Override
    public int hashCode() {
      return name.hashCode();
    }
  }

  /** A text that stays, or a reference; the other is null. */
  record Piece(String text, Reference reference) {}

  private final String source;
  private final List<Piece> pieces;
  private final List<Reference> references;
  private final FunctionSpec outermost;
  private final UnitSystem system;

  PlanFormula(String source, List<Piece> pieces, FunctionSpec outermost, UnitSystem system) {
    this.source = source;
    this.pieces = pieces;
    this.references = pieces.stream().map(Piece::reference).filter(Objects::nonNull).toList();
    this.outermost = outermost;
    this.system = system;
  }

  public List<Reference> references() {
    return references;
  }

  /** Whether it gives one value a row; otherwise it fills one labelled cell. */
  public boolean fillsColumn() {
    return references.stream()
        .anyMatch(r -> r.target() == Target.ROW || r.target() == Target.SO_FAR);
  }

  /** The unit of its result, where it is one call of ours whose result has one. */
  public Optional<Unit> unit() {
    return outermost().flatMap(function -> function.declaration().gives().unitIn(system));
  }

  /** The function whose result is the formula's, where it is one call of ours and nothing more. */
  public Optional<FunctionSpec> outermost() {
    return Optional.ofNullable(outermost);
  }

  /** The formula for one cell, with what stands there for each reference. */
  public String with(Map<Reference, String> operands) {
    StringBuilder formula = new StringBuilder();
    for (Piece piece : pieces) {
      formula.append(
          piece.reference == null
              ? piece.text
              : Objects.requireNonNull(operands.get(piece.reference)));
    }
    return formula.toString();
  }

  @Override
  public String toString() {
    return source;
  }
}
