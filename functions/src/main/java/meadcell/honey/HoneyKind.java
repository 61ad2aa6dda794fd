package meadcell.honey;

/** Kinds of honey that the law sets apart: Council Directive 2001/110/EC, Annex II. */
public enum HoneyKind {
  BLOSSOM(20, 60, 5),
  HEATHER(23, 60, 5),
  HONEYDEW(20, 45, 5),
  ACACIA(20, 60, 10),
  LAVENDER(20, 60, 15),
  BAKER(23, 60, 5),
  BAKER_HEATHER(25, 60, 5);

  final double mostMoisture;
  final double leastFructoseGlucose;
  final double mostSucrose;

  HoneyKind(double mostMoisture, double leastFructoseGlucose, double mostSucrose) {
    this.mostMoisture = mostMoisture;
    this.leastFructoseGlucose = leastFructoseGlucose;
    this.mostSucrose = mostSucrose;
  }
}
