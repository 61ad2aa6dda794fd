package meadcell.batch.safety;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import meadcell.batch.Run;
import meadcell.batch.book.Packages;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Nothing outside of a workbook is ever read. */
class NothingOutsideTest {
  @TempDir Path folder;
  private Scene scene;

  @BeforeEach
  void scene() {
    scene = new Scene(folder);
  }

  /** A port that counts who comes. */
  private static final class Listener implements AutoCloseable {
    private final ServerSocket port = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    private final AtomicInteger visits = new AtomicInteger();

    Listener() throws IOException {
      Thread thread =
          new Thread(
              () -> {
                while (!port.isClosed()) {
                  try {
                    port.accept().close();
                    visits.incrementAndGet();
                  } catch (IOException e) {
                    return;
                  }
                }
              });
      thread.setDaemon(true);
      thread.start();
    }

    /** A document type whose definition lies here. */
    String documentType(String root) {
      String url = "http://127.0.0.1:" + port.getLocalPort() + "/";
      return "<!DOCTYPE "
          + root
          + " PUBLIC \"a\" \""
          + url
          + "a.dtd\" [<!ENTITY % b SYSTEM \""
          + url
          + "b.dtd\"> %b; <!ENTITY c SYSTEM \""
          + url
          + "c.txt\">]>";
    }

    @Override
    public void close() throws IOException {
      port.close();
    }
  }

  private void visitsNobody(Path file, Map<String, byte[]> original) throws Exception {
    try (Listener listener = new Listener()) {
      for (String part : original.keySet()) {
        if (!part.endsWith(".xml") && !part.endsWith(".rels") && !part.endsWith(".vml")) {
          continue;
        }
        Map<String, byte[]> parts = new java.util.TreeMap<>(original);
        String text = Parts.text(original.get(part));
        String root = text.replaceFirst("(?s)^\\s*<([\\w:]+).*", "$1");
        parts.put(part, (listener.documentType(root) + text).getBytes(StandardCharsets.UTF_8));
        Files.write(file, Packages.zip(parts));
        for (String command : new String[] {"fill", "recalc", "freeze", "check"}) {
          String out = folder.resolve("out").toString();
          Run run =
              command.equals("fill")
                  ? scene.fill(file, "--out", out, "--force")
                  : command.equals("check")
                      ? Run.of("check", file.toString())
                      : Run.of(command, file.toString(), "--out", out, "--force");
          assertFalse(run.err().contains("fault"), part + ": " + run.err());
        }
      }
      assertEquals(0, listener.visits.get(), "connections were opened");
    }
  }

  @Test
  void noWorkbookMakesTheToolOpenAConnection() throws Exception {
    Golden.plan(folder.resolve("plan.xlsx"));
    Path file = GoldenBooks.both().get(4).save(folder);
    visitsNobody(folder.resolve("log.xlsx"), Packages.parts(Files.readAllBytes(file)));
  }

  @Test
  void noOpenDocumentMakesTheToolOpenAConnection() throws Exception {
    Map<String, byte[]> parts =
        Packages.parts(Files.readAllBytes(Path.of("../../sample-workbooks/first-week.ods")));
    visitsNobody(folder.resolve("log.ods"), parts);
  }

  @Test
  void openDocumentsWithBasicLibrariesAreFilled() throws Exception {
    Map<String, byte[]> parts = Packages.parts(OdsLog.of(OdsLog.typed("17").replace("about", "")));
    parts.put(
        "Basic/Standard/Module1.xml",
        ("<?xml version=\"1.0\" encoding=\"UTF-8\"?><!DOCTYPE script:module PUBLIC"
                + " \"-//OpenOffice.org//DTD OfficeDocument 1.0//EN\" \"module.dtd\">"
                + "<script:module xmlns:script=\"http://openoffice.org/2000/script\""
                + " script:name=\"Module1\" script:language=\"StarBasic\">Sub a\nEnd Sub"
                + "</script:module>")
            .getBytes(StandardCharsets.UTF_8));
    Path file = Files.write(folder.resolve("log.ods"), Packages.zip(parts));
    scene.plan("Brix", "GRAVITY.TOBRIX([SG])");
    Path filled = scene.filled(file);
    assertTrue(Scene.part(filled, "content.xml").contains("GRAVITY.TOBRIX"));
    assertArrayEquals(
        parts.get("Basic/Standard/Module1.xml"),
        Packages.parts(Files.readAllBytes(filled)).get("Basic/Standard/Module1.xml"));
  }
}
