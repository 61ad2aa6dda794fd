package meadcell.honey;

import meadcell.catalogue.Family;

/** Honey by its moisture: sugar, density, gravity, amounts. */
@Family(name = "HONEY", about = "Honey by its moisture: sugar, density, gravity, amounts.")
public final class Honey {
  private Honey() {}
}
