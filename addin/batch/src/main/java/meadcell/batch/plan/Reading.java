package meadcell.batch.plan;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.batch.book.Figures;
import meadcell.catalogue.Unit;

/**
 * A reading typed as a text, understood or not: {@code 78F}, {@code ~1.020}, {@code 18,5 °C}.
 *
 * @param number the number as a formula writes it, or null where it is not understood
 * @param unit the unit written behind it
 * @param why what is unclear, where it is not understood
 */
public record Reading(String number, Optional<Unit> unit, String why) {
  private static final Pattern APPROXIMATE =
      Pattern.compile(
          "^(~|≈|ca\\.?|c\\.|about|approx\\.?|approximately)\\s*", Pattern.CASE_INSENSITIVE);
  private static final Pattern RANGE =
      Pattern.compile("[+-]?[\\d.,]+\\s*(-|–|—|to|\\.\\.|/)\\s*[\\d.,]+.*");
  private static final Pattern NUMBER_AND_UNIT = Pattern.compile("([+-]?[\\d.,]*\\d\\.?)\\s*(.*)");

  public boolean isUnderstood() {
    return number != null;
  }

  /** The text without a word or sign for "about" before it. */
  public static String withoutApproximately(String text) {
    return APPROXIMATE.matcher(text.strip()).replaceFirst("");
  }

  public static Reading of(String text) {
    String plain = text.strip().toLowerCase(Locale.ROOT).replace('−', '-');
    if (plain.contains("?")) {
      return unclear("it is marked as doubtful");
    }
    plain = withoutApproximately(plain);
    if (RANGE.matcher(plain).matches()) {
      return unclear("it is a range or a fraction");
    }
    Matcher parts = NUMBER_AND_UNIT.matcher(plain);
    if (!parts.matches()) {
      return unclear("it is not a number with a unit");
    }
    String word = parts.group(2).strip();
    boolean bareDegrees = word.equals("°") || word.equals("deg") || word.equals("degrees");
    Optional<Unit> unit = Unit.named(word);
    if (!word.isEmpty() && !bareDegrees && unit.isEmpty()) {
      return unclear("\"" + word + "\" is not a unit that is known");
    }
    return number(parts.group(1), unit);
  }

  /** A point is the decimal mark; so is a single comma, unless it may set off thousands. */
  private static Reading number(String digits, Optional<Unit> unit) {
    int commas = (int) digits.chars().filter(c -> c == ',').count();
    int points = (int) digits.chars().filter(c -> c == '.').count();
    boolean thousands = digits.matches("[+-]?[1-9]\\d{0,2}(,\\d{3})+(\\.\\d+)?");
    String number;
    if (commas == 0 && points <= 1) {
      number = digits;
    } else if (thousands && points == 1) {
      number = digits.replace(",", "");
    } else if (thousands || commas != 1 || points != 0) {
      return unclear("its comma may mean thousands or decimals");
    } else {
      number = digits.replace(',', '.');
    }
    return new Reading(Figures.of(Double.parseDouble(number)), unit, "");
  }

  private static Reading unclear(String why) {
    return new Reading(null, Optional.empty(), why);
  }
}
