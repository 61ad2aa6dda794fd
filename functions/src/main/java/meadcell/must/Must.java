package meadcell.must;

import meadcell.catalogue.Family;

/** The must before it ferments: recipe, fruit, nutrients, acid. */
@Family(name = "MUST", about = "The must before it ferments: recipe, fruit, nutrients, acid.")
public final class Must {
  private Must() {}
}
