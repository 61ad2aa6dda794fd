package meadcell.samples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import meadcell.catalogue.FunctionSpec;
import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import meadcell.samples.sheet.Book;
import meadcell.samples.week.FirstWeek;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.FormulaError;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said to a right answer, to wrong ones, and to what is no answer at all. */
class ExercisesTest {
  private static final Book ENGLISH = FirstWeek.build(Locale.ENGLISH);
  private static final Book GERMAN = FirstWeek.build(Locale.GERMAN);

  @BeforeEach
  void inMetricUnits() {
    for (Book book : List.of(ENGLISH, GERMAN)) {
      Samples.named(book.workbook(), "units").setCellValue("metric");
    }
  }

  @ParameterizedTest
  @CsvSource({
    "moisture, 18, 18.3, 17.2, 0.18",
    "brix, 1.083, 1.0835, 1.09, 1083",
    "cold, 1.0975, 1.0985, 1.09, 1097.5",
    "dry, 14.1, 14.2, 13.5, 0.141",
    "space, 4.94, 5.3, 1, -1",
    "stick, 48, 49, 40, 480",
    "sulfite, 40, 42, 25, -40",
    "blend, 22.6, 24, 60, -1",
    "bottle, 535, 560, 300, -200",
    "fruit, 7.6, 7.9, 10, -1"
  })
  void verdicts(String exercise, double right, double near, double far, double refused) {
    for (Book book : List.of(ENGLISH, GERMAN)) {
      boolean isGerman = book == GERMAN;
      assertStarts(isGerman ? "Geben Sie" : "Type your", type(book, exercise, null));
      assertStarts(isGerman ? "Richtig. " : "Right. ", type(book, exercise, right));
      assertStarts(
          isGerman ? "Fast: etwas zu hoch" : "Nearly: a little too high",
          type(book, exercise, near));
      String off = far > right ? (isGerman ? "Zu hoch" : "Too high") : tooLow(isGerman);
      assertStarts(off, type(book, exercise, far));
      assertStarts(isGerman ? "Nein: " : "No: ", type(book, exercise, refused));
      assertStarts(isGerman ? "Das ist ein Text" : "That is a text", type(book, exercise, "18 L"));
    }
  }

  private static String tooLow(boolean isGerman) {
    return isGerman ? "Zu niedrig" : "Too low";
  }

  private static void assertStarts(String start, String text) {
    assertTrue(text.startsWith(start), text);
  }

  private static String type(Book book, String exercise, Object answer) {
    put(book, exercise, answer);
    return shown(book, exercise + "_answer_verdict");
  }

  private static void put(Book book, String exercise, Object answer) {
    Cell typed = Samples.named(book.workbook(), exercise + "_answer");
    if (answer == null) {
      typed.setBlank();
    } else if (answer instanceof FormulaError error) {
      typed.setCellErrorValue(error.getCode());
    } else if (answer instanceof Number number) {
      typed.setCellValue(number.doubleValue());
    } else {
      typed.setCellValue(answer.toString());
    }
  }

  private static String shown(Book book, String name) {
    return book.workbook()
        .getCreationHelper()
        .createFormulaEvaluator()
        .evaluate(Samples.named(book.workbook(), name))
        .getStringValue();
  }

  @Test
  void anErrorInTheAnswerIsASentence() {
    assertStarts("#NAME?: a name", type(ENGLISH, "brix", FormulaError.NAME));
    assertStarts("#VALUE!: the formula got a text", type(ENGLISH, "brix", FormulaError.VALUE));
    assertStarts("Err:502: a value", type(ENGLISH, "brix", FormulaError.NUM));
    assertStarts("The formula ends in an error", type(ENGLISH, "brix", FormulaError.DIV0));
    assertStarts("Die Formel endet", type(GERMAN, "brix", FormulaError.NA));
    type(ENGLISH, "brix", null);
    type(GERMAN, "brix", null);
  }

  @Test
  void whatIsOftenDoneInsteadHasItsOwnWord() {
    assertStarts("That is the rule of thumb: 13.78.", type(ENGLISH, "dry", 13.78));
    assertStarts("That is the share of the first.", type(ENGLISH, "blend", 77.4));
    assertStarts("In the cold it reads too high", type(ENGLISH, "cold", 1.1025));
    assertStarts("Guessing gives that many in 14 of", type(ENGLISH, "triangle", 11));
    assertStarts("Right. Guessing", type(ENGLISH, "triangle", 13));
    assertStarts("Too high. Enough, but", type(ENGLISH, "triangle", 20));
    assertStarts("No: ", type(ENGLISH, "triangle", 25));
  }

  @Test
  void thePublishedValueIsShownToTheRightAnswerOnly() {
    type(ENGLISH, "gauge", 200);
    assertStarts("Shown when", shown(ENGLISH, "gauge_answer_published"));
    assertStarts("Too high. ", type(ENGLISH, "gauge", 2379));
    type(ENGLISH, "gauge", 238);
    assertStarts(
        "237.915 US gal (published). Call: BARREL.VOLUME(30.3;",
        shown(ENGLISH, "gauge_answer_published"));
  }

  @ParameterizedTest
  @CsvSource({"cold, 1.0975", "space, 1.305", "stick, 18.9", "fruit, 16.8", "moisture, 18"})
  void inUsUnitsToo(String exercise, double right) {
    Samples.named(ENGLISH.workbook(), "units").setCellValue("US");
    assertStarts("Right. ", type(ENGLISH, exercise, right));
  }

  @ParameterizedTest
  @CsvSource({
    "1, 1.1036, 1.104, 1.1",
    "2, 1.0876, 1.087, 1087",
    "3, 1.0668, 1.066, 1.06",
    "4, 1.0484, 1.048, 1.05",
    "10, 0.9971, 0.998, 1"
  })
  void aLineThatCanBeReadIsReadAndCorrected(int line, double right, double raw, double wrong) {
    assertEquals("Right.", typeOnPage(ENGLISH, line, right));
    assertStarts("That is the reading", typeOnPage(ENGLISH, line, raw));
    assertStarts(
        wrong > 2 ? "A gravity is like 1.087" : "Not what this line says.",
        typeOnPage(ENGLISH, line, wrong));
    assertEquals("…", typeOnPage(ENGLISH, line, null));
  }

  private static String typeOnPage(Book book, int line, Double answer) {
    put(book, "page_" + line, answer);
    return shown(book, "page_" + line + "_verdict");
  }

  /** The page says so; the slip in the sixth line is a number, which only a person doubts. */
  @Test
  void theToolReadsTheLinesAsThePageDoes() {
    double[] read = {1.104, 1.087, 1.066, 1.048, 0, 1.1031, 0, 1.012, 1.004, 0.998};
    for (Book book : List.of(ENGLISH, GERMAN)) {
      Cell first = Samples.named(book.workbook(), "page_1_answer");
      for (int i = 0; i < read.length; i++) {
        String noted =
            first.getSheet().getRow(first.getRowIndex() + i).getCell(1).getStringCellValue();
        FunctionSpec reading = Cellar.catalogue().get("GRAVITY.READ");
        if (read[i] == 0) {
          assertThrows(Refusal.class, () -> reading.call(noted));
        } else {
          assertEquals(read[i], (Double) reading.call(noted), 1e-9, noted);
        }
      }
    }
  }

  @Test
  void aLineThatCannotBeReadStaysEmpty() {
    assertStarts("Nobody can know that", typeOnPage(ENGLISH, 5, 1.0311));
    assertStarts("0 of 6 lines right, 1 guessed. Go on", shown(ENGLISH, "page_score"));
    typeOnPage(ENGLISH, 5, null);
    double[] right = {1.1036, 1.0876, 1.0668, 1.0484, 0, 0, 0, 0, 1.004, 0.9971};
    for (int i = 0; i < right.length; i++) {
      typeOnPage(ENGLISH, i + 1, right[i] == 0 ? null : right[i]);
    }
    assertStarts("6 of 6 lines right, 0 guessed. Well read.", shown(ENGLISH, "page_score"));
    for (int i = 0; i < right.length; i++) {
      typeOnPage(ENGLISH, i + 1, null);
    }
  }
}
