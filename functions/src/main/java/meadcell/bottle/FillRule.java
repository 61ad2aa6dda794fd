package meadcell.bottle;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Range;
import meadcell.catalogue.Refusal;

/** What a bottle may lack by law, from the dated table {@code fill.tsv}. */
final class FillRule {
  private static final List<Row> ROWS = read();

  private record Row(String rule, double above, double to, double percent, double ml) {
    static Row of(String line) {
      String[] cells = line.split("\t", -1);
      return new Row(
          cells[0], number(cells[1]), number(cells[2]), number(cells[3]), number(cells[4]));
    }

    private static double number(String cell) {
      return cell.isEmpty() ? 0 : Double.parseDouble(cell);
    }

    double tolerance(double labelMl) {
      return ml + percent / 100 * labelMl;
    }
  }

  private FillRule() {}

  private static List<Row> read() {
    try (InputStream in = FillRule.class.getResourceAsStream("/meadcell/bottle/fill.tsv")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(Row::of)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** {@return mL that a bottle of this label may lack} */
  static double tolerance(double labelMl, Filling.Rule rule) {
    String name = rule.name().toLowerCase(Locale.ROOT);
    List<Row> rows = ROWS.stream().filter(row -> row.rule().equals(name)).toList();
    return rows.stream()
        .filter(row -> labelMl > row.above() && labelMl <= row.to())
        .findFirst()
        .orElseThrow(
            () ->
                new Refusal(BottleReason.NO_SUCH_SIZE)
                    .with("label", labelMl, Quantity.MILLILITRE)
                    .with(
                        "range",
                        Range.between(5, rows.get(rows.size() - 1).to()),
                        Quantity.MILLILITRE))
        .tolerance(labelMl);
  }
}
