package meadcell.batch.book;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.xml.sax.SAXException;

/** What the quick parser is certain of, the JDK's parser finds, too. */
class QuickXmlTest {
  private static final String PART =
      "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n<x:a xmlns:x='u' x:b=\"&lt;1\""
          + "><!-- c --><?p i?><x:v xml:space='preserve'> é &amp; &#65; ]] </x:v><![CDATA[<&]]><c/>"
          + "</x:a>";
  private static final String SIGNS = "<>/&;'\"=!-[]? ax:0\n\t#";

  private static InputStream stream(byte[] xml) {
    return new ByteArrayInputStream(xml);
  }

  private static boolean isCertain(String xml) {
    return QuickXml.isWellFormed(stream(xml.getBytes(StandardCharsets.UTF_8)));
  }

  private static boolean isWellFormed(byte[] xml) throws IOException {
    try {
      return Sax.isWellFormed(stream(xml));
    } catch (SAXException | IOException e) {
      return false;
    }
  }

  @Test
  void ofTheUsualItIs() {
    assertTrue(isCertain(PART));
    assertTrue(isCertain(PART.replace("UTF-8", "utf-8")));
    assertTrue(isCertain("<a/>"));
  }

  /** A document type, another encoding: the other parser takes them. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "<!DOCTYPE a [<!ENTITY x 'y'>]><a>&x;</a>",
        "<?xml version='1.0' encoding='ISO-8859-1'?><a/>",
        "<a x:b='1'/>",
      })
  void ofTheUnusualItIsNot(String xml) throws IOException {
    assertFalse(isCertain(xml));
    assertTrue(isWellFormed(xml.getBytes(StandardCharsets.UTF_8)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "<a>",
        "<a></b>",
        "<a/><b/>",
        "<a/>x",
        "<a>\u0001</a>",
        "<a>\uFFFE</a>",
        "<a>&#1;</a>",
        "<a>&#xD800;</a>",
        "<a>&unknown;</a>",
        "<a>]]></a>",
        "<a b='<'/>",
        "<a b=1/>",
        "<a b='1' b='2'/>",
        "<a><!-- -- --></a>",
        "<a><?xml v?></a>",
        "<a><![CDATA[</a>",
      })
  void ofTheDamagedItIsNot(String xml) throws IOException {
    assertFalse(isCertain(xml));
    assertFalse(isWellFormed(xml.getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void itIsWhereverOneSignIsAnother() throws IOException {
    Random random = new Random(1);
    int certain = 0;
    for (int i = 0; i < 20_000; i++) {
      StringBuilder damaged = new StringBuilder(PART);
      int at = random.nextInt(PART.length());
      damaged.setCharAt(at, SIGNS.charAt(random.nextInt(SIGNS.length())));
      byte[] xml = damaged.toString().getBytes(StandardCharsets.UTF_8);
      if (random.nextInt(10) == 0) {
        xml = Arrays.copyOf(xml, random.nextInt(xml.length));
      }
      if (QuickXml.isWellFormed(stream(xml))) {
        certain++;
        assertTrue(isWellFormed(xml), damaged.toString());
      }
    }
    assertTrue(certain > 1000, "only " + certain);
  }
}
