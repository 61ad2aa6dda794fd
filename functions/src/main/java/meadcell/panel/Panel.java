package meadcell.panel;

import meadcell.catalogue.Family;

/** Tasting panels: tests, ranks, scores. */
@Family(name = "PANEL", about = "Tasting panels: tests, ranks, scores.")
public final class Panel {
  private Panel() {}
}
