package meadcell.batch.plan;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.catalogue.Unit;

/**
 * A header or label as written on a sheet: its name for comparing, and the unit that it names.
 * {@code "Temp (°F)"} has the name {@code temp} and the unit °F.
 *
 * @param strange what stands in brackets where a unit may, looks like one, and is none that is
 *     known; empty otherwise
 */
public record Header(String name, Optional<Unit> unit, String strange) {
  private static final Pattern IN_BRACKETS = Pattern.compile("(.*?)[(\\[]([^)\\]]*)[)\\]](.*)");
  private static final Pattern AT_END =
      Pattern.compile(
          "(.+?)(?:,|/| in | )\\s*((?:deg\\.?|degrees?|grad|°) ?\\S+|\\S+(?: vol| abv)?)");

  /** As short as the abbreviation of a unit, or with a sign that only units have. */
  private static final Pattern LIKE_A_UNIT =
      Pattern.compile("(?i)\\p{L}{1,3}[.²³]?|.*[°º˚%/\"″].*|(?:deg|grad).*");

  /** Short remarks that are no units. */
  private static final Set<String> REMARKS =
      Set.of(
          "am", "pm", "raw", "adj", "cor", "top", "old", "new", "avg", "av", "est", "ref", "no",
          "nr", "max", "min", "mid", "wet", "dry", "net", "in.", "out", "1st", "2nd", "3rd", "roh",
          "alt", "neu", "ca", "d/m", "m/d", "d/m/y", "m/d/y", "og", "fg", "nom", "nass", "must");

  public static Header of(String text) {
    String plain = clean(text);
    Matcher brackets = IN_BRACKETS.matcher(plain);
    String strange = "";
    if (brackets.matches()) {
      String inside = brackets.group(2).strip();
      Optional<Unit> unit = Unit.named(inside);
      String rest = clean(brackets.group(1) + " " + brackets.group(3));
      if (unit.isPresent() && !rest.isEmpty()) {
        return new Header(rest, unit, "");
      }
      strange = rest.isEmpty() ? "" : strange(inside);
    }
    Matcher end = AT_END.matcher(plain);
    if (end.matches()) {
      Optional<Unit> unit = Unit.named(end.group(2));
      if (unit.isPresent()) {
        return new Header(clean(end.group(1)), unit, "");
      }
    }
    return new Header(plain, Optional.empty(), strange);
  }

  /** The unit that a text consists of, in brackets or not. */
  public static Optional<Unit> unitAlone(String text) {
    return Unit.named(bare(text));
  }

  /** A text that stands where a unit is due and is none that is known; empty if it is no unit. */
  public static String strange(String text) {
    String bare = bare(text);
    boolean isUnit =
        Unit.named(bare).isEmpty()
            && LIKE_A_UNIT.matcher(bare).matches()
            && !REMARKS.contains(bare.toLowerCase(Locale.ROOT));
    return isUnit ? bare : "";
  }

  private static String bare(String text) {
    return text.strip().replaceAll("^[(\\[]|[)\\]]$", "").strip();
  }

  private static String clean(String text) {
    return text.replaceAll("[\\s_]+", " ")
        .strip()
        .replaceAll("[\\s:.*=,]+$", "")
        .toLowerCase(Locale.ROOT);
  }
}
