package meadcell.batch.plan;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import meadcell.catalogue.Unit;

/** The words that the trade writes over columns and beside cells, from {@code headers.tsv}. */
public final class Vocabulary {
  private static final String WEAK = "?";

  /**
   * What a word means.
   *
   * @param unit the one that the word itself names, or null
   * @param isWeak whether it may as well mean something else, so that values must bear it out
   */
  public record Meaning(Concept concept, Unit unit, boolean isWeak) {}

  /**
   * A word of the list.
   *
   * @param last the unit that it ends with, as in {@code true sg}, or null
   */
  private record Word(Meaning meaning, Unit last) {
    boolean fits(Header header) {
      boolean isIn =
          header.unit().isEmpty()
              || header.unit().get() == last
              || meaning.concept.in(header.unit().get()).isPresent();
      return isIn && (last == null || header.unit().filter(last::equals).isPresent());
    }
  }

  private static final Map<Concept, String> USUAL = new EnumMap<>(Concept.class);
  private static final Map<String, List<Word>> BY_WORD = read();

  private Vocabulary() {}

  /**
   * What a header or label means; nothing where it is no word of the trade, or names a unit that
   * what it means is never kept in.
   */
  public static Optional<Meaning> meaning(Header header) {
    String name =
        header.strange().isEmpty() || isWord(header.name())
            ? header.name()
            : header.name().replaceAll("\\s*[(\\[].*", "");
    List<Word> words = BY_WORD.get(name);
    if (words == null) { // most texts; asked for in each row
      return Optional.empty();
    }
    return words.stream()
        .filter(word -> word.fits(header))
        .map(Word::meaning)
        .findFirst()
        .map(
            known ->
                header
                    .unit()
                    .filter(unit -> known.concept().in(unit).isPresent())
                    .map(unit -> new Meaning(known.concept(), unit, known.isWeak()))
                    .orElse(known));
  }

  /** Whether a name is a word of the list, with whatever it has in brackets. */
  public static boolean isWord(String name) {
    return BY_WORD.containsKey(name);
  }

  /** The first of the words for something. */
  static String usual(Concept concept) {
    return USUAL.get(concept);
  }

  /** What a header is sure to mean by its name alone. */
  public static Optional<Concept> sure(Header header) {
    return meaning(header).filter(meaning -> !meaning.isWeak()).map(Meaning::concept);
  }

  private static Map<String, List<Word>> read() {
    Map<String, List<Word>> words = new HashMap<>();
    try (BufferedReader lines =
        new BufferedReader(
            new InputStreamReader(
                Vocabulary.class.getResourceAsStream("headers.tsv"), StandardCharsets.UTF_8))) {
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        if (!line.startsWith("#")) {
          String[] fields = line.split("\t");
          Concept concept = Concept.valueOf(fields[0]);
          Unit unit = fields[1].isEmpty() ? null : Unit.valueOf(fields[1]);
          USUAL.putIfAbsent(concept, fields[2]);
          for (int i = 2; i < fields.length; i++) {
            boolean isWeak = fields[i].startsWith(WEAK);
            Header word = Header.of(fields[i].substring(isWeak ? 1 : 0));
            words
                .computeIfAbsent(word.name(), key -> new ArrayList<>())
                .add(new Word(new Meaning(concept, unit, isWeak), word.unit().orElse(null)));
          }
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return words;
  }
}
