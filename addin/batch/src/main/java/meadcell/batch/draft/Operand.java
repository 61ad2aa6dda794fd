package meadcell.batch.draft;

import java.util.List;
import java.util.stream.Stream;

/** A part of a formula with what it reads and what is doubtful about it. */
record Operand(String text, List<Input> takes, List<String> doubts) {
  static Operand guess(String text, String doubt) {
    return new Operand(text, List.of(), List.of(doubt));
  }

  static Operand of(String text, Input input) {
    return new Operand(text, List.of(input), Lines.doubts(input));
  }

  Operand doubting(String doubt) {
    return new Operand(text, takes, Stream.concat(doubts.stream(), Stream.of(doubt)).toList());
  }

  @Override
  public String toString() {
    return text;
  }
}
