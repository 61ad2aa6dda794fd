package meadcell.batch.draft;

import java.util.List;
import java.util.Objects;

/**
 * A line that a plan may have.
 *
 * @param takes what it reads, as it was found
 * @param doubts what a person should look at; none where it is sure
 */
record Line(
    String result,
    String formula,
    String format,
    String reason,
    List<Input> takes,
    List<String> doubts) {

  boolean isSame(Line other) {
    return result.equals(other.result) && formula.equals(other.formula);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Line line && isSame(line);
  }

  @Override
  public int hashCode() {
    return Objects.hash(result, formula);
  }
}
