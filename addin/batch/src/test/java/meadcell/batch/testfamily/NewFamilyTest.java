package meadcell.batch.testfamily;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import meadcell.batch.Run;
import org.junit.jupiter.api.Test;

/** A new family appears everywhere without another edit. */
class NewFamilyTest {
  @Test
  void isEvaluated() {
    assertEquals("43", Run.of("eval", "TRIAL.TWICE(21)+1").out().trim());
    assertTrue(Run.of("eval", "TRIAL.TWICE(1001)").out().startsWith("#NUM! value is 1001"));
  }

  @Test
  void isListedAndExplained() {
    assertTrue(Run.of("functions").out().contains("TRIAL.TWICE(value)"));
    String page = Run.of("explain", "trial.twice").out();
    assertTrue(page.contains("TRIAL.TWICE(21) gives 42"), page);
  }

  @Test
  void isChecked() {
    assertTrue(Run.of("selfcheck").out().contains("ok\tTRIAL.TWICE(21)"));
  }
}
