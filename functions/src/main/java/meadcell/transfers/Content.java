package meadcell.transfers;

import java.util.ArrayList;
import java.util.List;

/** What a vessel holds while a log is replayed, how well that is known, and what it lost. */
final class Content {
  final String name;
  boolean filled;
  int drawnAsSourceInRow;
  double volumeL;

  /** The most it held, and what was drawn beyond its content, since it was last empty. */
  double fillL;

  double overdrawnL;

  /** How often it was filled when empty, and when last. */
  int fills;

  double filledOn;

  final List<Span> spans = new ArrayList<>();

  private double measuredOn;
  private double measuredVarianceL2;
  private double flowVarianceL2;
  private double litreDays;
  private double passedUntil;
  private boolean measured;
  private boolean follows;

  Content(String name) {
    this.name = name;
  }

  /** Variance of the content by the account, and of one row more, L². */
  double varianceWith(TransferRow row) {
    return measuredVarianceL2 + flowVarianceL2 + row.varianceL2();
  }

  /** Into the empty vessel. */
  void begin(TransferRow row) {
    filled = true;
    fills++;
    filledOn = row.day();
    measured = true;
    follows = false;
    hold(row);
  }

  /** A measured content. */
  void gauge(TransferRow row) {
    pass(row.day());
    if (measured) {
      spans.add(
          new Span(
              measuredOn,
              row.day(),
              follows,
              volumeL - row.volumeL(),
              measuredVarianceL2,
              flowVarianceL2,
              row.varianceL2(),
              litreDays));
    }
    measured = row.volumeL() > 0;
    follows = measured;
    hold(row);
  }

  private void hold(TransferRow row) {
    volumeL = row.volumeL();
    fillL = volumeL;
    overdrawnL = 0;
    measuredOn = row.day();
    measuredVarianceL2 = row.varianceL2();
    flowVarianceL2 = 0;
    litreDays = 0;
    passedUntil = row.day();
  }

  void put(TransferRow row) {
    flow(row, row.volumeL());
    fillL = Math.max(fillL, volumeL);
  }

  /** {@return what was drawn beyond the content} */
  double draw(TransferRow row) {
    flow(row, -row.volumeL());
    double beyond = Math.max(0, -volumeL);
    overdrawnL += beyond;
    if (volumeL < Slack.ROUNDING * fillL) {
      volumeL = 0;
      measured = false;
    }
    return beyond;
  }

  private void flow(TransferRow row, double volumeL) {
    pass(row.day());
    this.volumeL += volumeL;
    flowVarianceL2 += row.varianceL2();
  }

  private void pass(double day) {
    litreDays += volumeL * (day - passedUntil);
    passedUntil = day;
  }
}
