package meadcell.blend;

import java.util.Locale;
import java.util.Map;
import java.util.Set;
import meadcell.catalogue.General;
import meadcell.catalogue.Place;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;

/** A property by the name that a sheet gives it. */
record Property(String name) {
  static final Property STRENGTH = new Property("strength");
  static final Property SUGAR = new Property("sugar");

  /** Of a value whose uncertainty is not told: 2 %, common practice, no source. */
  private static final double RELATIVE_UNCERTAINTY = 0.02;

  /** Of rounding to 1, JCGM 100:2008, F.2.2.1. */
  private static final double ROUNDING = 1 / Math.sqrt(12);

  /** The place that strength is written to, % vol, and sugar, g/L: common practice, no source. */
  private static final Map<Property, Double> LAST_PLACE = Map.of(STRENGTH, 0.1, SUGAR, 1.0);

  private static final Map<String, Property> SYNONYMS =
      Map.of("abv", STRENGTH, "alcohol", STRENGTH, "residual sugar", SUGAR);

  private static final Set<String> FREE_SULFITE =
      Set.of("free so2", "molecular so2", "free sulfite", "free sulphite");
  private static final Set<String> GRAVITIES =
      Set.of("gravity", "specific gravity", "sg", "brix", "°brix", "density", "plato");
  private static final Set<String> FLEETING =
      Set.of("oxygen", "dissolved oxygen", "co2", "carbon dioxide", "temperature", "turbidity");

  /** {@return the property of that name; what is not conserved is refused} */
  static Property asked(String name) {
    Property property = of(name);
    BlendReason notConserved =
        property.name.equals("ph")
            ? BlendReason.PH_NOT_CARRIED
            : FREE_SULFITE.contains(property.name)
                ? BlendReason.FREE_SULFITE_NOT_CARRIED
                : GRAVITIES.contains(property.name)
                    ? BlendReason.GRAVITY_NOT_CARRIED
                    : FLEETING.contains(property.name) ? BlendReason.NOT_CONSERVED : null;
    if (notConserved != null) {
      throw new Refusal(notConserved).with("property", name);
    }
    return property;
  }

  private static Property of(String name) {
    String plain = name.strip().toLowerCase(Locale.ROOT).replace('₂', '2').replaceAll("\\s+", " ");
    return SYNONYMS.getOrDefault(plain, new Property(plain));
  }

  boolean isNamed(String given) {
    return of(given).equals(this);
  }

  boolean fermentChanges() {
    return equals(STRENGTH) || equals(SUGAR);
  }

  Amounts amounts(double humidity) {
    return equals(STRENGTH) ? new Amounts.Alcohol(humidity) : new Amounts.Dissolved();
  }

  /** {@return what the row tells, else its share of the value; NaN where that is nothing} */
  double uncertaintyOf(AnalysisRow row) {
    double share = RELATIVE_UNCERTAINTY * row.value();
    double least = ROUNDING * LAST_PLACE.getOrDefault(this, 0.0);
    double untold = Math.max(share, least);
    return row.uncertainty().orElse(untold > 0 ? untold : Double.NaN);
  }

  double inRange(AnalysisRow row) {
    if (equals(STRENGTH) && row.value() > 100) {
      throw new Refusal(General.OUTSIDE)
          .about("analyses", new Place(row.row(), 4, "value"))
          .with("value", row.value(), Quantity.NUMBER)
          .with("range", Range.between(0, 100), Quantity.NUMBER);
    }
    return row.value();
  }
}
