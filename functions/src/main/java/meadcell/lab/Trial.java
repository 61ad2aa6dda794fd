package meadcell.lab;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.RowNumber;
import meadcell.catalogue.Rows;
import meadcell.lab.Curve.Addition;
import meadcell.lab.Curve.Reading;

/** What a titration on the bench tells of a batch: pH, acidity, buffer capacity. */
@Family(name = "LAB")
public final class Trial {
  /** Of a difference of two readings, 95 of 100. */
  private static final double COVERAGE = 2 * Math.sqrt(2);

  /** A difference of readings must be this many times what they scatter. */
  private static final double LEAST_SPAN = 2;

  private static final String PRECISION =
      " u: repeatability 0.07 of OIV-MA-AS313-15 over 2.8 (from memory).";

  private static final String BENCH =
      "Drive the gas out of the samples, stir, and wait for a steady reading at one temperature, with a"
          + " meter calibrated around the range.";

  private static final String LIMITS =
      "straight between the two readings beside it; limits: the last addition at least 2 u short of the"
          + " target, the first one at least 2 u beyond it.";

  private static final String CAUTION =
      "Which acids and salts may be added, and how much, is a matter of law where you sell. Carbonates"
          + " foam and free carbon dioxide: leave headspace and ventilate. Acids, alkalis and titrants are"
          + " corrosive: wear goggles and gloves.";

  private static final String FIRST_THE_LOWER =
      "Add the lower limit first, mix, measure, and go on from there: honey and casks differ, and what"
          + " was added does not come out again.";

  @Arg(name = "volume", help = "Must or mead to treat", is = Quantity.VOLUME, above = 0, to = 1e6)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Batch {}

  @Arg(
      name = "u",
      help = "Standard uncertainty of a pH reading",
      is = Quantity.PH,
      above = 0,
      to = 0.2,
      byDefault = 0.025)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Scatter {}

  /**
   * A pH after an addition by weight.
   *
   * @param row in the table
   * @param added acid, base or salt in all, g/L
   * @param ph pH then
   */
  public record Dosed(
      @RowNumber int row,
      @Arg(
              name = "added",
              help = "Acid, base or salt in all",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 50)
          double added,
      @Arg(name = "pH", help = "pH then", is = Quantity.PH, from = 1, to = 13) double ph) {}

  /**
   * A titratable acidity after an addition by weight.
   *
   * @param row in the table
   * @param added acid, base or salt in all, g/L
   * @param acidity titratable acidity then, as any one acid, g/L
   */
  public record Soured(
      @RowNumber int row,
      @Arg(
              name = "added",
              help = "Acid, base or salt in all",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 50)
          double added,
      @Arg(
              name = "acidity",
              help = "Titratable acidity then, as one acid",
              is = Quantity.GRAM_PER_LITRE,
              from = 0,
              to = 50)
          double acidity) {}

  /**
   * A pH after some titrant.
   *
   * @param row in the table
   * @param titrantMl titrant in all, mL
   * @param ph pH then
   */
  public record Titrated(
      @RowNumber int row,
      @Arg(name = "titrant", help = "Titrant in all", is = Quantity.MILLILITRE, from = 0, to = 200)
          double titrantMl,
      @Arg(name = "pH", help = "pH then", is = Quantity.PH, from = 1, to = 13) double ph) {}

  /** What to add to a batch. */
  public record Dose(
      @Gives(value = "to add", is = Quantity.GRAM) double estimate,
      @Gives(value = "surely not yet enough", is = Quantity.GRAM) double lower,
      @Gives(value = "surely too much", is = Quantity.GRAM) double upper) {
    static Dose of(Addition addition, double volumeL) {
      return new Dose(
          volumeL * addition.estimate(), volumeL * addition.lower(), volumeL * addition.upper());
    }
  }

  /** Titrant up to a pH. */
  public record Titre(
      @Gives(value = "titrant", is = Quantity.MILLILITRE) double estimate,
      @Gives(value = "surely not yet enough", is = Quantity.MILLILITRE) double lower,
      @Gives(value = "surely too much", is = Quantity.MILLILITRE) double upper) {}

  /** A buffer capacity with its limits. */
  public record Buffer(
      @Gives(value = "buffer capacity", is = Quantity.BUFFER_CAPACITY) double capacity,
      @Gives(value = "its lower 95 % limit", is = Quantity.BUFFER_CAPACITY) double lower,
      @Gives(value = "its upper 95 % limit", is = Quantity.BUFFER_CAPACITY) double upper) {}

  private Trial() {}

  /**
   * {@return dose for a pH, a row}
   *
   * @param volumeL must or mead to treat, L
   * @param trial added g/L and pH, a row for each reading
   * @param target pH wanted
   * @param u standard uncertainty of a pH reading
   */
  @CellarFunction(
      summary = "Acid, base or carbonate for a target pH, from a bench trial with the same.",
      formula = "volume · what the trial took: " + LIMITS,
      source = "Interpolation of your own trial, no model of the mead." + PRECISION,
      example = "LAB.PHDOSE(225;{0,3.85;0.5,3.68;1,3.55;1.5,3.44;2,3.35};3.5)",
      note =
          "The trial's rows: g/L of acid, base or salt added in all to a measured sample, and the pH then;"
              + " the first without any. "
              + BENCH
              + " Never beyond the trial, and refused where a reading turns back.\n"
              + FIRST_THE_LOWER,
      caution = CAUTION)
  public static Dose phDose(
      @Batch double volumeL,
      @Arg(name = "trial", help = "A row for each reading") Rows<Dosed> trial,
      @Arg(name = "target", help = "pH wanted", is = Quantity.PH, from = 1, to = 13) double target,
      @Scatter double u) {
    Curve curve =
        new Curve(
            trial.stream().map(row -> new Reading(row.row, row.added, row.ph)).toList(),
            Quantity.PH);
    return Dose.of(curve.between("target", target, u), volumeL);
  }

  /**
   * {@return dose for an acidity, a row}
   *
   * @param volumeL must or mead to treat, L
   * @param trial added g/L and titratable acidity g/L, a row for each reading
   * @param target titratable acidity wanted, as the same acid, g/L
   * @param u standard uncertainty of an acidity, g/L
   */
  @CellarFunction(
      summary =
          "Acid, base or carbonate for a target titratable acidity, from a bench trial with the same.",
      formula = "volume · what the trial took: " + LIMITS,
      source =
          "Interpolation of your own trial, no model of the mead. u: repeatability 0.07 g/L as tartaric"
              + " acid of OIV-MA-AS313-01 over 2.8 (from memory).",
      example = "LAB.ACIDITYDOSE(225;{0,4.1;1,5.0;2,5.9;3,6.9};5.5)",
      note =
          "The trial's rows: g/L of acid, base or salt added in all to a sample, and the titratable"
              + " acidity then, stated as one acid throughout. "
              + "MUST.ACIDADD and MUST.DEACIDIFY compute the dose without a trial, and cannot see that"
              + " salts settle out. Never beyond the trial.\n"
              + FIRST_THE_LOWER,
      caution = CAUTION)
  public static Dose acidityDose(
      @Batch double volumeL,
      @Arg(name = "trial", help = "A row for each reading") Rows<Soured> trial,
      @Arg(
              name = "target",
              help = "Titratable acidity wanted, as the same acid",
              is = Quantity.GRAM_PER_LITRE,
              above = 0,
              to = 50)
          double target,
      @Arg(
              name = "u",
              help = "Standard uncertainty of an acidity",
              is = Quantity.GRAM_PER_LITRE,
              above = 0,
              to = 2,
              byDefault = 0.025)
          double u) {
    Curve curve =
        new Curve(
            trial.stream().map(row -> new Reading(row.row, row.added, row.acidity)).toList(),
            Quantity.GRAM_PER_LITRE);
    return Dose.of(curve.between("target", target, u), volumeL);
  }

  /**
   * {@return titrant up to an endpoint, a row}
   *
   * @param trial titrant mL and pH, a row for each reading
   * @param endpoint pH up to which the titrant counts
   * @param u standard uncertainty of a pH reading
   */
  @CellarFunction(
      summary = "Titrant up to an endpoint, between the readings of a titration.",
      formula = "Titrant of the trial: " + LIMITS,
      source = "Interpolation of your own titration; endpoint 7: OIV-MA-AS313-01." + PRECISION,
      example = "LAB.TITRE({0,3.4;4,4.6;7,6.2;8,7.6;8.5,9.4};7)",
      note =
          "LAB.ACIDITY makes titratable acidity of it. Around the endpoint the pH jumps: take readings"
              + " close together there. "
              + BENCH,
      caution = Lab.CAUTION)
  public static Titre titre(
      @Arg(name = "trial", help = "A row for each reading") Rows<Titrated> trial,
      @Arg(
              name = "endpoint",
              help = "pH up to which the titrant counts",
              is = Quantity.PH,
              from = 1,
              to = 13,
              byDefault = 7)
          double endpoint,
      @Scatter double u) {
    Addition titrant = curve(trial).between("endpoint", endpoint, u);
    return new Titre(titrant.estimate(), titrant.lower(), titrant.upper());
  }

  /**
   * {@return buffer capacity, a row}
   *
   * @param trial titrant mL and pH, a row for each reading
   * @param normality concentration of the titrant, mol/L
   * @param sample sample taken, mL
   * @param from one pH
   * @param to another pH
   * @param u standard uncertainty of a pH reading
   */
  @CellarFunction(
      summary =
          "Buffer capacity: alkali or acid that a litre takes for a unit of pH, from a titration.",
      formula =
          "1000 · normality · |V(to) − V(from)| / sample / |to − from|, V the titrant, straight between"
              + " readings; limits: |to − from| ± 2√2 u in its place.",
      source =
          "Van Slyke 1922, Journal of Biological Chemistry 52:525 (from memory: the reference), as a mean"
              + " over the two pH."
              + PRECISION,
      example = "LAB.BUFFER({0,3.4;2,3.82;4,4.25;6,4.8};0.1;50;3.5;4)",
      note =
          "The more a mead buffers, the more acid it takes to move its pH, and the less its pH says of its"
              + " taste. A mean from pH to pH, the titrant's own volume not counted. Dry mead of light honey"
              + " buffers little. "
              + BENCH
              + " Never beyond the trial.",
      caution = Lab.CAUTION)
  public static Buffer buffer(
      @Arg(name = "trial", help = "A row for each reading") Rows<Titrated> trial,
      @Arg(
              name = "normality",
              help = "Concentration of the titrant",
              is = Quantity.NORMALITY,
              from = 0.005,
              to = 1)
          double normality,
      @Arg(name = "sample", help = "Sample taken", is = Quantity.MILLILITRE, from = 1, to = 1000)
          double sample,
      @Arg(name = "from", help = "One pH", is = Quantity.PH, from = 1, to = 13) double from,
      @Arg(name = "to", help = "Another pH", is = Quantity.PH, from = 1, to = 13) double to,
      @Scatter double u) {
    double span = Math.abs(to - from);
    double doubt = COVERAGE * u;
    if (span < LEAST_SPAN * doubt) {
      throw new Refusal(LabReason.SPAN_TOO_SMALL)
          .with("start", from, Quantity.PH)
          .with("end", to, Quantity.PH)
          .with("least", LEAST_SPAN * doubt, Quantity.PH);
    }
    Curve curve = curve(trial);
    double moles =
        1000 * normality * Math.abs(curve.at("to", to) - curve.at("from", from)) / sample;
    return new Buffer(moles / span, moles / (span + doubt), moles / (span - doubt));
  }

  private static Curve curve(Rows<Titrated> trial) {
    return new Curve(
        trial.stream().map(row -> new Reading(row.row, row.titrantMl, row.ph)).toList(),
        Quantity.PH);
  }
}
