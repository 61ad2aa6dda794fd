package meadcell.must;

import meadcell.density.Sucrose;

/** A must, juice or diluted mead by what it weighs and what is dissolved in it, all as sucrose. */
record Liquid(double kg, double solidsKg) {

  static Liquid of(double volumeL, double gravity) {
    double solids = Sucrose.massFractionFromGravity(gravity);
    double kg = volumeL * Sucrose.density(solids, 20) / 1000;
    return new Liquid(kg, kg * solids);
  }

  Liquid plus(Liquid other) {
    return new Liquid(kg + other.kg, solidsKg + other.solidsKg);
  }

  double gravity() {
    return Sucrose.specificGravity(solidsKg / kg);
  }

  double volumeL() {
    return kg / (Sucrose.density(solidsKg / kg, 20) / 1000);
  }
}
