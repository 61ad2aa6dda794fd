package meadcell.batch.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * A remark, or many that say the same of cells of one column: thousands of lines that nobody reads
 * become one.
 *
 * @param first the remark of the first cell
 * @param last that of the last cell
 * @param count how many they are
 */
public record Alike(Report.Remark first, Report.Remark last, int count) {
  /** So many are still told one by one. */
  private static final int FEW = 5;

  private static final Pattern ROW = Pattern.compile("(?<![A-Za-z])(\\$?[A-Z]{1,3}\\$?)\\d+");

  /** What remarks have in common that are told together, whatever their rows. */
  record Kind(Report.Code code, String sheet, String column, String sentence) {
    static Kind of(Report.Remark remark) {
      return new Kind(
          remark.code(), remark.sheet(), rowless(remark.cell()), rowless(remark.sentence()));
    }
  }

  static String rowless(String text) {
    return ROW.matcher(text).replaceAll("$1");
  }

  /** The remarks in their order, those that are alike where the first of them stands. */
  public static List<Alike> of(List<Report.Remark> remarks) {
    Map<Kind, List<Report.Remark>> byKind = new LinkedHashMap<>();
    for (Report.Remark remark : remarks) {
      byKind.computeIfAbsent(Kind.of(remark), kind -> new ArrayList<>()).add(remark);
    }
    List<Alike> told = new ArrayList<>();
    for (Report.Remark remark : remarks) {
      List<Report.Remark> alike = byKind.get(Kind.of(remark));
      boolean together = alike.size() > FEW && !remark.cell().isEmpty();
      if (!together) {
        told.add(new Alike(remark, remark, 1));
      } else if (alike.get(0) == remark) {
        told.add(new Alike(remark, alike.get(alike.size() - 1), alike.size()));
      }
    }
    return told;
  }

  /** {@code F2}, or {@code F2 to F31, 30 cells}. */
  String cells() {
    return count == 1
        ? first.cell()
        : first.cell() + " to " + last.cell() + ", " + count + " cells";
  }

  @Override
  public String toString() {
    return count == 1 ? first.toString() : first.sheet() + "!" + cells() + ": " + first.sentence();
  }
}
