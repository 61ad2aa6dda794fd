package meadcell.gravity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import meadcell.catalogue.Refusal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LogbookNoteTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1.085 | 1.085",
        "1,085 | 1.085",
        "1085 | 1.085",
        "1085.5 | 1.0855",
        "1085,5 | 1.0855",
        "  1.085  | 1.085",
        "1.0850 | 1.085",
        "1.08 | 1.08",
        "1,08 | 1.08",
        "0.995 | 0.995",
        ".995 | 0.995",
        ",995 | 0.995",
        "0,995 | 0.995",
        "995 | 0.995",
        "1000 | 1",
        "1.000 | 1",
        "1.00 | 1",
        "1.200 | 1.2",
        "1.222 | 1.222",
        "1293 | 1.293",
        "1200 | 1.2",
        "0.980 | 0.98",
        "980 | 0.98",
        "1.085 SG | 1.085",
        "1.085sg | 1.085",
        "1.085 S.G. | 1.085",
        "SG 1.085 | 1.085",
        "SG: 1.085 | 1.085",
        "sg=1,085 | 1.085",
        "SG1.085 | 1.085",
        "1085 sg | 1.085",
        "SG 1.1 | 1.1",
        "SG 1 | 1",
        "OG 1.102 | 1.102",
        "O.G.: 1.102 | 1.102",
        "og1102 | 1.102",
        "FG 0.996 | 0.996",
      })
  void gravities(String text, double gravity) {
    assertEquals(gravity, Gravity.read(text), 1e-12);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "20.5 Bx | 20.5",
        "20,5 Bx | 20.5",
        "20.5bx | 20.5",
        "20.5 °Bx | 20.5",
        "20.5° Bx | 20.5",
        "20.5ºBx | 20.5",
        "20.5 Brix | 20.5",
        "20.5 BRIX | 20.5",
        "Brix 20.5 | 20.5",
        "Bx: 20.5 | 20.5",
        "20 Bx | 20",
        "20.5 °P | 20.5",
        "20.5 Plato | 20.5",
        "OG 24 Bx | 24",
        "-1.5 Bx | -1.5",
        "−1,5 °Bx | -1.5",
        "0 Bx | 0",
        "44 Bx | 44",
        "-5 Bx | -5",
      })
  void brix(String text, double brix) {
    assertEquals(Gravity.fromBrix(brix), Gravity.read(text), 1e-12);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "11.2 Bé | 11.2",
        "11,2 °Bé | 11.2",
        "11.2 Be | 11.2",
        "11.2 baumé | 11.2",
        "11.2 Be\u0301 | 11.2",
        "11.2\u00a0Bé | 11.2",
        "Baume 11.2 | 11.2",
        "24.1 Bé | 24.1",
      })
  void baume(String text, double baume) {
    assertEquals(Gravity.fromBaume(baume), Gravity.read(text), 1e-12);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "85 Oe | 85",
        "85 °Oe | 85",
        "85 Öchsle | 85",
        "85 Oechsle | 85",
        "Oe 85 | 85",
        "-5 Oe | -5",
        "199 Oe | 199",
      })
  void oechsle(String text, double oechsle) {
    assertEquals(Gravity.fromOechsle(oechsle), Gravity.read(text), 1e-12);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "85",
        "1.85",
        "10,85",
        "20",
        "20.5",
        "1",
        "1.0",
        "1.1",
        "0.9",
        "0.97",
        "1.301",
        "979",
        "1301",
        "10850",
        "-1.085",
        "1.085.0",
        "1,085.5",
        "1 085",
        "1. 085",
        "1.085?",
        "~1.085",
        "about 1.085",
        ">1.100",
        "1.085-1.090",
        "1.085/1.090",
        "1.O85",
        "1.085 kg/L",
        "1.085 g",
        "85 points",
        "20 %",
        "20°",
        "20 B",
        "20 P",
        "20 Bx Bx",
        "SG 20 Bx",
        "Bx 20 Bx",
        "Bx 20 Bé",
        "63 Bx",
        "-6 Bx",
        "33.6 Bé",
        "-3 Bé",
        "300 Oe",
        "-20 Oe",
        "SG 85",
        "1.85 SG",
        "Bx",
        "SG",
        "OG",
        "dry",
        ".",
        "1.",
        "1e3",
        "1.085 1.085",
      })
  void refused(String text) {
    Refusal refusal = assertThrows(Refusal.class, () -> Gravity.read(text));
    assertTrue(refusal.getMessage().startsWith("text is \"" + text + "\"; "));
  }

  @Test
  void everyWholeThousandthIsReadInEachSpelling() {
    for (int n = 980; n <= 1300; n++) {
      String point = String.format(Locale.ROOT, "%.3f", n / 1000.0);
      for (String text : new String[] {"" + n, point, point.replace('.', ','), point + " SG"}) {
        assertEquals(n / 1000.0, Gravity.read(text), 1e-12, text);
      }
    }
  }
}
