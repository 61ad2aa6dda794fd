package meadcell.gravity;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Statement;

/** A gravity as people write it, read only where it can mean one thing. */
final class LogbookNote {
  private static final String WORD = "(°?\\s*[a-z]+)?";
  private static final Pattern NOTE =
      Pattern.compile(
          "(?:[of]g)?[\\s:=]*"
              + WORD
              + "[\\s:=]*(-?(?:\\d+(?:[.,](\\d+))?|[.,](\\d+)))\\s*"
              + WORD);

  /** Thousandths: 1085 for 1.085. */
  private static final double THOUSAND = 1000;

  /** The scales, each over what SG 0.98 to 1.2 is on it. */
  private enum Scale {
    GRAVITY(0.98, 1.2, sg -> sg, "sg"),
    BRIX(-5, 44, Gravity::fromBrix, "bx", "brix", "plato"),
    BAUME(-2.9, 24.1, Gravity::fromBaume, "be", "baume"),
    OECHSLE(-19, 199, Gravity::fromOechsle, "oe", "oechsle", "ochsle");

    final Range range;
    final DoubleUnaryOperator toGravity;
    private final List<String> words;

    Scale(double least, double most, DoubleUnaryOperator toGravity, String... words) {
      this.range = Range.between(least, most);
      this.toGravity = toGravity;
      this.words = List.of(words);
    }

    boolean holds(double value) {
      return range.contains(value);
    }

    /** A lone p is as likely points as Plato. */
    static Optional<Scale> named(String word) {
      String bare = word.equals("°p") ? "plato" : word.replace("°", "");
      return Arrays.stream(values()).filter(scale -> scale.words.contains(bare)).findAny();
    }
  }

  private LogbookNote() {}

  static double gravity(String text) {
    Matcher note = NOTE.matcher(plain(text));
    if (!note.matches() || note.group(1) != null && note.group(5) != null) {
      throw refused(text, Statement.of(Unclear.NOT_ONE_NUMBER));
    }
    double value = Double.parseDouble(note.group(2).replace(',', '.'));
    String word = note.group(1) != null ? note.group(1) : note.group(5);
    if (word == null) {
      return withoutScale(text, value, decimals(note));
    }
    Scale scale =
        Scale.named(word.replaceAll("\\s", ""))
            .orElseThrow(() -> refused(text, Statement.of(Unclear.UNKNOWN_SCALE)));
    if (scale == Scale.GRAVITY && scale.holds(value / THOUSAND)) {
      return value / THOUSAND;
    }
    if (!scale.holds(value)) {
      throw refused(
          text, Statement.of(Unclear.OFF_SCALE).with("range", scale.range, Quantity.NUMBER));
    }
    return scale.toGravity.applyAsDouble(value);
  }

  private static double withoutScale(String text, double value, int decimals) {
    if (Scale.GRAVITY.holds(value) && decimals >= 2) {
      return value;
    }
    if (Scale.GRAVITY.holds(value / THOUSAND)) {
      return value / THOUSAND;
    }
    throw refused(text, Statement.of(Unclear.NO_SCALE));
  }

  private static int decimals(Matcher note) {
    return note.group(3) != null
        ? note.group(3).length()
        : note.group(4) != null ? note.group(4).length() : 0;
  }

  /** Small letters without accents and abbreviation dots; one degree sign, one minus, one space. */
  private static String plain(String text) {
    return text.toLowerCase(Locale.ROOT)
        .replace('é', 'e')
        .replace('ö', 'o')
        .replaceAll("[º˚]", "°")
        .replaceAll("[−–]", "-")
        .replaceAll("\\p{M}|(?<=[a-z])\\.", "")
        .replace('\u00a0', ' ')
        .strip();
  }

  private static Refusal refused(String text, Statement why) {
    return new Refusal(GravityReason.UNCLEAR_NOTE).with("text", text).with("why", why);
  }
}
