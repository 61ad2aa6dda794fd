package meadcell.batch.plan;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.catalogue.Unit;

/**
 * A header or label as written on a sheet: its name for comparing, and the unit that it names.
 * {@code "Temp (°F)"} has the name {@code temp} and the unit °F.
 */
public record Header(String name, Optional<Unit> unit) {
  private static final Pattern IN_BRACKETS = Pattern.compile("(.*?)[(\\[]([^)\\]]*)[)\\]](.*)");
  private static final Pattern AT_END =
      Pattern.compile("(.+?)(?:,|/| in | )\\s*(\\S+(?: vol| abv)?)");

  public static Header of(String text) {
    String plain = clean(text);
    Matcher brackets = IN_BRACKETS.matcher(plain);
    if (brackets.matches()) {
      Optional<Unit> unit = Unit.named(brackets.group(2));
      if (unit.isPresent()) {
        return new Header(clean(brackets.group(1) + " " + brackets.group(3)), unit);
      }
    }
    Matcher end = AT_END.matcher(plain);
    if (end.matches()) {
      Optional<Unit> unit = Unit.named(end.group(2));
      if (unit.isPresent()) {
        return new Header(clean(end.group(1)), unit);
      }
    }
    return new Header(plain, Optional.empty());
  }

  private static String clean(String text) {
    return text.replaceAll("\\s+", " ")
        .strip()
        .replaceAll("[\\s:.*=]+$", "")
        .toLowerCase(Locale.ROOT);
  }
}
