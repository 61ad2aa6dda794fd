package meadcell.batch.fill;

import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Which plain values are Meadcell's own: for each column, a few letters for each row. A value that
 * a person typed in the place of one of ours is taken for ours once in seventeen million times.
 */
final class OwnValues {
  private static final String START = "=";
  private static final int LETTERS = 4;
  private static final TreeMap<Integer, String> NONE = new TreeMap<>();

  /** Marks by row, by column of a sheet. */
  private final Map<String, TreeMap<Integer, String>> columns = new TreeMap<>();

  /** Whether a word of the property tells of values. */
  static boolean isMark(String word) {
    return word.startsWith(START);
  }

  /** Reads a word: column, first row, and the marks from there down. */
  void read(String word) {
    String[] fields = word.substring(START.length()).split("\\.");
    if (fields.length < 3) {
      return; // not ours; what it told of is taken for a person's
    }
    TreeMap<Integer, String> rows = columns.computeIfAbsent(fields[0], key -> new TreeMap<>());
    int row = Integer.parseInt(fields[1]);
    for (int at = 0; at + LETTERS <= fields[2].length(); at += LETTERS) {
      rows.put(row++, fields[2].substring(at, at + LETTERS));
    }
  }

  boolean contains(String column, int row, long hash) {
    return mark(hash).equals(columns.getOrDefault(column, NONE).get(row));
  }

  void add(String column, int row, long hash) {
    columns.computeIfAbsent(column, key -> new TreeMap<>()).put(row, mark(hash));
  }

  private static String mark(long hash) {
    long folded = hash ^ hash >>> 24 ^ hash >>> 48;
    byte[] bytes = {(byte) (folded >>> 16), (byte) (folded >>> 8), (byte) folded};
    return Base64.getUrlEncoder().encodeToString(bytes);
  }

  /** The words that tell all. */
  List<String> words() {
    List<String> words = new ArrayList<>();
    columns.forEach(
        (column, rows) -> {
          StringBuilder word = new StringBuilder();
          int next = -1;
          for (Map.Entry<Integer, String> row : rows.entrySet()) {
            if (row.getKey() != next) {
              if (!word.isEmpty()) {
                words.add(word.toString());
              }
              word = new StringBuilder(START + column + "." + row.getKey() + ".");
            }
            word.append(row.getValue());
            next = row.getKey() + 1;
          }
          words.add(word.toString());
        });
    return words;
  }
}
