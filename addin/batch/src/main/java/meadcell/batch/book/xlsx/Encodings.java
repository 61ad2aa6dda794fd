package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import meadcell.batch.book.FileRefused;

/** The encodings in which programs write the parts of a package. */
final class Encodings {
  private static final Pattern DECLARATION =
      Pattern.compile("\\A\\s*<\\?xml[^>]*?(?:encoding\\s*=\\s*[\"']([^\"']+)[\"'])?[^>]*?\\?>");
  private static final byte[] UTF_16_BE = {(byte) 0xFE, (byte) 0xFF};
  private static final byte[] UTF_16_LE = {(byte) 0xFF, (byte) 0xFE};

  private Encodings() {}

  /** The same XML in UTF-8. */
  static byte[] inUtf8(byte[] xml) throws IOException {
    Charset charset = StandardCharsets.UTF_8;
    if (startsWith(xml, UTF_16_BE) || startsWith(xml, UTF_16_LE)) {
      charset = StandardCharsets.UTF_16;
    } else {
      int length = Math.min(xml.length, 200);
      Matcher head = DECLARATION.matcher(new String(xml, 0, length, StandardCharsets.ISO_8859_1));
      if (head.find() && head.group(1) != null) {
        charset = charset(head.group(1));
      }
    }
    if (charset.equals(StandardCharsets.UTF_8) || charset.equals(StandardCharsets.US_ASCII)) {
      return xml;
    }
    String text = DECLARATION.matcher(new String(xml, charset)).replaceFirst("");
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static Charset charset(String name) throws IOException {
    try {
      return Charset.forName(name);
    } catch (IllegalArgumentException e) {
      throw FileRefused.damaged("a part is written in the unknown encoding " + name, e);
    }
  }

  private static boolean startsWith(byte[] xml, byte[] mark) {
    return xml.length > 1 && xml[0] == mark[0] && xml[1] == mark[1];
  }
}
