package meadcell.panel;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import meadcell.catalogue.Refusal;
import meadcell.cellar.Cellar;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class ServedTest {
  /** First rows of the squares of 2 to 8, Williams 1949 as a manual lists them. */
  @Test
  void firstRowsAreWilliams() {
    String[] rows = {"12", "123", "1243", "12534", "126354", "1273645", "12837465"};
    for (int n = 2; n <= 8; n++) {
      String row =
          Arrays.stream(Williams.squares(n)[0][0])
              .mapToObj(mead -> Integer.toString(mead + 1))
              .collect(Collectors.joining());
      assertEquals(rows[n - 2], row);
    }
  }

  @Property
  void wholeSquaresBalancePlacesAndNeighbours(
      @Between(min = 2, max = 16) int meads, @Between(min = 1, max = 1_000_000_000) int seed) {
    int block = meads % 2 == 0 ? meads : 2 * meads;
    int[][] rows = Orders.meads(meads, 2 * block, new Draw(seed));
    Map<String, Integer> places = new HashMap<>();
    Map<String, Integer> neighbours = new HashMap<>();
    for (int[] row : rows) {
      assertEquals(meads, Arrays.stream(row).distinct().count());
      for (int place = 0; place < meads; place++) {
        places.merge(place + ":" + row[place], 1, Integer::sum);
        if (place > 0) {
          neighbours.merge(row[place - 1] + ">" + row[place], 1, Integer::sum);
        }
      }
    }
    assertEquals(meads * meads, places.size());
    assertEquals(Set.of(2 * block / meads), new HashSet<>(places.values()));
    assertEquals(meads * (meads - 1), neighbours.size());
    assertEquals(Set.of(2 * block / meads), new HashSet<>(neighbours.values()));
  }

  @Property
  void anyNumberOfTastersBalancesPlacesAsFarAsItCan(
      @Between(min = 2, max = 16) int meads,
      @Between(min = 1, max = 60) int tasters,
      @Between(min = 1, max = 1_000_000_000) int seed) {
    int[][] rows = Orders.meads(meads, tasters, new Draw(seed));
    assertEquals(tasters, rows.length);
    for (int place = 0; place < meads; place++) {
      int[] times = new int[meads + 1];
      for (int[] row : rows) {
        times[row[place]]++;
      }
      int least = Arrays.stream(times, 1, meads + 1).min().orElseThrow();
      int most = Arrays.stream(times, 1, meads + 1).max().orElseThrow();
      assertTrue(most - least <= 1, "place " + place);
    }
  }

  /** Every taster is as likely to get a mead first: lots over many seeds, χ² of three degrees. */
  @Test
  void theLotsFavourNobody() {
    int[] first = new int[4];
    int seeds = 4000;
    for (int seed = 1; seed <= seeds; seed++) {
      first[Orders.meads(4, 3, new Draw(seed))[1][0] - 1]++;
    }
    double chi = Arrays.stream(first).mapToDouble(n -> Math.pow(n - 1000.0, 2) / 1000).sum();
    assertTrue(chi < 16.27, "χ² of three degrees of freedom, 0.1 %: " + chi);
  }

  @Property
  void codesAreUniqueAndPlain(
      @Between(min = 1, max = 54) int tasters,
      @Between(min = 1, max = 16) int glasses,
      @Between(min = 1, max = 1_000_000_000) int seed) {
    Object[][] codes = Served.codes(tasters, glasses, seed);
    Set<Object> seen = new HashSet<>();
    for (Object[] row : codes) {
      assertEquals(glasses, row.length);
      for (Object code : row) {
        assertTrue(seen.add(code), "twice " + code);
        String digits = Integer.toString(((Double) code).intValue());
        assertEquals(3, digits.length());
        assertFalse("0123456789".contains(digits) || "9876543210".contains(digits), digits);
        assertTrue(digits.chars().distinct().count() > 1, digits);
      }
    }
    assertEquals(tasters * glasses, seen.size());
    assertArrayEquals(codes, Served.codes(tasters, glasses, seed));
  }

  @Test
  void thereAreNoMoreCodesThanFit() {
    assertEquals(146, Served.codes(146, 6, 1).length); // 876 codes
    Refusal refusal = assertThrows(Refusal.class, () -> Served.codes(147, 6, 1));
    assertEquals(
        "There are 876 codes for 882 glasses: ask for a part of the tasters at a time, with another"
            + " seed, and codes are unique within each part.",
        refusal.getMessage());
  }

  @Property
  void everyOrderOfATestComesEquallyOften(
      Panel.Protocol test, @Between(min = 1, max = 1_000_000_000) int seed) {
    int orders = test.orders.size();
    Map<String, Integer> seen = new HashMap<>();
    for (Object[] row : Served.testOrders(test, 3 * orders, seed)) {
      seen.merge(String.join("", Arrays.copyOf(row, row.length, String[].class)), 1, Integer::sum);
    }
    assertEquals(Set.copyOf(test.orders), seen.keySet());
    assertEquals(Set.of(3), Set.copyOf(seen.values()));
    assertEquals(orders - 1, Served.testOrders(test, orders - 1, seed).length);
  }

  @Test
  void theLargestSeedThatARefusalNamesIsTaken() {
    var serving = Cellar.catalogue().get("PANEL.SERVING");
    Refusal refusal = assertThrows(Refusal.class, () -> serving.call(4.0, 8.0, 1e9 + 1));
    assertTrue(refusal.getMessage().contains("1 to 1000000000."), refusal.getMessage());
    serving.call(4.0, 8.0, 1e9);
  }
}
