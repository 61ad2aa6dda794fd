package meadcell.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import meadcell.formula.FormulaScanner.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class FormulaScannerTest {
  private static String tokens(String formula, Dialect dialect) {
    List<String> tokens = new ArrayList<>();
    for (FormulaScanner scanner = new FormulaScanner(formula, dialect); scanner.next(); ) {
      tokens.add(scanner.kind() + " " + scanner.text());
    }
    return String.join(" | ", tokens);
  }

  private static String translated(String formula, Dialect from, Dialect to) {
    StringBuilder out = new StringBuilder();
    for (FormulaScanner scanner = new FormulaScanner(formula, from); scanner.next(); ) {
      out.append(to.written(scanner));
    }
    return out.toString();
  }

  @Test
  void excel() {
    assertEquals(
        "FUNCTION SUM | OPEN ( | CELL $A1 | OPERATOR : | CELL B$22 | SEPARATOR , | NAME Log"
            + " | OPERATOR ! | CELL C3 | SEPARATOR , | QUOTED 'My ''log' | OPERATOR ! | CELL d4"
            + " | CLOSE )",
        tokens("SUM($A1:B$22,Log!C3,'My ''log'!d4)", Dialect.EXCEL));
    assertEquals(
        "ARRAY_OPEN { | NUMBER 1 | ARRAY_CELL , | NUMBER 2 | ARRAY_ROW ; | TEXT \"a;\"\"}\""
            + " | ARRAY_CLOSE }",
        tokens("{1,2;\"a;\"\"}\"}", Dialect.EXCEL));
    assertEquals(
        "NAME Table1 | BRACKETED [[#This Row],[B7 '] ]] | OPERATOR * | BRACKETED [1] | NAME Log"
            + " | OPERATOR ! | CELL A1",
        tokens("Table1[[#This Row],[B7 '] ]]*[1]Log!A1", Dialect.EXCEL));
    assertEquals(
        "ROW 3 | OPERATOR : | ROW $5 | SPACE   | CELL A1 | SPACE   | OPEN ( | NAME A | OPERATOR :"
            + " | NAME $B | CLOSE )",
        tokens("3:$5 A1 (A:$B)", Dialect.EXCEL));
  }

  @Test
  void openFormulaAndCalc() {
    assertEquals(
        "BRACKETED [$'My. [log]'.C3:.D4] | SEPARATOR ; | ARRAY_OPEN { | NUMBER 1 | ARRAY_CELL ;"
            + " | NUMBER 2 | ARRAY_ROW | | NUMBER 3 | ARRAY_CLOSE }",
        tokens("[$'My. [log]'.C3:.D4];{1;2|3}", Dialect.OPEN_FORMULA));
    assertEquals(
        "FUNCTION LAB.SO2 | OPEN ( | NAME $Log.A1 | SEPARATOR ; | CELL B2 | CLOSE )",
        tokens("LAB.SO2($Log.A1;B2)", Dialect.CALC));
  }

  @Test
  void plan() {
    assertEquals(
        "FUNCTION IF | SPACE   | OPEN ( | BRACKETED [all SG] | OPERATOR > | NUMBER 1.5E+3"
            + " | SEPARATOR , | LABEL {OG} | SEPARATOR ; | ARRAY_OPEN { | SPACE   | OPERATOR -"
            + " | NUMBER 1 | ARRAY_CELL , | NUMBER .5 | ARRAY_CLOSE } | CLOSE )",
        tokens("IF ([all SG]>1.5E+3,{OG};{ -1,.5})", Dialect.PLAN));
  }

  @ParameterizedTest
  @CsvSource({"A0", "A12345678", "ABCD7", "_xlfn.X2", "Q1_sales", "TRUE", "größe", "A1.5"})
  void whatIsNearlyACellIsAName(String word) {
    assertEquals("NAME " + word, tokens(word, Dialect.EXCEL));
  }

  @Test
  void placesOfCells() {
    FormulaScanner scanner = new FormulaScanner("$AB17", Dialect.EXCEL);
    assertTrue(scanner.next());
    assertEquals(27, scanner.column());
    assertEquals(16, scanner.row());
    assertTrue(scanner.isColumnFixed());
    assertFalse(scanner.isRowFixed());
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '^',
      value = {"\"open ''", "'open \"\"", "[open", "[[a]"})
  void whatHasNoEndIsOneToken(String formula) {
    assertEquals("UNCLOSED " + formula, tokens(formula, Dialect.EXCEL));
  }

  @Test
  void separatorsAreTranslated() {
    assertEquals(
        "F(A1;{1;2|3;4};\"a,b\")",
        translated("F(A1,{1,2;3,4},\"a,b\")", Dialect.EXCEL, Dialect.CALC));
    assertEquals("F(1,{1,2;3,4},)", translated("F(1;{1,2;3,4};)", Dialect.PLAN, Dialect.EXCEL));
  }

  /** Whatever is scanned, no sign is lost and none is read twice. */
  @ParameterizedTest
  @EnumSource
  void tokensAreTheWholeText(Dialect dialect) {
    Random chance = new Random(20261126);
    String signs = "AZ19$.:;,|!\"'[](){}<=>+-*/^&% \\_éE#";
    for (int i = 0; i < 20_000; i++) {
      StringBuilder formula = new StringBuilder();
      for (int length = chance.nextInt(12); length > 0; length--) {
        formula.append(signs.charAt(chance.nextInt(signs.length())));
      }
      StringBuilder read = new StringBuilder();
      FormulaScanner scanner = new FormulaScanner(formula.toString(), dialect);
      while (scanner.next()) {
        assertTrue(scanner.end() > scanner.start());
        assertTrue(scanner.kind() != Kind.UNCLOSED || scanner.end() == formula.length());
        read.append(scanner.text());
      }
      assertEquals(formula.toString(), read.toString());
    }
  }
}
