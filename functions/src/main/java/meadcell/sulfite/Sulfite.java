package meadcell.sulfite;

import meadcell.catalogue.Family;

/** Sulfur dioxide and sorbate. */
@Family(name = "SULFITE", about = "Sulfur dioxide and sorbate.")
public final class Sulfite {
  private Sulfite() {}
}
