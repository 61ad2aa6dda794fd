package meadcell.gravity;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Statement;

/**
 * A gravity as people write it, read only where it can mean one thing.
 *
 * @param gravity as it was read
 * @param temperatureC of the sample, if the note ends with it
 */
record LogbookNote(double gravity, OptionalDouble temperatureC) {
  private static final String WORD = "(°?\\s*[a-z]+)?";
  private static final Pattern NOTE =
      Pattern.compile(
          "(?:[of]g)?[\\s:=]*"
              + WORD
              + "[\\s:=]*(-?(?:\\d+(?:[.,](\\d+))?|[.,](\\d+)))\\s*"
              + WORD);

  /** A number with C or F at the end, in brackets or after an at. */
  private static final Pattern TEMPERATURE =
      Pattern.compile(
          "(.*?\\S)\\s*(?:[(,;/@]|\\bat\\b|\\s)\\s*(-?\\d+(?:[.,]\\d+)?)\\s*°?\\s*([cf])\\s*\\)?");

  private static final Range SAMPLE_C = Range.between(-5, 60);

  /** Thousandths: 1085 for 1.085. */
  private static final double THOUSAND = 1000;

  /** The scales, each over what SG 0.98 to 1.3 is on it. */
  private enum Scale {
    GRAVITY(Quantity.SPECIFIC_GRAVITY.plausible().orElseThrow(), sg -> sg, "sg"),
    BRIX(-5, 62, Gravity::fromBrix, "bx", "brix", "plato"),
    BAUME(-2.9, 33.5, Gravity::fromBaume, "be", "baume"),
    OECHSLE(-19, 299.4, Gravity::fromOechsle, "oe", "oechsle", "ochsle");

    final Range range;
    final DoubleUnaryOperator toGravity;
    private final List<String> words;

    Scale(double least, double most, DoubleUnaryOperator toGravity, String... words) {
      this(Range.between(least, most), toGravity, words);
    }

    Scale(Range range, DoubleUnaryOperator toGravity, String... words) {
      this.range = range;
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

  static LogbookNote of(String text) {
    String plain = plain(text);
    Matcher warm = TEMPERATURE.matcher(plain);
    return warm.matches()
        ? new LogbookNote(gravity(text, warm.group(1)), OptionalDouble.of(celsius(text, warm)))
        : new LogbookNote(gravity(text, plain), OptionalDouble.empty());
  }

  private static double celsius(String text, Matcher warm) {
    double degrees = Double.parseDouble(warm.group(2).replace(',', '.'));
    double celsius = warm.group(3).equals("f") ? (degrees - 32) / 1.8 : degrees;
    if (!SAMPLE_C.contains(celsius)) {
      throw refused(
          text, Statement.of(Unclear.NO_SUCH_WARMTH).with("range", SAMPLE_C, Quantity.TEMPERATURE));
    }
    return celsius;
  }

  private static double gravity(String text, String plain) {
    Matcher note = NOTE.matcher(plain);
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
