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

class SucroseTest {

  private static final double AIR = 1.2;
  private static final double BRASS = 8000;

  /** Specific gravity 20/20 as weighed in air. */
  private static double apparentGravity(double massPercent) {
    return (Sucrose.density(massPercent / 100, 20) - AIR) / (Sucrose.density(0, 20) - AIR);
  }

  // computed from the coefficients of ICUMSA SPS-4: % by mass, density, true and apparent gravity
  @ParameterizedTest
  @CsvSource({
    "0, 998.203, 1.00000, 1.00000",
    "5, 1017.805, 1.01964, 1.01966",
    "10, 1038.115, 1.03998, 1.04003",
    "15, 1059.162, 1.06107, 1.06114",
    "20, 1080.977, 1.08292, 1.08302",
    "25, 1103.591, 1.10558, 1.10570",
    "30, 1127.032, 1.12906, 1.12922",
    "35, 1151.332, 1.15340, 1.15359",
    "40, 1176.518, 1.17864, 1.17885",
    "50, 1229.654, 1.23187, 1.23215",
    "60, 1286.611, 1.28893, 1.28928",
    "70, 1347.478, 1.34990, 1.35032",
    "80, 1412.200, 1.41474, 1.41524"
  })
  void icumsaAt20(double massPercent, double density, double gravity, double apparent) {
    assertEquals(density, Sucrose.density(massPercent / 100, 20), 5.1e-4);
    assertEquals(gravity, Sucrose.specificGravity(massPercent / 100), 5.1e-6);
    assertEquals(apparent, apparentGravity(massPercent), 5.1e-6);
  }

  // CRC Handbook, 102nd ed., Concentrative Properties of Aqueous Solutions; it carries older data
  // that part from SPS-4 by up to 0.16 kg/m³ at 50 %, 0.21 at 60, 0.28 at 70, 0.50 at 80
  @ParameterizedTest
  @CsvSource({
    "0, 998.2, 0.05",
    "5, 1017.8, 0.05",
    "10, 1038.1, 0.05",
    "15, 1059.2, 0.05",
    "20, 1081.0, 0.05",
    "30, 1127.0, 0.05",
    "40, 1176.5, 0.05",
    "50, 1229.5, 0.17",
    "60, 1286.4, 0.22",
    "70, 1347.2, 0.29",
    "80, 1411.7, 0.51"
  })
  void crcHandbook(double massPercent, double density, double tolerance) {
    assertEquals(density, Sucrose.density(massPercent / 100, 20), tolerance);
  }

  // Zoecklein et al., Wine Analysis and Production (1995), Table I-1: % sucrose, SG 20/20. The
  // table lies between true and apparent gravity and is older than SPS-4: 1.2e-4 from both.
  @ParameterizedTest
  @CsvSource({
    "1, 1.00387",
    "2, 1.00777",
    "3, 1.01170",
    "4, 1.01565",
    "5, 1.01964",
    "6, 1.02366",
    "7, 1.02771",
    "8, 1.03179",
    "9, 1.03589",
    "10, 1.04002",
    "11, 1.04418",
    "12, 1.04836",
    "13, 1.05257",
    "14, 1.05681",
    "15, 1.06110",
    "16, 1.06541",
    "17, 1.06975",
    "18, 1.07412",
    "19, 1.07853",
    "20, 1.08297",
    "21, 1.08743",
    "22, 1.09193",
    "23, 1.09645",
    "24, 1.10101",
    "25, 1.10562",
    "26, 1.11025",
    "27, 1.11492",
    "28, 1.11962",
    "29, 1.12435",
    "30, 1.12913",
    "31, 1.13392",
    "32, 1.13876",
    "33, 1.14363",
    "34, 1.14854",
    "35, 1.15348",
    "36, 1.15845",
    "37, 1.16348",
    "38, 1.16852",
    "39, 1.17362",
    "40, 1.17875"
  })
  void zoeckleinGravities(double massPercent, double gravity) {
    assertEquals(gravity, Sucrose.specificGravity(massPercent / 100), 1.3e-4);
    assertEquals(gravity, apparentGravity(massPercent), 1.3e-4);
  }

  // same table: pounds in air per US gallon at 20 °C
  @ParameterizedTest
  @CsvSource({
    "5, 8.48508",
    "10, 8.65468",
    "15, 8.83003",
    "20, 9.01207",
    "25, 9.20053",
    "30, 9.39617",
    "35, 9.59882",
    "40, 9.80907"
  })
  void zoeckleinPoundsPerGallon(double massPercent, double pounds) {
    double kilogramsInAir = (Sucrose.density(massPercent / 100, 20) - AIR) / (1 - AIR / BRASS);
    assertEquals(pounds, kilogramsInAir * 3.785411784e-3 / 0.45359237, 0.001);
  }

  // ICUMSA value printed in an encyclopaedia's older article on Brix: apparent SG 1.04000 is
  // 9.99249 %; SPS-4 gives 9.9923
  @Test
  void icumsaAtApparentGravity104() {
    double density = 1.04 * (Sucrose.density(0, 20) - AIR) + AIR;
    assertEquals(9.99249, 100 * Sucrose.massFraction(density, 20), 2.5e-4);
  }

  // computed from the coefficients of ICUMSA SPS-4
  @ParameterizedTest
  @CsvSource({
    "0, 999.964, 999.699, 999.099, 998.203, 997.043, 995.645, 992.212",
    "10, 1040.734, 1040.147, 1039.262, 1038.115, 1036.735, 1035.143, 1031.391",
    "20, 1084.478, 1083.559, 1082.381, 1080.977, 1079.371, 1077.581, 1073.500",
    "30, 1131.429, 1130.172, 1128.698, 1127.032, 1125.197, 1123.205, 1118.792",
    "40, 1181.805, 1180.213, 1178.443, 1176.518, 1174.455, 1172.263, 1167.521"
  })
  void icumsaByTemperature(
      double massPercent,
      double at5,
      double at10,
      double at15,
      double at20,
      double at25,
      double at30,
      double at40) {
    double w = massPercent / 100;
    assertEquals(at5, Sucrose.density(w, 5), 5.1e-4);
    assertEquals(at10, Sucrose.density(w, 10), 5.1e-4);
    assertEquals(at15, Sucrose.density(w, 15), 5.1e-4);
    assertEquals(at20, Sucrose.density(w, 20), 5.1e-4);
    assertEquals(at25, Sucrose.density(w, 25), 5.1e-4);
    assertEquals(at30, Sucrose.density(w, 30), 5.1e-4);
    assertEquals(at40, Sucrose.density(w, 40), 5.1e-4);
  }

  // computed from the coefficients of ICUMSA SPS-4: cubic expansion at 20 °C, 1/K
  @ParameterizedTest
  @CsvSource({"0, 2.07e-4", "10, 2.44e-4", "20, 2.79e-4", "30, 3.11e-4", "40, 3.39e-4"})
  void icumsaExpansion(double massPercent, double expansion) {
    double w = massPercent / 100;
    double fall = Sucrose.density(w, 19.9) - Sucrose.density(w, 20.1);
    assertEquals(expansion, fall / 0.2 / Sucrose.density(w, 20), 5.1e-7);
  }

  // German Imperial table XIX (Kaiserliche Normal-Eichungs-Kommission): SG 15/15, g in 100 mL
  @ParameterizedTest
  @CsvSource({
    "1.0010, 0.26",
    "1.0050, 1.29",
    "1.0100, 2.58",
    "1.0130, 3.36",
    "1.0150, 3.87",
    "1.0170, 4.39",
    "1.0190, 4.91"
  })
  void germanImperialTable19(double gravity15, double gramsIn100Ml) {
    double density = gravity15 * Sucrose.density(0, 15);
    assertEquals(gramsIn100Ml, Sucrose.massFraction(density, 15) * density / 10, 0.01);
  }

  // first row computed from the coefficients of ICUMSA SPS-4; second from memory: the table of
  // OIV-MA-AS2-03B
  @ParameterizedTest
  @CsvSource({
    "1.001, 2.59, 2.6",
    "1.002, 5.17, 5.1",
    "1.005, 12.94, 12.9",
    "1.010, 25.89, 25.8",
    "1.020, 51.83, 51.7",
    "1.030, 77.82, 77.7",
    "1.040, 103.85, 103.7",
    "1.050, 129.94, 129.8",
    "1.060, 156.08, 155.9",
    "1.080, 208.51, 208.4",
    "1.100, 261.17, 261.0",
    "1.120, 314.07, 313.9"
  })
  void extractByGravity(double gravity, double gramsPerLitre, double oiv) {
    assertEquals(gramsPerLitre, Sucrose.gramsPerLitre(gravity), 0.0051);
    assertEquals(oiv, Sucrose.gramsPerLitre(gravity), 0.2);
  }

  @Property
  void massFractionInvertsDensity(
      @Between(min = -0.09, max = 0.86) double w, @Between(min = 0, max = 80) double temperatureC) {
    assertEquals(w, Sucrose.massFraction(Sucrose.density(w, temperatureC), temperatureC), 2e-15);
  }

  @Property
  void gravitiesAreInverse(@Between(min = 0.97, max = 1.45) double gravity) {
    assertEquals(gravity, Sucrose.specificGravity(Sucrose.massFractionFromGravity(gravity)), 2e-15);
    assertEquals(gravity, Sucrose.gravityFromGramsPerLitre(Sucrose.gramsPerLitre(gravity)), 2e-15);
  }

  @Property
  void denserWithSugar(
      @Between(min = -0.1, max = 0.9) double w, @Between(min = 0, max = 80) double temperatureC) {
    assertTrue(Sucrose.density(w + 1e-6, temperatureC) > Sucrose.density(w, temperatureC));
  }

  @Test
  void waterHasNoSugar() {
    assertEquals(0, Sucrose.massFractionFromGravity(1));
    assertEquals(1, Sucrose.specificGravity(0));
    assertEquals(0, Sucrose.gramsPerLitre(1));
  }

  @Test
  void anInverseOutsideItsRangeThrows() {
    assertTrue(Sucrose.massFraction(Sucrose.density(-0.0999, 20), 20) < -0.0998);
    assertThrows(
        NoBracketingException.class, () -> Sucrose.massFraction(Sucrose.density(-0.1001, 20), 20));
    assertTrue(Sucrose.massFraction(Sucrose.density(0.8999, 20), 20) > 0.8998);
    assertThrows(
        NoBracketingException.class, () -> Sucrose.massFraction(Sucrose.density(0.9001, 20), 20));
    assertThrows(NoBracketingException.class, () -> Sucrose.massFraction(Double.NaN, 20));
  }
}
