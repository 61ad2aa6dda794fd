package meadcell.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.net.URL;
import java.net.URLConnection;
import java.net.URLStreamHandler;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A contributor's slip is said when the function is first read, not to the user who calls it. */
class DeclarationMistakesTest {
  @Family(name = "SLIP", about = "Only for tests.")
  public static final class Slip {
    @CellarFunction(summary = "s", formula = "f", source = "test", example = "SLIP.ORDER(1)")
    public static double order(
        @Arg(name = "maybe", help = "May be left out", byDefault = 1, from = 0, to = 9)
            double maybe,
        @Arg(name = "needed", help = "Must be given", from = 0, to = 9) double needed) {
      return maybe + needed;
    }

    @CellarFunction(summary = "s", formula = "f", source = "test", example = "SLIP.TAKEN(1)")
    public static double taken(@Arg(name = "units", help = "Any", from = 0, to = 9) double units) {
      return units;
    }

    @CellarFunction(summary = "s", formula = "f", source = "test", example = "SLIP.RESULT(1)")
    public static List<Double> result(@Arg(name = "x", help = "Any", from = 0, to = 9) double x) {
      return List.of(x);
    }

    @CellarFunction(summary = "s", formula = "f", source = "test", example = "SLIP.FAILS(1)")
    public static double fails(@Arg(name = "x", help = "Any", from = 0, to = 9) double x) {
      throw new UnsupportedOperationException();
    }

    @CellarFunction(summary = "s", formula = "f", source = "test", example = "SLIP.NOTHING(1)")
    public static double nothing(@Arg(name = "x", help = "Any", from = 0, to = 9) double x) {
      return x / 0;
    }
  }

  @Family(name = "SLIP")
  public static final class Again {
    @CellarFunction(summary = "s", formula = "f", source = "test", example = "SLIP.FAILS(1)")
    public static double fails(@Arg(name = "x", help = "Any", from = 0, to = 9) double x) {
      return x;
    }
  }

  private static String mistake(String function) {
    return assertThrows(
            IllegalStateException.class, () -> Catalogue.of(Slip.class).get(function).call(1.0))
        .getMessage();
  }

  @Test
  void ofAFunction() {
    assertEquals("SLIP.ORDER: an optional argument before a required one", mistake("SLIP.ORDER"));
    assertEquals("SLIP.TAKEN: an argument has the name units", mistake("SLIP.TAKEN"));
    assertEquals(
        "public static java.util.List "
            + Slip.class.getName()
            + ".result(double)"
            + ": no result has the type interface java.util.List",
        mistake("SLIP.RESULT"));
    assertEquals("SLIP.FAILS failed", mistake("SLIP.FAILS"));
  }

  @Test
  void aResultThatIsNoNumberIsRefused() {
    Refusal refusal =
        assertThrows(Refusal.class, () -> Catalogue.of(Slip.class).get("SLIP.NOTHING").call(1.0));
    assertEquals(General.NOT_FINITE, refusal.reason());
  }

  @Test
  void ofAFamily() {
    assertEquals(
        "SLIP.FAILS is declared twice",
        assertThrows(
                IllegalStateException.class, () -> Catalogue.of(Slip.class, Again.class).names())
            .getMessage());
    assertEquals(
        String.class + " has no @Family",
        assertThrows(IllegalStateException.class, () -> Catalogue.of(String.class)).getMessage());
  }

  /** A loader whose list of families has one line. */
  private static ClassLoader listing(String family) {
    return new ClassLoader(DeclarationMistakesTest.class.getClassLoader()) {
      @Override
      public Enumeration<URL> getResources(String name) throws java.io.IOException {
        URLStreamHandler text =
            new URLStreamHandler() {
              @Override
              protected URLConnection openConnection(URL url) {
                return new URLConnection(url) {
                  @Override
                  public void connect() {}

                  @Override
                  public InputStream getInputStream() {
                    return new ByteArrayInputStream(family.getBytes(StandardCharsets.UTF_8));
                  }
                };
              }
            };
        return Collections.enumeration(List.of(new URL("memory", "", -1, "families", text)));
      }
    };
  }

  @Test
  void ofTheListOfFamilies() {
    assertEquals(
        "a family class is missing",
        assertThrows(
                IllegalStateException.class, () -> Catalogue.load(listing("meadcell.NoSuchFamily")))
            .getMessage());
    assertEquals(
        List.of("SLIP"),
        List.copyOf(Catalogue.load(listing(Slip.class.getName())).families().keySet()));
  }
}
