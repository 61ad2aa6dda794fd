package meadcell.vessel;

import java.util.List;
import meadcell.catalogue.Explained;
import meadcell.catalogue.Gives;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.Statement;
import meadcell.transfers.Span;

/**
 * What a vessel lost between two days, beyond what rows say.
 *
 * @param lostL litres lost
 * @param uncertaintyL their standard uncertainty, L
 * @param percentPerYear of what it held
 * @param because what they rest on
 */
public record Losses(
    @Gives(value = "lost", is = Quantity.VOLUME) double lostL,
    @Gives(value = "its standard uncertainty", is = Quantity.VOLUME) double uncertaintyL,
    @Gives(value = "of what it held", is = Quantity.PERCENT_PER_YEAR) double percentPerYear,
    Statement because)
    implements Explained {
  private static final double YEAR = 365.25;

  /**
   * Yearly losses of casks, 1 % in a humid cellar to 9 % in a dry, warm, draughty one: as a Swiss
   * glossary of wine quotes them.
   */
  private static final double LEAST = 1;

  private static final double MOST = 9;

  /** The one-sided limits of 95 of 100. */
  private static final double COVERAGE = 2;

  static Losses between(double from, double to, String vessel, List<Span> spans) {
    double lost = 0;
    double variance = 0;
    double litreDays = 0;
    double days = 0;
    double before = 0;
    for (int i = 0; i < spans.size(); i++) {
      Span span = spans.get(i);
      double share = span.shareBetween(from, to);
      // a measurement between two spans adds to the loss of one what it takes from the other
      double start = span.follows() ? share - before : share;
      boolean followed = i + 1 < spans.size() && spans.get(i + 1).follows();
      lost += share * span.lostL();
      variance += start * start * span.startVarianceL2() + share * share * span.flowVarianceL2();
      variance += followed ? 0 : share * share * span.endVarianceL2();
      litreDays += share * span.litreDays();
      days += share * (span.to() - span.from());
      before = share;
    }
    if (litreDays == 0) {
      throw new Refusal(VesselReason.NOT_MEASURED).with("vessel", vessel);
    }
    double perYear = 100 * YEAR / litreDays;
    double doubt = COVERAGE * Math.sqrt(variance) * perYear;
    boolean leaks = lost * perYear - doubt > MOST;
    Statement because =
        Statement.of(leaks ? Because.LEAKS : Because.EVAPORATES)
            .with("lost", lost, Quantity.VOLUME, 3)
            .with("days", days, Quantity.NUMBER, 4)
            .with("rate", lost * perYear, Quantity.PERCENT, 2)
            .with("doubt", doubt, Quantity.PERCENT, 2)
            .with("least", LEAST, Quantity.PERCENT)
            .with("most", MOST, Quantity.PERCENT);
    return new Losses(lost, Math.sqrt(variance), lost * perYear, because);
  }
}
