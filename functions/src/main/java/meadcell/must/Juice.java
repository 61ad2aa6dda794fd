package meadcell.must;

import meadcell.density.Sucrose;

/** A must, juice or diluted mead by what it weighs and what is dissolved in it, all as sucrose. */
record Juice(double kg, double solidsKg) {

  static Juice of(double volumeL, double gravity) {
    double solids = Sucrose.massFractionFromGravity(gravity);
    double kg = volumeL * Sucrose.density(solids, 20) / 1000;
    return new Juice(kg, kg * solids);
  }

  Juice plus(Juice other) {
    return new Juice(kg + other.kg, solidsKg + other.solidsKg);
  }

  double gravity() {
    return Sucrose.specificGravity(solidsKg / kg);
  }

  double volumeL() {
    return kg / (Sucrose.density(solidsKg / kg, 20) / 1000);
  }
}
