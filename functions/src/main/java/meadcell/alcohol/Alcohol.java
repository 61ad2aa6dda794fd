package meadcell.alcohol;

import meadcell.catalogue.Family;

/** Strength, extract and sugar left. */
@Family(name = "ALCOHOL", about = "Strength, extract and sugar left.")
public final class Alcohol {
  private Alcohol() {}
}
