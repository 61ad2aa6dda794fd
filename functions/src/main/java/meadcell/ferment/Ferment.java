package meadcell.ferment;

import meadcell.catalogue.Family;

/** The running ferment: progress, forecast, state, gas and heat. */
@Family(name = "FERMENT", about = "The running ferment: progress, forecast, state, gas and heat.")
public final class Ferment {
  private Ferment() {}
}
