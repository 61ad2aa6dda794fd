package meadcell.batch.draft;

/**
 * Formulas of others, written out here so that what drafted plans give is not compared with itself.
 * They are coarser than the functions: each says how near it comes.
 */
final class Handbook {
  private Handbook() {}

  /** °P of a gravity: the cubic fitted to the brewers' tables (from memory); within 0.02. */
  static double plato(double gravity) {
    return -616.868
        + 1111.14 * gravity
        - 630.272 * gravity * gravity
        + 135.997 * gravity * gravity * gravity;
  }

  /** The gravity of that many °P. */
  static double gravity(double plato) {
    double low = 0.98;
    double high = 1.2;
    while (high - low > 1e-9) {
      double middle = (low + high) / 2;
      if (plato(middle) < plato) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Real extract, % by mass (Balling, from memory). */
  static double realExtract(double original, double present) {
    return 0.1808 * plato(original) + 0.8192 * plato(present);
  }

  /** % by volume: Balling's attenuation formula (from memory); within 0.35 up to 1.12. */
  static double abv(double original, double present) {
    double byMass =
        (plato(original) - realExtract(original, present)) / (2.0665 - 0.010665 * plato(original));
    return byMass * present / 0.7907;
  }

  /** The reading at 20 °C of a must: the cubic in °F of the rule of thumb (from memory). */
  static double corrected(double reading, double celsius, double madeForCelsius) {
    return reading * waterRatio(celsius) / waterRatio(madeForCelsius);
  }

  private static double waterRatio(double celsius) {
    double f = 1.8 * celsius + 32;
    return 1.00130346 - 1.34722124e-4 * f + 2.04052596e-6 * f * f - 2.32820948e-9 * f * f * f;
  }

  /** Litres below the surface of a lying cask of elliptic staves, by slices of 1/2000 of it. */
  static double contents(double headCm, double bilgeCm, double lengthCm, double dipCm) {
    double sum = 0;
    int slices = 2000;
    for (int i = 0; i < slices; i++) {
      double x = (i + 0.5) / slices; // share of half the length, from the middle
      double radius =
          Math.sqrt(bilgeCm * bilgeCm / 4 - (bilgeCm * bilgeCm - headCm * headCm) / 4 * x * x);
      double level = Math.max(-radius, Math.min(radius, dipCm - bilgeCm / 2));
      sum +=
          radius * radius * (Math.PI / 2 + Math.asin(level / radius))
              + level * Math.sqrt(radius * radius - level * level);
    }
    return sum / slices * lengthCm / 1000;
  }

  static double headspace(double headCm, double bilgeCm, double lengthCm, double dropCm) {
    return contents(headCm, bilgeCm, lengthCm, bilgeCm)
        - contents(headCm, bilgeCm, lengthCm, bilgeCm - dropCm);
  }

  /** mg/L: the constant of dilute water in everyday use. */
  static double molecular(double free, double ph) {
    return free / (1 + Math.pow(10, ph - 1.81));
  }

  /** Gravity of honey in water made up to a volume: its solids as sucrose. */
  static double honey(double litres, double kilograms, double moisture) {
    double solids = kilograms * (1 - moisture / 100);
    double gravity = 1.1;
    for (int i = 0; i < 50; i++) {
      gravity = gravity(100 * solids / (litres * gravity * 0.9982));
    }
    return gravity;
  }

  /** g/L: real extract, less what the manual says cannot ferment. */
  static double sugarLeft(double original, double present) {
    double extract = 10 * present * realExtract(original, present);
    double must = 10 * original * plato(original);
    return Math.max(0, extract - 0.09 * must - 0.06 * 7.9 * abv(original, present) - 1);
  }
}
