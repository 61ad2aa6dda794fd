package meadcell.batch.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import meadcell.batch.plan.Concept;
import meadcell.catalogue.Unit;

/** The lines about ferments: of readings, of batches, by refractometer. */
record Ferments(Lines lines) {
  /** What a refractometer shows means this only without alcohol. */
  private static final String BEFORE_FERMENT =
      "a refractometer reads alcohol, too: right only before the ferment.";

  private static final String MADE_FOR_60 =
      "the hydrometer is taken as made for 60 °F; write its calibration into the log.";

  private static final String DAYS = "Days by hours";
  private static final String UNCORRECTED = "SG uncorrected";

  void ferment() {
    Input reading = lines.column(Concept.GRAVITY);
    Input corrected = lines.column(Concept.TRUE_GRAVITY);
    if (reading == null && corrected == null || lines.column(Concept.FINAL) != null) {
      return;
    }
    Operand original = lines.any(Concept.ORIGINAL);
    Operand present = corrected == null ? trueGravity(reading, original) : Lines.row(corrected);
    if (original == null && lines.site().isOfSeveral()) {
      return; // each batch needs its own
    }
    if (original == null) {
      original = first(present);
    }
    lines.add(
        "ABV (% vol)",
        "ALCOHOL.ABV(" + original + "; " + present + ")",
        "0.0",
        "Alcohol from original and present gravity.",
        original,
        present);
    lines.add(
        "Sugar left (g/L)",
        "ALCOHOL.SUGARLEFT(" + original + "; " + present + ")",
        "0",
        "Best guess of the sugar that may still ferment; not extract.",
        original,
        present);
    Operand expected = lines.label(Concept.EXPECTED);
    Operand end =
        expected != null
            ? expected
            : Operand.guess(
                "0.995", "it is taken to end at 0.995; write the expected FG into the log.");
    lines.add(
        "Progress (%)",
        "FERMENT.PROGRESS(" + original + "; " + present + "; " + end + ")",
        "0",
        "Share of the fermentable sugar that is gone.",
        original,
        present,
        end);
    Input day =
        Stream.of(Concept.DATE, Concept.DAY, Concept.HOURS)
            .map(lines::column)
            .filter(Objects::nonNull)
            .findFirst()
            .orElse(null);
    if (day != null && day.different() <= Lines.MOST_SO_FAR && !lines.site().isOfSeveral()) {
      boolean isInHours = day.concept() == Concept.HOURS;
      if (isInHours) {
        lines.add(
            DAYS, Lines.row(day) + "/24", "0.00", "Days, from the hours.", Lines.row(day));
      }
      lines.add(
          "State",
          "FERMENT.STATE("
              + (isInHours ? "[so far " + DAYS + "]" : Lines.soFar(day))
              + "; "
              + present.text().replace("[", "[so far ")
              + "; "
              + end
              + ")",
          "General",
          "Finished, falling, stalled, or cannot tell yet, from the readings so far.",
          Lines.row(day),
          present,
          end);
    }
  }

  /** The line for the true gravity, and what others take as the present one. */
  private Operand trueGravity(Input reading, Operand original) {
    Input temperature = lines.column(Concept.TEMPERATURE);
    boolean isInNote = temperature == null && reading.hasTemperature();
    if (temperature == null && !isInNote) {
      return uncorrected(reading);
    }
    Operand warmth =
        isInNote
            ? new Operand(
                "GRAVITY.READTEMPERATURE(" + Lines.reference(reading) + ")",
                List.of(reading),
                List.of())
            : Lines.row(temperature);
    Operand made = lines.label(Concept.CALIBRATION);
    boolean isFahrenheit = !isInNote && temperature.unit() == Unit.FAHRENHEIT;
    List<String> arguments =
        new ArrayList<>(
            List.of(
                Lines.row(reading).text(),
                warmth.text(),
                made == null ? "" : made.text(),
                original == null ? "" : original.text()));
    while (arguments.get(arguments.size() - 1).isEmpty()) {
      arguments.remove(arguments.size() - 1);
    }
    if (isFahrenheit) {
      arguments.add("\"US\"");
    }
    lines.add(
        "True SG",
        "GRAVITY.CORRECT(" + String.join("; ", arguments) + ")",
        "0.0000",
        "What the hydrometer would have read "
            + (made != null
                ? "at its calibration temperature."
                : isFahrenheit ? "at 60 °F." : "at 20 °C, for which it is taken to be made."),
        Lines.row(reading),
        warmth,
        made == null && isFahrenheit ? Operand.guess("", MADE_FOR_60) : made,
        original);
    return new Operand("[True SG]", Lines.row(reading).takes(), Lines.doubts(reading, temperature));
  }

  /** A whole column must be in SG; one reading is converted by its header's unit. */
  private Operand uncorrected(Input reading) {
    String scale =
        switch (reading.unit()) {
          case BRIX -> "Brix";
          case OECHSLE -> "Oechsle";
          case BAUME -> "Baume";
          default -> "";
        };
    if (scale.isEmpty()) {
      return Lines.row(reading);
    }
    lines.add(
        UNCORRECTED,
        "GRAVITY.FROM" + scale.toUpperCase(Locale.ROOT) + "(" + Lines.row(reading) + ")",
        "0.0000",
        "Specific gravity of the reading, not corrected for its temperature.",
        Lines.row(reading));
    return new Operand("[" + UNCORRECTED + "]", Lines.row(reading).takes(), Lines.doubts(reading));
  }

  private static Operand first(Operand present) {
    List<String> doubts = new ArrayList<>(present.doubts());
    doubts.add("no original gravity was found; the first reading is taken for it.");
    return new Operand(
        "INDEX(" + present.text().replace("[", "[all ") + "; 1)", present.takes(), doubts);
  }

  void batches() {
    Input original = lines.column(Concept.ORIGINAL);
    Input end = lines.column(Concept.FINAL);
    if (end == null || original == null) {
      return;
    }
    lines.add(
        "ABV (% vol)",
        "ALCOHOL.ABV(" + Lines.row(original) + "; " + Lines.row(end) + ")",
        "0.0",
        "Alcohol from original and final gravity.",
        Lines.row(original),
        Lines.row(end));
    lines.add(
        "Sugar left (g/L)",
        "ALCOHOL.SUGARLEFT(" + Lines.row(original) + "; " + Lines.row(end) + ")",
        "0",
        "Best guess of the sugar that may still ferment; not extract.",
        Lines.row(original),
        Lines.row(end));
  }

  void refractometer() {
    Input brix = lines.column(Concept.BRIX);
    Input gravity =
        lines.column(Concept.TRUE_GRAVITY) == null
            ? lines.column(Concept.GRAVITY)
            : lines.column(Concept.TRUE_GRAVITY);
    if (brix == null) {
      return;
    }
    if (gravity == null) {
      lines.add(
          "SG by refractometer",
          "GRAVITY.FROMBRIX(" + Lines.row(brix) + ")",
          "0.0000",
          "Gravity of a must of these degrees.",
          Lines.row(brix),
          Operand.guess("", BEFORE_FERMENT));
    } else {
      lines.add(
          "ABV by both (% vol)",
          "ALCOHOL.FROMREFRACTOMETER(" + Lines.row(brix) + "; " + Lines.row(gravity) + ")",
          "0.0",
          "Alcohol without an original gravity, from refractometer and hydrometer.",
          Lines.row(brix),
          Lines.row(gravity),
          Operand.guess("", "an estimate; compare it once with a laboratory."));
    }
  }
}
