package meadcell.density;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.property.Between;
import meadcell.property.Property;
import org.apache.commons.math3.exception.NoBracketingException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EthanolWaterTest {

  /** Old tables give g/mL, relative to water at 4 °C. */
  private static final double OLD_G_PER_ML = 999.972;

  // a public-domain reference implementation of the Wagenbreth–Blanke equation of OIML R 22
  @ParameterizedTest
  @CsvSource({
    "0, 20, 998.20123",
    "1, 20, 789.2391233",
    "0, 0, 999.8369332",
    "1, 0, 806.2151206",
    "0.5, 20, 913.7705950"
  })
  void referenceImplementation(double p, double temperatureC, double density) {
    assertEquals(density, EthanolWater.density(p, temperatureC), 1e-6);
  }

  // computed from the coefficients of OIML R 22: % vol, % mass, density at 20 °C and around
  @ParameterizedTest
  @CsvSource({
    "0, 0, 998.2012, 999.837, 999.695, 999.096, 997.043, 995.645, 992.213",
    "5, 3.9818, 991.0552, 992.841, 992.608, 991.980, 989.858, 988.407, 984.818",
    "8, 6.3960, 987.1641, 989.261, 988.868, 988.164, 985.895, 984.378, 980.690",
    "10, 8.0149, 984.7104, 987.117, 986.562, 985.782, 983.373, 981.795, 978.008",
    "11, 8.8271, 983.5213, 986.116, 985.461, 984.635, 982.144, 980.529, 976.681",
    "12, 9.6410, 982.3548, 985.158, 984.391, 983.516, 980.934, 979.278, 975.359",
    "13, 10.4566, 981.2091, 984.243, 983.352, 982.421, 979.740, 978.039, 974.041",
    "14, 11.2739, 980.0819, 983.368, 982.340, 981.350, 978.561, 976.811, 972.725",
    "15, 12.0929, 978.9707, 982.529, 981.353, 980.298, 977.394, 975.592, 971.410",
    "16, 12.9136, 977.8729, 981.724, 980.387, 979.264, 976.237, 974.379, 970.092",
    "18, 14.5600, 975.7060, 980.198, 978.509, 977.236, 973.941, 971.961, 967.445",
    "20, 16.2135, 973.5573, 978.754, 976.677, 975.238, 971.651, 969.538, 964.769",
    "30, 24.6071, 962.2105, 971.378, 967.117, 964.744, 959.517, 956.669, 950.530",
    "40, 33.2996, 948.0452, 960.629, 954.517, 951.329, 944.665, 941.190, 933.970",
    "50, 42.4257, 930.1419, 944.729, 937.563, 933.886, 926.334, 922.465, 914.572",
    "70, 62.3861, 885.5615, 901.751, 893.762, 889.690, 881.374, 877.129, 868.457",
    "96, 93.8384, 807.4196, 824.489, 816.020, 811.734, 803.081, 798.722, 789.931",
    "100, 100, 789.2391, 806.215, 797.755, 793.506, 784.954, 780.648, 771.932"
  })
  void r22ByVolume(
      double volumePercent,
      double massPercent,
      double at20,
      double at0,
      double at10,
      double at15,
      double at25,
      double at30,
      double at40) {
    double p = EthanolWater.massFraction(volumePercent / 100);
    assertEquals(massPercent, 100 * p, 5.1e-5);
    assertEquals(at20, EthanolWater.density(p, 20), 5.1e-5);
    assertEquals(at20 / 998.20123, EthanolWater.gravity20(volumePercent / 100), 6e-8);
    assertEquals(at0, EthanolWater.density(p, 0), 5.1e-4);
    assertEquals(at10, EthanolWater.density(p, 10), 5.1e-4);
    assertEquals(at15, EthanolWater.density(p, 15), 5.1e-4);
    assertEquals(at25, EthanolWater.density(p, 25), 5.1e-4);
    assertEquals(at30, EthanolWater.density(p, 30), 5.1e-4);
    assertEquals(at40, EthanolWater.density(p, 40), 5.1e-4);
  }

  // computed from the coefficients of OIML R 22: % mass, density at 20 °C, % vol
  @ParameterizedTest
  @CsvSource({
    "5, 989.3779, 6.2679",
    "10, 981.8478, 12.4404",
    "12, 979.0959, 14.8867",
    "15, 975.1326, 18.5330",
    "20, 968.6069, 24.5453",
    "30, 953.7844, 36.2546",
    "40, 935.1450, 47.3948",
    "50, 913.7706, 57.8893",
    "80, 843.3861, 85.4885",
    "90, 817.8833, 93.2664"
  })
  void r22ByMass(double massPercent, double density, double volumePercent) {
    assertEquals(density, EthanolWater.density(massPercent / 100, 20), 5.1e-5);
    assertEquals(volumePercent, 100 * EthanolWater.volumeFraction(massPercent / 100), 5.1e-5);
    assertEquals(massPercent, 100 * EthanolWater.massFractionFromDensity(density), 5e-5);
  }

  // computed from the coefficients of OIML R 22: volume at 20 °C over volume at t
  @ParameterizedTest
  @CsvSource({
    "12, 1.002854, 1.002642, 1.002073, 1.001182, 0.998554, 0.996868",
    "14, 1.003353, 1.003001, 1.002304, 1.001294, 0.998448, 0.996663",
    "40, 1.013273, 1.010095, 1.006827, 1.003463, 0.996435, 0.992769"
  })
  void r22Contraction(
      double volumePercent,
      double at0,
      double at5,
      double at10,
      double at15,
      double at25,
      double at30) {
    double p = EthanolWater.massFraction(volumePercent / 100);
    double at20 = EthanolWater.density(p, 20);
    assertEquals(at0, EthanolWater.density(p, 0) / at20, 5.1e-7);
    assertEquals(at5, EthanolWater.density(p, 5) / at20, 5.1e-7);
    assertEquals(at10, EthanolWater.density(p, 10) / at20, 5.1e-7);
    assertEquals(at15, EthanolWater.density(p, 15) / at20, 5.1e-7);
    assertEquals(at25, EthanolWater.density(p, 25) / at20, 5.1e-7);
    assertEquals(at30, EthanolWater.density(p, 30) / at20, 5.1e-7);
  }

  // Perry's Chemical Engineers' Handbook, 7th ed.: % mass, g/mL at 20 °C; older data, within 0.026
  // kg/m³ of R 22
  @ParameterizedTest
  @CsvSource({
    "1, .99636",
    "2, .99453",
    "3, .99275",
    "4, .99103",
    "5, .98938",
    "6, .98780",
    "7, .98627",
    "8, .98478",
    "9, .98331",
    "10, .98187",
    "11, .98047",
    "12, .97910"
  })
  void perry(double massPercent, double gramsPerMl) {
    assertEquals(gramsPerMl * OLD_G_PER_ML, EthanolWater.density(massPercent / 100, 20), 0.03);
  }

  // Simmonds, Alcohol (1919), data of Osborne (NBS): % mass, g/mL from 10 to 40 °C; within 0.074
  // kg/m³ of R 22
  @ParameterizedTest
  @CsvSource({
    "50, .92162, .91776, .91384, .90985, .90580, .90168, .89750",
    "60, .89927, .89523, .89113, .88699, .88278, .87851, .87417",
    "70, .87602, .87187, .86766, .86340, .85908, .85470, .85025",
    "80, .85197, .84772, .84344, .83911, .83473, .83029, .82578"
  })
  void simmonds(
      double massPercent,
      double at10,
      double at15,
      double at20,
      double at25,
      double at30,
      double at35,
      double at40) {
    double p = massPercent / 100;
    assertEquals(at10 * OLD_G_PER_ML, EthanolWater.density(p, 10), 0.08);
    assertEquals(at15 * OLD_G_PER_ML, EthanolWater.density(p, 15), 0.08);
    assertEquals(at20 * OLD_G_PER_ML, EthanolWater.density(p, 20), 0.08);
    assertEquals(at25 * OLD_G_PER_ML, EthanolWater.density(p, 25), 0.08);
    assertEquals(at30 * OLD_G_PER_ML, EthanolWater.density(p, 30), 0.08);
    assertEquals(at35 * OLD_G_PER_ML, EthanolWater.density(p, 35), 0.08);
    assertEquals(at40 * OLD_G_PER_ML, EthanolWater.density(p, 40), 0.08);
  }

  // USP 29, Alcoholometric Table, after NBS Bulletin 9, p. 424: % vol at 60 °F, % mass, apparent
  // gravity 60/60 °F
  @ParameterizedTest
  @CsvSource({
    "1, 0.80, .9985",
    "2, 1.59, .9970",
    "3, 2.39, .9956",
    "5, 4.00, .9928",
    "8, 6.42, .9890",
    "10, 8.05, .9866",
    "11, 8.86, .9854",
    "12, 9.68, .9843",
    "13, 10.50, .9832",
    "14, 11.32, .9821",
    "15, 12.14, .9810",
    "18, 14.61, .9779",
    "20, 16.27, .9759",
    "25, 20.44, .9708",
    "30, 24.67, .9653"
  })
  void uspAt60Fahrenheit(double volumePercent, double massPercent, double apparentGravity) {
    double t = (60 - 32) / 1.8;
    double air = 1.2;
    double density = EthanolWater.density(massPercent / 100, t);
    double volumeFraction = massPercent / 100 * density / EthanolWater.density(1, t);
    double halfDigitOfMass = 0.005 * 1.27;
    assertEquals(volumePercent, 100 * volumeFraction, halfDigitOfMass);
    assertEquals(apparentGravity, (density - air) / (EthanolWater.density(0, t) - air), 7e-5);
  }

  // Canadian Alcoholometric Laboratory Table 1996, introduction: absolute ethanol weighed in air,
  // g/cm³ at 20 °C; air of 1.1982 kg/m³ and weights of 8000 kg/m³ computed to fit
  @Test
  void canadianAbsoluteEthanol() {
    double inAir = (EthanolWater.PURE_ETHANOL_DENSITY_20 - 1.1982) / (1 - 1.1982 / 8000);
    assertEquals(788.1589894, inAir, 1e-3);
  }

  @Property
  void massFractionInvertsVolumeFraction(@Between(min = 0, max = 1) double p) {
    assertEquals(p, EthanolWater.massFraction(EthanolWater.volumeFraction(p)), 2e-12);
  }

  @Property
  void massFractionInvertsDensity(@Between(min = 0, max = 1) double p) {
    assertEquals(p, EthanolWater.massFractionFromDensity(EthanolWater.density(p, 20)), 2e-12);
  }

  @Property
  void lighterWithAlcohol(
      @Between(min = 0, max = 1) double p, @Between(min = 0, max = 40) double temperatureC) {
    assertTrue(
        EthanolWater.density(p + 1e-6, temperatureC) < EthanolWater.density(p, temperatureC));
  }

  @Test
  void theEndsAreExact() {
    assertEquals(0, EthanolWater.massFraction(0));
    assertEquals(1, EthanolWater.gravity20(0));
    assertEquals(1, EthanolWater.volumeFraction(1));
  }

  @Test
  void anInverseOutsideItsRangeThrows() {
    assertThrows(NoBracketingException.class, () -> EthanolWater.massFraction(-1e-9));
    assertThrows(NoBracketingException.class, () -> EthanolWater.massFraction(1 + 1e-9));
    assertThrows(NoBracketingException.class, () -> EthanolWater.massFractionFromDensity(998.2013));
  }
}
