package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

class ReferenceManualTest {
  @Test
  void theManualIsWhatTheDeclarationsSay() throws IOException {
    String written = Files.readString(ReferenceManual.FILE);
    assertTrue(
        written.equals(ReferenceManual.text(Cellar.catalogue())),
        "REFERENCE.md is stale; DEVELOPERS.md says how it is written anew");
  }
}
