package meadcell.barrel;

/** The curve of the staves, after the four varieties of the old gauging books, and a cylinder. */
public enum Shape {
  ELLIPSE(true, true),
  PARABOLA(false, true),
  TWO_PARABOLOIDS(true, false),
  CONE(false, false),
  CYLINDER(false, false);

  /** Whether the radius squared, not the radius, falls from bilge to head. */
  final boolean squared;

  /** Whether it falls with the square of the distance from the bilge, not with the distance. */
  final boolean curved;

  Shape(boolean squared, boolean curved) {
    this.squared = squared;
    this.curved = curved;
  }
}
