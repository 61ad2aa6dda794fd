package meadcell.batch.calculation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RelativeFormsTest {

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
    assertEquals(pair[1], new RelativeForms().of(pair[0], 6, 2));
  }

  @ParameterizedTest
  @CsvSource({
    "B6*$C$1+B10, B7*$C$1+B11, true",
    "B9+$B9, B10+$B10, true",
    "SUM(B$1:B6)+6:6, SUM(B$1:B7)+7:7, true",
    "B6, B6, false",
    "B6*2, B7*3, false",
    "B6*2, B7*22, false",
    "B6*2, B77*2, false",
    "B6, B07, false",
    "B6, B, false",
    "B6, $B7, false",
    "B6, B$7, false",
    "B6, b7, true",
    "B6+1, B7, false",
    "B6, B7+1, false",
    "B6*B6, B7*B6, false",
    "B1, B0, false",
    "'\"B6\"&B6', '\"B7\"&B7', false",
    "'\"B6\"&B6', '\"B6\"&B7', true",
    "LOG10(B6), LOG11(B7), false",
  })
  void copyHasTheFormOfTheOneAboveItAndNothingElseHas(String above, String below, boolean same) {
    RelativeForms forms = new RelativeForms();
    String form = forms.of(above, 5, 2);
    assertEquals(new RelativeForms().of(below, 6, 2), forms.of(below, 6, 2));
    assertEquals(same, form.equals(forms.of(below, 6, 2)));
    assertEquals(form, forms.of(above, 5, 2));
  }
}
