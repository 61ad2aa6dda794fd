package meadcell.barrel;

import meadcell.catalogue.Family;

/** The barrel: contents, headspace, wood, air and samples. */
@Family(name = "BARREL", about = "The barrel: contents, headspace, wood, air and samples.")
public final class Barrel {
  private Barrel() {}
}
