package meadcell.bottle;

import meadcell.catalogue.Family;

/** Bottling: counts, label, tax, sweetness, pressure. */
@Family(name = "BOTTLE", about = "Bottling: counts, label, tax, sweetness, pressure.")
public final class Bottle {
  private Bottle() {}
}
