package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import meadcell.cellar.Cellar;
import org.junit.jupiter.api.Test;

class ReferenceManualTest {
  @Test
  void theManualIsWhatTheDeclarationsSay() throws IOException {
    assertEquals(
        Files.readString(ReferenceManual.FILE),
        ReferenceManual.text(Cellar.catalogue()),
        "write it anew with ReferenceManual's main");
  }
}
