package meadcell.blend;

import meadcell.catalogue.Family;

/** Blending: shares, strength, plans, and what is in a lot. */
@Family(name = "BLEND", about = "Blending: shares, strength, plans, and what is in a lot.")
public final class Blend {
  private Blend() {}
}
