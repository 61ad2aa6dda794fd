package meadcell.batch.calculation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RelativeFormTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "B7*$C$1 | {0,-1}*{$0,$2}",
        "SUM(B$7:$D8) | SUM({$6,-1}:{1,$3})",
        "LOG10(A1)+Q1_sales+1.5E3 | LOG10({-6,-2})+Q1_sales+1.5E3",
        "'B7 sheet'!B7&\"B7 is \"\"B7\"\"\" | 'B7 sheet'!{0,-1}&\"B7 is \"\"B7\"\"\"",
        "Log1!B7 | Log1!{0,-1}",
        "BARREL.DIP(b7,A:A,3:3,_xlfn.X2) | BARREL.DIP({0,-1},A:A,{-4}:{-4},_xlfn.X2)",
        "SUM($3:9)+Table1[[#This Row],[B7]]+[1]Log!B7 | SUM({$2}:{2})+Table1[[#This Row],[B7]]+[1]Log!{0,-1}",
        "ABCD7+A12345678+A0 | ABCD7+A12345678+A0",
        "\"open B7 | \"open B7",
      })
  void relativeReferencesBecomeDistances(String formulaAndForm) {
    String[] pair = formulaAndForm.split(" \\| ");
    assertEquals(pair[1], RelativeForm.of(pair[0], 6, 2));
  }
}
