package meadcell.batch.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import meadcell.batch.report.Report.Code;
import meadcell.batch.report.Report.Remark;
import org.junit.jupiter.api.Test;

class AlikeTest {
  private static Remark remark(String cell, String sentence) {
    return new Remark(Code.STALE, "log", cell, "", sentence);
  }

  private static List<String> told(List<Remark> remarks) {
    return Alike.of(remarks).stream().map(Alike::toString).toList();
  }

  @Test
  void manyOfAColumnAreOneLineWhereTheFirstStands() {
    List<Remark> remarks = new ArrayList<>();
    for (int row = 2; row <= 9; row++) {
      remarks.add(remark("F" + row, "rests on 'My log'!$C$" + row + ", which is stale."));
      remarks.add(remark("G" + row, "pH is " + row + "; too high."));
    }
    List<String> told = told(remarks);
    assertEquals("log!F2 to F9, 8 cells: rests on 'My log'!$C$2, which is stale.", told.get(0));
    assertEquals("log!G2: pH is 2; too high.", told.get(1), "what differs is told each by itself");
    assertEquals(9, told.size());
  }

  @Test
  void aFewAndWhatIsOfTheFileAreToldOneByOne() {
    List<Remark> remarks = new ArrayList<>();
    for (int row = 2; row <= 6; row++) {
      remarks.add(remark("F" + row, "is blank."));
      remarks.add(remark("", "no plan line fits."));
      remarks.add(remark("", "no plan line fits."));
    }
    assertEquals(remarks.stream().map(Remark::toString).toList(), told(remarks));
  }
}
