package meadcell.batch.book.xlsx;

import java.io.IOException;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import meadcell.batch.book.zip.PackageParts;

/** What kind each part of a package is (ECMA-376 part 2, 10.1.2). */
final class ContentTypes {
  static final String NAME = "[Content_Types].xml";

  private final XmlPart xml;
  private final Map<String, String> parts = new HashMap<>();
  private final Map<String, String> endings = new HashMap<>();

  ContentTypes(PackageParts all) throws IOException {
    xml = XmlPart.of(all.read(NAME));
    for (TagScanner tags = xml.tags(); tags.next(); ) {
      if (tags.isEnd()) {
        continue;
      }
      String type = XmlText.unescaped(tags.attribute("ContentType"));
      if (tags.is("Override")) {
        parts.put(key("/", tags.attribute("PartName")), type);
      } else if (tags.is("Default")) {
        endings.put(key("", tags.attribute("Extension")), type);
      }
    }
  }

  private static String key(String before, String name) {
    String plain = XmlText.unescaped(name).toLowerCase(Locale.ROOT);
    return plain.startsWith(before) ? plain.substring(before.length()) : plain;
  }

  /** The kind of a part, or nothing. */
  String of(String part) {
    String name = part.toLowerCase(Locale.ROOT);
    String ending = name.substring(name.lastIndexOf('.') + 1);
    return parts.getOrDefault(name, endings.getOrDefault(ending, ""));
  }

  void add(String part, String type) {
    if (of(part).equals(type)) {
      return;
    }
    parts.put(part.toLowerCase(Locale.ROOT), type);
    TagScanner tags = xml.tags();
    while (tags.next() && !tags.is("Types")) {
      // to the list itself
    }
    xml.append(
        tags,
        "Types",
        "<"
            + tags.prefix()
            + "Override PartName=\"/"
            + XmlText.escaped(part)
            + "\" ContentType=\""
            + type
            + "\"/>");
  }

  void remove(String part) {
    for (TagScanner tags = xml.tags(); tags.next(); ) {
      if (tags.is("Override") && part.equalsIgnoreCase(key("/", tags.attribute("PartName")))) {
        xml.replace(tags.start(), tags.end(), "");
      }
    }
  }

  boolean isChanged() {
    return xml.isChanged();
  }

  byte[] changed() {
    return xml.changed();
  }
}
