package meadcell.batch.draft;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import meadcell.batch.plan.Concept;
import meadcell.catalogue.Unit;

/** The lines that the inputs of one site allow, in the order in which they rest on each other. */
final class Proposals {
  /** What a refractometer shows means this only without alcohol. */
  private static final String BEFORE_FERMENT =
      "a refractometer reads alcohol, too: right only before the ferment.";

  /** Longer columns are read again and again for each of their rows. */
  private static final int MOST_SO_FAR = 1000;

  private static final String MADE_FOR_60 =
      "the hydrometer is taken as made for 60 °F; write its calibration into the log.";

  private final Site site;
  private final List<Line> lines = new ArrayList<>();

  private Proposals(Site site) {
    this.site = site;
  }

  static List<Line> of(Site site) {
    Proposals proposals = new Proposals(site);
    if (site.isTable()) {
      proposals.ferment();
      proposals.batches();
      proposals.refractometer();
      proposals.barrel();
      proposals.sulfite();
      proposals.honey();
    } else {
      proposals.block();
    }
    return proposals.lines;
  }

  // ---- a ferment, reading by reading ----------------------------------------------------------

  private void ferment() {
    Input reading = column(Concept.GRAVITY);
    Input corrected = column(Concept.TRUE_GRAVITY);
    if (reading == null && corrected == null || column(Concept.FINAL) != null) {
      return;
    }
    Operand original = any(Concept.ORIGINAL);
    Operand present = corrected == null ? trueGravity(reading, original) : row(corrected);
    if (original == null && site.isOfSeveral()) {
      return; // each batch needs its own
    }
    if (original == null) {
      original = first(present);
    }
    add(
        "ABV (% vol)",
        "ALCOHOL.ABV(" + original + "; " + present + ")",
        "0.0",
        "Alcohol from original and present gravity.",
        original,
        present);
    add(
        "Sugar left (g/L)",
        "ALCOHOL.SUGARLEFT(" + original + "; " + present + ")",
        "0",
        "Best guess of the sugar that may still ferment; not extract.",
        original,
        present);
    Operand expected = label(Concept.EXPECTED);
    Operand end =
        expected != null
            ? expected
            : Operand.guess(
                "0.995", "it is taken to end at 0.995; write the expected FG into the log.");
    add(
        "Progress (%)",
        "FERMENT.PROGRESS(" + original + "; " + present + "; " + end + ")",
        "0",
        "Share of the fermentable sugar that is gone.",
        original,
        present,
        end);
    Input day = column(Concept.DATE) == null ? column(Concept.DAY) : column(Concept.DATE);
    if (day != null && day.different() <= MOST_SO_FAR && !site.isOfSeveral()) {
      add(
          "State",
          "FERMENT.STATE("
              + soFar(day)
              + "; "
              + present.text.replace("[", "[so far ")
              + "; "
              + end
              + ")",
          "General",
          "Finished, falling, stalled, or cannot tell yet, from the readings so far.",
          row(day),
          present,
          end);
    }
  }

  /** The line for the true gravity, and what others take as the present one. */
  private Operand trueGravity(Input reading, Operand original) {
    Input temperature = column(Concept.TEMPERATURE);
    boolean isInNote = temperature == null && reading.hasTemperature();
    if (temperature == null && !isInNote) {
      return row(reading);
    }
    Operand warmth =
        isInNote
            ? new Operand(
                "GRAVITY.READTEMPERATURE(" + reference(reading) + ")", List.of(reading), List.of())
            : row(temperature);
    Operand made = label(Concept.CALIBRATION);
    boolean isFahrenheit = !isInNote && temperature.unit() == Unit.FAHRENHEIT;
    List<String> arguments =
        new ArrayList<>(
            List.of(
                row(reading).text,
                warmth.text,
                made == null ? "" : made.text,
                original == null ? "" : original.text));
    while (arguments.get(arguments.size() - 1).isEmpty()) {
      arguments.remove(arguments.size() - 1);
    }
    if (isFahrenheit) {
      arguments.add("\"US\"");
    }
    add(
        "True SG",
        "GRAVITY.CORRECT(" + String.join("; ", arguments) + ")",
        "0.0000",
        "What the hydrometer would have read "
            + (made != null
                ? "at its calibration temperature."
                : isFahrenheit ? "at 60 °F." : "at 20 °C, for which it is taken to be made."),
        row(reading),
        warmth,
        made == null && isFahrenheit ? Operand.guess("", MADE_FOR_60) : made,
        original);
    return new Operand("[True SG]", row(reading).takes, doubts(reading, temperature));
  }

  private static List<String> doubts(Input... inputs) {
    return Stream.of(inputs)
        .filter(Objects::nonNull)
        .filter(input -> !input.isSure())
        .map(input -> input.told() + ": " + input.doubt())
        .toList();
  }

  private static Operand first(Operand present) {
    List<String> doubts = new ArrayList<>(present.doubts);
    doubts.add("no original gravity was found; the first reading is taken for it.");
    return new Operand(
        "INDEX(" + present.text.replace("[", "[all ") + "; 1)", present.takes, doubts);
  }

  // ---- a row for each batch ---------------------------------------------------------------------

  private void batches() {
    Input original = column(Concept.ORIGINAL);
    Input end = column(Concept.FINAL);
    if (end == null || original == null) {
      return;
    }
    add(
        "ABV (% vol)",
        "ALCOHOL.ABV(" + row(original) + "; " + row(end) + ")",
        "0.0",
        "Alcohol from original and final gravity.",
        row(original),
        row(end));
    add(
        "Sugar left (g/L)",
        "ALCOHOL.SUGARLEFT(" + row(original) + "; " + row(end) + ")",
        "0",
        "Best guess of the sugar that may still ferment; not extract.",
        row(original),
        row(end));
  }

  private void refractometer() {
    Input brix = column(Concept.BRIX);
    Input gravity =
        column(Concept.TRUE_GRAVITY) == null
            ? column(Concept.GRAVITY)
            : column(Concept.TRUE_GRAVITY);
    if (brix == null) {
      return;
    }
    if (gravity == null) {
      add(
          "SG by Brix",
          "GRAVITY.FROMBRIX(" + row(brix) + ")",
          "0.0000",
          "Gravity of a must of these degrees.",
          row(brix),
          Operand.guess("", BEFORE_FERMENT));
    } else {
      add(
          "ABV by both (% vol)",
          "ALCOHOL.FROMREFRACTOMETER(" + row(brix) + "; " + row(gravity) + ")",
          "0.0",
          "Alcohol without an original gravity, from refractometer and hydrometer.",
          row(brix),
          row(gravity),
          Operand.guess("", "an estimate; compare it once with a laboratory."));
    }
  }

  // ---- barrels ----------------------------------------------------------------------------------

  private void barrel() {
    Operand head = any(Concept.HEAD);
    Operand bilge = any(Concept.BILGE);
    Operand length = any(Concept.LENGTH);
    boolean hasSizes = head != null && bilge != null && length != null;
    String sizes = head + "; " + bilge + "; " + length;
    Input drop = column(Concept.DROP);
    if (hasSizes && drop != null && column(Concept.HEADSPACE) == null) {
      Operand stave = any(Concept.STAVE);
      add(
          "Headspace (" + volume(drop) + ")",
          "BARREL.HEADSPACE("
              + sizes
              + "; "
              + row(drop)
              + (stave == null ? "" : "; " + stave)
              + ")",
          "0.0",
          "What is missing since it was last topped up full"
              + (stave == null ? "." : "; drop measured from the outside of the bung hole."),
          head,
          bilge,
          length,
          row(drop),
          stave);
    }
    Input dip = column(Concept.DIP);
    if (hasSizes && dip != null) {
      add(
          "Holds (" + volume(dip) + ")",
          "BARREL.CONTENTS(" + sizes + "; " + row(dip) + ")",
          "0.0",
          "Contents of a lying barrel by its dipstick.",
          head,
          bilge,
          length,
          row(dip));
    }
    byWeight();
    loss(hasSizes ? "BARREL.VOLUME(" + sizes + ")" : null, head, bilge, length);
  }

  private void byWeight() {
    Input gross = column(Concept.GROSS);
    Operand wet = any(Concept.EMPTY);
    Operand tare = any(Concept.TARE);
    Operand density = any(Concept.DENSITY);
    if (gross == null || wet == null && tare == null || density == null) {
      return;
    }
    Operand empty =
        wet != null
            ? wet
            : tare.doubting("the tare must be that of the wet barrel: soaked wood weighs more.");
    add(
        "Weighs (" + (gross.unit() == Unit.POUND ? "gal" : "L") + ")",
        "BARREL.BYWEIGHT(" + row(gross) + "; " + empty + "; " + density + ")",
        "0.0",
        "Contents by the scale.",
        row(gross),
        empty,
        density);
  }

  private void loss(String volume, Operand... sizes) {
    Input topped = column(Concept.TOPPED);
    Input day = column(Concept.DATE) == null ? column(Concept.DAY) : column(Concept.DATE);
    Operand capacity = label(Concept.CAPACITY);
    boolean isLong = day != null && day.different() > MOST_SO_FAR;
    if (site.isOfSeveral()
        || isLong
        || topped == null
        || day == null
        || volume == null && capacity == null) {
      return;
    }
    List<Operand> takes = new ArrayList<>(List.of(row(topped), row(day)));
    takes.addAll(capacity == null ? Arrays.asList(sizes) : List.of(capacity));
    add(
        "Loss (% a year)",
        "INDEX(BARREL.LOSSRATE("
            + soFar(day)
            + "; "
            + soFar(topped)
            + "; "
            + (capacity == null ? volume : capacity)
            + "); 1)",
        "0.0",
        "Loss of a year, from the toppings so far; each must fill to the same mark.",
        takes.toArray(Operand[]::new));
  }

  // ---- sulfite, honey ---------------------------------------------------------------------------

  private void sulfite() {
    Input free = column(Concept.FREE_SO2);
    Operand ph = any(Concept.PH);
    if (free != null && ph != null) {
      add(
          "Molecular SO2 (mg/L)",
          "SULFITE.MOLECULAR(" + row(free) + "; " + ph + ")",
          "0.00",
          "The part of the free SO2 that holds microbes down.",
          row(free),
          ph);
    }
  }

  private void honey() {
    Input volume = column(Concept.VOLUME);
    Input honey = column(Concept.HONEY);
    if (volume != null && honey != null) {
      honey(
          row(volume),
          row(honey),
          column(Concept.MOISTURE) == null
              ? label(Concept.MOISTURE)
              : row(column(Concept.MOISTURE)));
    }
  }

  private void honey(Operand volume, Operand honey, Operand moisture) {
    Operand water =
        moisture != null
            ? moisture
            : Operand.guess("", "the honey's moisture is not there; it is taken as 17.2 %.");
    add(
        "OG by the honey",
        "HONEY.GRAVITY(" + volume + "; " + honey + (water.text.isEmpty() ? "" : "; " + water) + ")",
        "0.000",
        "What the honey alone gives, to compare with the reading.",
        volume,
        honey,
        water);
  }

  /** Labelled cells without a table. */
  private void block() {
    Operand original = label(Concept.ORIGINAL);
    Operand end = label(Concept.FINAL);
    if (original != null && end != null) {
      add(
          "ABV (% vol)",
          "ALCOHOL.ABV(" + original + "; " + end + ")",
          "0.0",
          "Alcohol from original and final gravity.",
          original,
          end);
    }
    Operand volume = label(Concept.VOLUME);
    Operand honey = label(Concept.HONEY);
    if (volume != null && honey != null) {
      honey(volume, honey, label(Concept.MOISTURE));
    }
    Operand free = label(Concept.FREE_SO2);
    Operand ph = label(Concept.PH);
    if (free != null && ph != null) {
      add(
          "Molecular SO2 (mg/L)",
          "SULFITE.MOLECULAR(" + free + "; " + ph + ")",
          "0.00",
          "The part of the free SO2 that holds microbes down.",
          free,
          ph);
    }
  }

  // ---- operands ---------------------------------------------------------------------------------

  /** A part of a formula with what it reads and what is doubtful about it. */
  private record Operand(String text, List<Input> takes, List<String> doubts) {
    static Operand guess(String text, String doubt) {
      return new Operand(text, List.of(), List.of(doubt));
    }

    static Operand of(String text, Input input) {
      return new Operand(text, List.of(input), Proposals.doubts(input));
    }

    Operand doubting(String doubt) {
      return new Operand(text, takes, Stream.concat(doubts.stream(), Stream.of(doubt)).toList());
    }

    @Override
    public String toString() {
      return text;
    }
  }

  private void add(
      String result, String formula, String format, String reason, Operand... operands) {
    List<Operand> all = Stream.of(operands).filter(Objects::nonNull).toList();
    lines.add(
        new Line(
            result,
            formula,
            format,
            reason,
            all.stream().flatMap(operand -> operand.takes.stream()).distinct().toList(),
            all.stream().flatMap(operand -> operand.doubts.stream()).distinct().toList()));
  }

  private Input column(Concept concept) {
    return site.columns().get(concept);
  }

  /** One value for the whole table; doubtful where that is of several batches or barrels. */
  private Operand label(Concept concept) {
    Input input = site.labels().get(concept);
    if (input == null) {
      return null;
    }
    Operand label = Operand.of("{" + concept.word() + "}", input);
    return site.isOfSeveral() && concept != Concept.CALIBRATION
        ? label.doubting("one " + concept.word() + " is taken for several batches or barrels.")
        : label;
  }

  private Operand any(Concept concept) {
    return column(concept) == null ? label(concept) : row(column(concept));
  }

  private static Operand row(Input input) {
    return Operand.of(reference(input), input);
  }

  private static String reference(Input input) {
    return "[" + input.concept().word() + "]";
  }

  private static String soFar(Input input) {
    return "[so far " + input.concept().word() + "]";
  }

  /** Gallons for one who measures in inches. */
  private static String volume(Input length) {
    return length.unit() == Unit.INCH ? "gal" : "L";
  }
}
