package meadcell.catalogue;

import meadcell.cellar.Cellar;

/** Declarations and words read anew: what an earlier test has left behind would hide a change. */
final class Fresh {
  private Fresh() {}

  static Catalogue catalogue() {
    return Catalogue.load(Cellar.class.getClassLoader());
  }

  static Words words(String tag) {
    return new Words(tag);
  }
}
