package meadcell.lab;

import meadcell.catalogue.Family;

/** Titration arithmetic. */
@Family(name = "LAB", about = "Titration arithmetic.")
public final class Lab {
  private Lab() {}
}
