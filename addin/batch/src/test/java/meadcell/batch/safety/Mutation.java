package meadcell.batch.safety;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import meadcell.batch.book.Packages;

/** Ways to damage a workbook. */
enum Mutation {
  TRUNCATED {
    @Override
    byte[] of(byte[] original, Random chance) {
      return Arrays.copyOf(original, chance.nextInt(original.length));
    }
  },
  FLIPPED_BITS {
    @Override
    byte[] of(byte[] original, Random chance) {
      byte[] bytes = original.clone();
      for (int i = 0; i <= chance.nextInt(20); i++) {
        bytes[chance.nextInt(bytes.length)] ^= (byte) (1 << chance.nextInt(8));
      }
      return bytes;
    }
  },
  BYTES_IN_A_PART {
    @Override
    byte[] of(Map<String, byte[]> parts, String victim, Random chance) throws IOException {
      byte[] part = parts.get(victim).clone();
      for (int b = 0; b < 5 && part.length > 0; b++) {
        part[chance.nextInt(part.length)] = (byte) chance.nextInt(256);
      }
      parts.put(victim, part);
      return Packages.zip(parts);
    }
  },
  LOST_PART {
    @Override
    byte[] of(Map<String, byte[]> parts, String victim, Random chance) throws IOException {
      parts.remove(victim);
      return Packages.zip(parts);
    }
  },
  RENAMED_PART {
    @Override
    byte[] of(Map<String, byte[]> parts, String victim, Random chance) throws IOException {
      byte[] part = parts.remove(victim);
      parts.put(
          chance.nextBoolean() ? victim + "x" : "../" + victim.toUpperCase(Locale.ROOT), part);
      return Packages.zip(parts);
    }
  },
  SWAPPED_PARTS {
    @Override
    byte[] of(Map<String, byte[]> parts, String victim, Random chance) throws IOException {
      String other = any(List.copyOf(parts.keySet()), chance);
      parts.put(victim, parts.put(other, parts.get(victim)));
      return Packages.zip(parts);
    }
  },
  LOST_TAG {
    @Override
    String of(String xml, Random chance) {
      return changed(xml, TAG, chance, tag -> "");
    }
  },
  DOUBLE_TAG {
    @Override
    String of(String xml, Random chance) {
      return changed(xml, TAG, chance, tag -> tag.group() + tag.group());
    }
  },
  DOUBLE_ELEMENT {
    @Override
    String of(String xml, Random chance) {
      return changed(xml, ELEMENT, chance, element -> element.group() + element.group());
    }
  },
  LOST_ELEMENT {
    @Override
    String of(String xml, Random chance) {
      return changed(xml, ELEMENT, chance, element -> "");
    }
  },
  LOST_ATTRIBUTE {
    @Override
    String of(String xml, Random chance) {
      return changed(xml, ATTRIBUTE, chance, attribute -> "");
    }
  },
  OTHER_ATTRIBUTE {
    @Override
    String of(String xml, Random chance) {
      return changed(
          xml, ATTRIBUTE, chance, a -> " " + a.group(1) + "=\"" + any(VALUES, chance) + '"');
    }
  },
  EXCHANGED_ATTRIBUTES {
    @Override
    String of(String xml, Random chance) {
      List<MatchResult> all = ATTRIBUTE.matcher(xml).results().toList();
      String other = all.isEmpty() ? "" : any(all, chance).group(2);
      return changed(
          xml, ATTRIBUTE, chance, attribute -> " " + attribute.group(1) + "=\"" + other + '"');
    }
  },
  OTHER_TEXT {
    @Override
    String of(String xml, Random chance) {
      return changed(xml, TEXT, chance, text -> ">" + any(VALUES, chance) + "<");
    }
  },
  LARGE_NUMBERS {
    @Override
    String of(String xml, Random chance) {
      String large = any(List.of("1048576", "16384", "2000000000", "99999999999"), chance);
      MatchResult found = found(xml, ATTRIBUTE, chance);
      String name = found == null ? "none" : found.group(1);
      return xml.replaceAll(" " + name + "=\"[0-9]+\"", " " + name + "=\"" + large + '"');
    }
  };

  static final Pattern TAG = Pattern.compile("</?[A-Za-z][^>]*>");
  static final Pattern ELEMENT =
      Pattern.compile("<([A-Za-z][\\w:-]*)(?:\\s[^>]*)?(?:/>|>(?:(?!<\\1[\\s>])[\\s\\S])*?</\\1>)");
  static final Pattern ATTRIBUTE = Pattern.compile("\\s([\\w:-]+)=\"([^\"]*)\"");
  static final Pattern TEXT = Pattern.compile(">([^<>]+)<");
  static final List<String> VALUES =
      List.of(
          "",
          " ",
          "-1",
          "0",
          "1",
          "7",
          "99999",
          "1048577",
          "99999999999",
          "1e999",
          "NaN",
          "A0",
          "A1",
          "D5",
          "XFD1048576",
          "XFE1",
          "A1:XFD1048576",
          "D5:A1",
          "$A$1",
          "x",
          "s",
          "b",
          "e",
          "d",
          "str",
          "inlineStr",
          "shared",
          "array",
          "dataTable",
          "true",
          "2026-13-45",
          "GRAVITY.CORRECT(B5,C5",
          "#REF!",
          "SUM(A:XFD)",
          "D5+D6",
          "_x000",
          "&#10;",
          "\u2603");

  /** The same workbook, damaged. */
  byte[] of(byte[] original, Random chance) throws IOException {
    if (original[0] != 'P') {
      return FLIPPED_BITS.of(original, chance); // has no parts
    }
    Map<String, byte[]> parts = Packages.parts(original);
    List<String> names = new ArrayList<>(parts.keySet());
    List<String> central =
        names.stream()
            .filter(name -> name.matches(".*(sheet\\d+|content|sharedStrings).xml"))
            .toList();
    return of(parts, any(chance.nextBoolean() ? central : names, chance), chance);
  }

  byte[] of(Map<String, byte[]> parts, String victim, Random chance) throws IOException {
    String xml = of(Parts.text(parts.get(victim)), chance);
    parts.put(victim, xml.getBytes(StandardCharsets.UTF_8));
    return Packages.zip(parts);
  }

  String of(String xml, Random chance) {
    throw new UnsupportedOperationException("a damage of whole parts");
  }

  static <T> T any(List<T> all, Random chance) {
    return all.get(chance.nextInt(all.size()));
  }

  static MatchResult found(String xml, Pattern pattern, Random chance) {
    List<MatchResult> all = pattern.matcher(xml).results().toList();
    return all.isEmpty() ? null : any(all, chance);
  }

  interface Change {
    String of(MatchResult found);
  }

  static String changed(String xml, Pattern pattern, Random chance, Change change) {
    MatchResult found = found(xml, pattern, chance);
    return found == null
        ? xml
        : xml.substring(0, found.start()) + change.of(found) + xml.substring(found.end());
  }
}
