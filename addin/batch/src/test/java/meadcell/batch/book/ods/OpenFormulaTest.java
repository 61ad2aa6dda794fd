package meadcell.batch.book.ods;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OpenFormulaTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      quoteCharacter = '#',
      value = {
        "of:=GRAVITY.CORRECT([.B14];[.C14];;[.$B$8]) ! GRAVITY.CORRECT(B14,C14,,$B$8)",
        "of:=SUM([.A1:.B2])*2 ! SUM(A1:B2)*2",
        "of:=F({1;2|3;4};\"a;b [.C1]\") ! F({1,2;3,4},\"a;b [.C1]\")",
        "of:=LOG10([.A1]) ! LOG10(A1)",
        "of:=SUM([.A:.B])+SUM([.$3:.4])+[.A1]:INDEX([.B1:.B9];2) "
            + "! SUM(A:B)+SUM($3:4)+A1:INDEX(B1:B9,2)",
      })
  void translatesBothWays(String stored, String a1) {
    assertEquals(a1, OpenFormula.toA1(stored));
    assertEquals(stored, OpenFormula.fromA1(a1));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '#',
      value = {
        "of:=[$Log.C3]+[$'My. [log]'.C3:.D4] | Log!C3+'My. [log]'!C3:D4",
        "of:=SUM([$Log.$A:.$A];[$'it''s'.1:.2]) | SUM(Log!$A:$A,'it''s'!1:2)",
        "of:=SUM([$Jan.A1:$Mar.B2])*Brix | SUM(Jan:Mar!A1:B2)*Brix",
      })
  void namesOtherSheets(String stored, String a1) {
    assertEquals(a1, OpenFormula.toA1(stored));
    assertEquals(stored, OpenFormula.fromA1(a1));
  }

  @Test
  void readsWhatOtherProgramsPutInFront() {
    assertEquals("A1+1", OpenFormula.toA1("msoxl:=A1+1"));
  }
}
