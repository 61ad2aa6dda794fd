package meadcell.batch.draft;

import java.util.List;

/** The lines that the inputs of one site allow, in the order in which they rest on each other. */
final class Proposals {
  private Proposals() {}

  static List<Line> of(Site site) {
    Lines lines = new Lines(site);
    Ferments ferments = new Ferments(lines);
    Others others = new Others(lines);
    if (site.isTable()) {
      ferments.ferment();
      ferments.batches();
      ferments.refractometer();
      new Barrels(lines).barrel();
      others.sulfite();
      others.honey();
    } else {
      others.block();
    }
    return lines.all();
  }
}
