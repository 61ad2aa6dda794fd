package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;

import meadcell.samples.sheet.Book;
import meadcell.samples.week.FirstWeek;
import org.apache.poi.ss.usermodel.Cell;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each exercise knows a right answer, a wrong one, and one that no mead can have. */
class ExercisesTest {
  private static Book book;

  @BeforeAll
  static void build() {
    book = FirstWeek.build();
  }

  @ParameterizedTest
  @CsvSource({
    "moisture, 18, 17.2, 0.18",
    "brix, 1.083, 1.09, 1083",
    "cold, 1.0975, 1.1025, 1097.5",
    "dry, 14.1, 13.78, 0.141",
    "gauge, 237.9, 194.6, 2379",
    "space, 4.94, 1, -1",
    "stick, 48, 40, 480",
    "sulfite, 40, 25, -40",
    "triangle, 13, 12, 25",
    "blend, 22.6, 77.4, -1",
    "fruit, 7.6, 8.5, -1"
  })
  void verdicts(String exercise, double right, double wrong, double refused) {
    assertEquals("Type", firstWord(exercise, null));
    assertEquals("Right", firstWord(exercise, right));
    assertEquals("Not", firstWord(exercise, wrong));
    assertEquals("No", firstWord(exercise, refused));
  }

  private static String firstWord(String exercise, Double answer) {
    Cell typed = Samples.named(book.workbook(), exercise + "_answer");
    if (answer == null) {
      typed.setBlank();
    } else {
      typed.setCellValue(answer);
    }
    book.evaluate();
    return Samples.named(book.workbook(), exercise + "_answer_verdict")
        .getStringCellValue()
        .split("\\W")[0];
  }
}
