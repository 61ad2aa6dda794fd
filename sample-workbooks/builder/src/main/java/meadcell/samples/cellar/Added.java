package meadcell.samples.cellar;

import static meadcell.samples.cellar.Formulas.given;
import static meadcell.samples.cellar.Formulas.orBlank;
import static meadcell.samples.cellar.Formulas.quoted;

import java.util.LinkedHashMap;
import java.util.Map;
import meadcell.samples.sheet.Workings;

/**
 * What Additions changed in a vessel since it was analysed, or in the one that it was filled from:
 * what is carried from that analysis holds no longer.
 */
final class Added {
  /** Properties that are carried, and what else than feeds changes them. */
  private static final Map<String, String> CHANGED_BY = new LinkedHashMap<>();

  static {
    CHANGED_BY.put("strength", "");
    CHANGED_BY.put("sugar", "");
    CHANGED_BY.put("titratable acidity", "ad_acid");
    CHANGED_BY.put("total SO2", "ad_sulfite");
  }

  private Added() {}

  static void workings(Workings rows, int vessels) {
    rows.arrays(
        "v_source",
        vessels,
        "IF([v_since]=\"\",\"\","
            + orBlank(
                "INDEX(mv_from,MATCH(1,(mv_to=[v_name])*(mv_day=[v_since])*(mv_from<>\"gauge\"),0))")
            + ")");
    CHANGED_BY.forEach((property, by) -> changed(rows, vessels, property, by));
  }

  private static void changed(Workings rows, int vessels, String property, String by) {
    String name = name(property);
    rows.column(name + "_own", vessels, given("[v_since]", last("[v_name]", by, "today")))
        .column(
            name + "_before",
            vessels,
            given("[v_since] [v_source]", last("[v_source]", by, "[v_since]")))
        .column(
            name,
            vessels,
            // an office works out all that AND takes, so what takes long stands in an IF of its own
            ("IF([v_since]=\"\",\"\",IF([OWN]>=[v_since],IF(MEASURED<=[OWN],[OWN],\"\"),"
                    + "IF(N([BEFORE])=0,\"\",IF(AND(MEASURED=0,COUNTIFS(an_lot,[v_source],an_what,WHAT,an_day,\">\"&[BEFORE],an_day,\"<=\"&[v_since])=0),[BEFORE],\"\"))))")
                .replace(
                    "MEASURED",
                    "MAXIFS(an_day,an_lot,[v_name],an_what,WHAT,an_day,\">=\"&[v_since],an_day,\"<=\"&today)")
                .replace("OWN", name + "_own")
                .replace("BEFORE", name + "_before")
                .replace("WHAT", quoted(property)));
  }

  /** The last day up to one on which something was added that changes it; 0 if never. */
  private static String last(String vessel, String by, String day) {
    String fed = "INT(MAXIFS(ad_key,ad_vessel,%s,ad_key,\"<\"&(%s+1)))".formatted(vessel, day);
    return by.isEmpty()
        ? fed
        : "MAX(%s,MAXIFS(%s,ad_vessel,%s,ad_day,\"<=\"&%s))".formatted(fed, by, vessel, day);
  }

  private static String name(String property) {
    return "changed_" + property.replaceAll(".* ", "").toLowerCase(java.util.Locale.ROOT);
  }

  /** The properties one after the other, by their number. */
  static String properties() {
    return "CHOOSE(#,\"" + String.join("\",\"", CHANGED_BY.keySet()) + "\")";
  }

  /** Blank where the property of that number was changed since it was analysed. */
  static String unlessChanged(String vessel, String formula) {
    return "IF(ISNUMBER(INDEX(CHOOSE(#,%s),MATCH(%s&\"\",v_name,0))),\"\",%s)"
        .formatted(
            String.join(",", CHANGED_BY.keySet().stream().map(Added::name).toList()),
            vessel,
            formula);
  }

  /** The day of what changed it, or a text where nothing did. */
  private static String day(String vessel, String property) {
    return "INDEX(%s,MATCH(%s&\"\",v_name,0))".formatted(name(property), vessel);
  }

  /** Blank where the property was changed since it was analysed. */
  static String unlessChanged(String vessel, String property, String formula) {
    return "IF(ISNUMBER(%s),\"\",%s)".formatted(day(vessel, property), formula);
  }

  /** Says so, or else why nothing is carried. */
  static String why(String vessel, String property) {
    return "IF(ISNUMBER(DAY),\"what was added on \"&YEAR(DAY)&\"-\"&RIGHT(\"0\"&MONTH(DAY),2)&\"-\"&RIGHT(\"0\"&DAY(DAY),2)&\" changed the WHAT, and it was not measured since.\",CARRIED)"
        .replace("DAY(DAY)", "D_Y(DAY)")
        .replace("DAY", day(vessel, property))
        .replace("D_Y", "DAY")
        .replace("WHAT", property)
        .replace("CARRIED", Formulas.notCarried(vessel, quoted(property)));
  }
}
