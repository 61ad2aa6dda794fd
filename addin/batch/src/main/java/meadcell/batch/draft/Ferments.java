package meadcell.batch.draft;

import java.util.ArrayList;
import java.util.List;
import meadcell.batch.plan.Concept;
import meadcell.catalogue.Unit;

/** The lines about ferments: of readings, of batches, by refractometer. */
record Ferments(Lines lines) {
  /** What a refractometer shows means this only without alcohol. */
  private static final String BEFORE_FERMENT =
      "a refractometer reads alcohol, too: right only before the ferment.";

  private static final String MADE_FOR_60 =
      "the hydrometer is taken as made for 60 °F; write its calibration into the log.";

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
        lines.column(Concept.DATE) == null ? lines.column(Concept.DAY) : lines.column(Concept.DATE);
    if (day != null && day.different() <= Lines.MOST_SO_FAR && !lines.site().isOfSeveral()) {
      lines.add(
          "State",
          "FERMENT.STATE("
              + Lines.soFar(day)
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
      return Lines.row(reading);
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
          "SG by Brix",
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
