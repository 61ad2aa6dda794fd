package meadcell.panel;

import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.util.Arrays;
import java.util.stream.IntStream;
import meadcell.catalogue.Arg;
import meadcell.catalogue.CellarFunction;
import meadcell.catalogue.Family;
import meadcell.catalogue.Quantity;
import meadcell.catalogue.Refusal;

/** Which glass a taster gets when, and what is written on it. */
@Family(name = "PANEL")
public final class Served {
  private static final String LOT =
      " Lots: Mersenne Twister MT19937 begun with the array of the one seed, shuffle of Fisher and"
          + " Yates.";

  private static final String TWISTER =
      " Matsumoto and Nishimura 1998, ACM Transactions on Modeling and Computer Simulation 8:3.";

  private static final String KEEP_THE_SEED =
      "The same seed gives the same answer in every program and at any time: write it down with the"
          + " results, and take another for the next tasting.";

  @Arg(name = "tasters", help = "Tasters, or sets served", is = Quantity.COUNT, from = 1, to = 200)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Sets {}

  @Arg(
      name = "seed",
      help = "Any whole number, written down with the results",
      is = Quantity.COUNT,
      from = 1,
      to = 1_000_000_000)
  @Retention(RetentionPolicy.RUNTIME)
  private @interface Seed {}

  private Served() {}

  /**
   * {@return serving orders, a row for each taster}
   *
   * @param meads how many meads each taster gets
   * @param tasters tasters, or sets served
   * @param seed any whole number
   */
  @CellarFunction(
      summary =
          "Serving orders: a row for each taster, in each place the number of a mead, so that no mead"
              + " gains by its place nor by the mead before it.",
      gives = Quantity.COUNT,
      formula =
          "Williams' squares: first row 1, 2, n, 3, n−1, …, each next row adds 1 modulo n; for an odd n"
              + " a second square, the first backwards. Meads, rows and tasters by lot."
              + LOT,
      source =
          "Williams 1949, Australian Journal of Scientific Research A 2:149, as the manual of the R"
              + " package crossdes describes it."
              + TWISTER,
      example = "PANEL.SERVING(4;8;2026)",
      note =
          "Fully balanced where tasters is a multiple of meads, or of twice an odd number of meads: then"
              + " each mead stands equally often at each place and right after each other mead. With"
              + " fewer tasters each mead is still at most once more often at a place than another;"
              + " carry-over is not balanced then, so let tasters take several sets.\n"
              + KEEP_THE_SEED)
  public static Object[][] serving(
      @Arg(
              name = "meads",
              help = "How many meads each taster gets",
              is = Quantity.COUNT,
              from = 2,
              to = 16)
          int meads,
      @Sets int tasters,
      @Seed int seed) {
    return cells(Orders.meads(meads, tasters, new Draw(seed)));
  }

  /**
   * {@return serving orders of a difference test, a row for each taster}
   *
   * @param test kind of test
   * @param tasters tasters, or sets served
   * @param seed any whole number
   */
  @CellarFunction(
      summary =
          "Serving orders of a difference test between meads A and B: a row for each taster, a glass in"
              + " each place, every order as often as the others.",
      formula =
          "triangle: AAB, ABA, BAA, BBA, BAB, ABB. duotrio: the reference first, AAB, ABA, BAB, BBA."
              + " paired: AB, BA. threeafc, B the stronger: AAB, ABA, BAA. tetrad: AABB, ABAB, ABBA,"
              + " BAAB, BABA, BBAA."
              + LOT,
      source =
          "All orders of the glasses of the test, as ISO 4120 and ISO 10399 ask (from memory: the"
              + " standards)."
              + TWISTER,
      example = "PANEL.TESTORDERS(\"triangle\";6;2026)",
      note =
          "tasters a multiple of 6 for triangle and tetrad, of 4 for duotrio, of 3 for threeafc, of 2"
              + " for paired, and every order comes up equally often.\n"
              + KEEP_THE_SEED)
  public static Object[][] testOrders(
      @Arg(name = "test", help = "Kind of test") Panel.Protocol test,
      @Sets int tasters,
      @Seed int seed) {
    return Orders.of(test.orders, tasters, new Draw(seed)).stream()
        .map(order -> order.chars().mapToObj(Character::toString).toArray())
        .toArray(Object[][]::new);
  }

  /**
   * {@return blind codes, a row for each taster}
   *
   * @param tasters tasters, or sets served
   * @param glasses glasses each of them gets
   * @param seed any whole number
   */
  @CellarFunction(
      summary =
          "Three-digit blind codes: a row for each taster, a code for each glass in the order served.",
      gives = Quantity.COUNT,
      formula =
          "Drawn by lot without return from 100 to 999 less 111, 222, … and runs like 123 or 987: no"
              + " code comes twice."
              + LOT,
      source =
          "Three-digit random codes as ISO 6658 asks (from memory: the standard); leaving out repeated"
              + " digits and runs is common practice, no source."
              + TWISTER,
      example = "PANEL.CODES(3;4;2026)",
      note = KEEP_THE_SEED + " Another seed than for PANEL.SERVING is not needed.")
  public static Object[][] codes(
      @Sets int tasters,
      @Arg(
              name = "glasses",
              help = "Glasses each of them gets",
              is = Quantity.COUNT,
              from = 1,
              to = 16)
          int glasses,
      @Seed int seed) {
    int[] fit = IntStream.range(100, 1000).filter(Served::isPlain).toArray();
    if (tasters * glasses > fit.length) {
      throw new Refusal(PanelReason.TOO_MANY_GLASSES)
          .with("glasses", tasters * glasses)
          .with("codes", fit.length);
    }
    int[] drawn = new Draw(seed).order(fit.length);
    int[][] codes = new int[tasters][glasses];
    for (int i = 0; i < tasters * glasses; i++) {
      codes[i / glasses][i % glasses] = fit[drawn[i]];
    }
    return cells(codes);
  }

  /** Whether a code neither repeats one digit nor counts up or down. */
  private static boolean isPlain(int code) {
    int first = code / 10 % 10 - code / 100;
    int second = code % 10 - code / 10 % 10;
    return first != second || Math.abs(first) > 1;
  }

  private static Object[][] cells(int[][] rows) {
    return Arrays.stream(rows)
        .map(row -> Arrays.stream(row).mapToObj(number -> (Object) (double) number).toArray())
        .toArray(Object[][]::new);
  }
}
