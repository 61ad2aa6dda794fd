package meadcell.lab;

import static org.junit.jupiter.api.Assertions.assertEquals;

import meadcell.property.Between;
import meadcell.property.Property;

class LabTest {

  @Property
  void twiceTheTitreOrHalfTheSampleIsTwiceAsMuch(
      @Between(min = 0.01, max = 50) double titre,
      @Between(min = 0.005, max = 0.1) double normality,
      @Between(min = 2, max = 500) double sample) {
    double acidity = Lab.acidity(titre, normality, sample);
    assertEquals(2 * acidity, Lab.acidity(2 * titre, normality, sample), 1e-9 * acidity);
    assertEquals(2 * acidity, Lab.acidity(titre, 2 * normality, sample), 1e-9 * acidity);
    assertEquals(2 * acidity, Lab.acidity(titre, normality, sample / 2), 1e-9 * acidity);
  }

  // molar masses per proton or iodine atom: tartaric 75.043, acetic 60.052, sulfur dioxide 32.032
  @Property
  void theSameTitreIsAsManyMoles(
      @Between(min = 0.01, max = 100) double titre,
      @Between(min = 0.005, max = 0.2) double normality,
      @Between(min = 1, max = 500) double sample) {
    double moles = Lab.acidity(titre, normality, sample) / 75.043;
    assertEquals(moles, Lab.Volatile(titre, normality, sample) / 60.052, 1e-9 * moles);
    assertEquals(moles, Lab.so2(titre, normality, sample) / 32032, 1e-9 * moles);
  }
}
