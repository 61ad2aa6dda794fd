package meadcell.batch.calculation;

import java.util.List;
import java.util.Optional;
import meadcell.batch.book.Value;

/** What comes of computing a cell's formula. */
public sealed interface Outcome {
  /** What the cell now shows; nothing where it cannot be computed. */
  Optional<Value> shown();

  /** A value; an error is one that the formula itself gives, or that a cell passes on to it. */
  record Computed(Value value) implements Outcome {
    @Override
    public Optional<Value> shown() {
      return Optional.of(value);
    }
  }

  /**
   * An error, because functions in this cell refused their input.
   *
   * @param calls at least one, in the order of computing
   */
  record Refused(Value.Error error, List<PoiFunctions.Refused> calls) implements Outcome {
    @Override
    public Optional<Value> shown() {
      return Optional.of(error);
    }
  }

  /** Nothing: the formula, or what it depends on, is beyond this tool. */
  record Beyond(String reason) implements Outcome {
    @Override
    public Optional<Value> shown() {
      return Optional.empty();
    }
  }
}
