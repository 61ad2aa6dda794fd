package meadcell.tank;

import meadcell.catalogue.Family;

/** Upright tanks. */
@Family(name = "TANK", about = "Upright tanks.")
public final class Tank {
  private Tank() {}
}
