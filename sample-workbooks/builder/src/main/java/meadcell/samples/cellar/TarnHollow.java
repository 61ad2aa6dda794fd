package meadcell.samples.cellar;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import meadcell.barrel.Cask;
import meadcell.barrel.Gauging;

/**
 * A season at Tarn Hollow, an invented cellar: a heather-honey traditional, a sour-cherry melomel
 * and a buckwheat bochet, in casks that held rye spirit, chestnut-wood vermouth or nothing before.
 * Readings are worked forward from the models, so that they are physically plausible.
 */
final class TarnHollow implements Season {
  static final LocalDate TODAY = LocalDate.of(2026, 3, 2);
  private static final LocalDate CASKED = LocalDate.of(2025, 5, 12);

  /** How much of a cask the casks lose in a year, %. */
  private static final double LOSS = 3.6;

  @Override
  public String lots() {
    return """
        Heather 24 | traditional | 2024-03-04 | 1.1040 | 0.996 | 20 | 2024-05-20 | last year's, all bottled but what the wood holds
        Heather 25 | traditional | 2025-03-03 | 1.1065 | 0.996 | 20 | 2025-04-28 | heather honey and lake water
        Bochet 25  | bochet      | 2025-04-07 | 1.1280 | 1.024 | 20 | 2025-06-09 | buckwheat honey, caramelised; 0.8 of it fermented out
        Cherry 25  | melomel     | 2025-04-21 | 1.0920 | 0.998 | 20 | 2025-06-30 | heather honey, sour cherries a third of its weight
        Heather 26 | traditional | 2026-01-26 | 1.1060 | 0.996 | 20 |            | heather honey, in tank 2
        Bochet 26  | bochet      | 2025-12-01 | 1.1180 | 1.012 | 20 |            | buckwheat honey, in tank 3
        rye in the staves | spirit |          |        |       |    |            | what the wood of C1 held; by the distiller's papers 60 % vol
        """;
  }

  @Override
  public String vessels() {
    return """
        Tank 1    | tank  |                |        |      |   |      |      |    | 620 |     |     | steel, floating lid
        Tank 2    | tank  |                |        |      |   |      |      |    | 320 |     |     | steel
        Tank 3    | tank  |                |        |      |   |      |      |    | 220 |     |     | steel
        C1        | cask  | oak, American  | char   | 2021 | 1 | 50   | 60   | 80 |     | 1.5 | 3.6 | cooperage in the valley | 47.8
        C2        | cask  | chestnut       | light  | 2016 | 4 | 51   | 64   | 81 |     |     |     | cooperage by the lake | 50.6
        C3        | cask  | oak, sessile   | medium | 2025 | 0 | 50.5 | 63.5 | 81 |     |     |     | cooperage by the lake, new
        C4        | cask  | oak, sessile   | light  | 2018 | 6 | 40   | 50   | 66 |     | 1   |     | cooperage in the valley
        Carboys   | glass |                |        |      |   |      |      |    | 44  |     |     | for toppings
        Demijohns | glass |                |        |      |   |      |      |    | 55  |     |     | for toppings
        Shore 25  | bottles |              |        |      |   |      |      |    |     |     |     | a first bottling
        """;
  }

  @Override
  public String past() {
    return """
        C1 | rye spirit | 2021-03-01 | 2025-03-10 | 60   | 196 |
        C2 | white wine | 2016-10-03 | 2019-09-02 | 12.5 | 224 |
        C2 | vermouth   | 2019-09-09 | 2023-05-08 | 17   | 225 | herbs of the lake shore
        C2 | Heather 23 | 2023-06-05 | 2024-05-27 | 13.8 | 226 |
        C2 | Heather 24 | 2024-06-03 | 2025-05-09 | 14.1 | 225 |
        C4 | Cherry 23  | 2023-09-04 | 2024-08-26 | 12.2 | 112 |
        C4 | Cherry 24  | 2024-09-09 | 2025-07-07 | 12.4 | 113 |
        """;
  }

  @Override
  public String moves() {
    List<String> rows = new ArrayList<>();
    rows.addAll(
        """
        2025-03-03 | Heather 25 | Tank 1 | 610 | | | pitched
        2025-04-07 | Bochet 25  | Tank 2 | 290 | | | pitched
        2025-04-21 | Cherry 25  | Tank 3 | 180 | | | pitched
        2025-05-12 | Tank 1     | loss   | 34  | | | lees
        2025-05-12 | rye in the staves | C1 | 4.6 | | 1 | rinsed out with water
        2025-05-12 | Tank 1     | C1     | 198.2 | | |
        2025-05-12 | Heather 24 | C2     | 5.9 | | 1 | in the staves
        2025-05-12 | Tank 1     | C2     | 222.4 | | |
        2025-06-16 | Tank 2     | C3     | 224.6 | | |
        2025-06-16 | Tank 2     | Carboys | 41 | | |
        2025-06-16 | Tank 2     | loss   | 24.4 | | | lees
        2025-07-14 | Tank 3     | loss   | 14  | | | lees and stones
        2025-07-14 | Tank 3     | C4     | 113.6 | | |
        2025-07-14 | Tank 3     | Demijohns | 52.4 | | |
        2025-12-01 | Bochet 26  | Tank 3 | 200 | | | pitched
        2026-01-26 | Heather 26 | Tank 2 | 300 | | | pitched
        """
            .lines()
            .toList());
    rows.addAll(visits("C1", 50, 60, 80, CASKED, "2026-01-19", "Tank 1"));
    rows.addAll(visits("C2", 51, 64, 81, CASKED, "2026-02-23", "Tank 1"));
    rows.addAll(visits("C3", 50.5, 63.5, 81, LocalDate.of(2025, 6, 16), "2026-02-23", "Carboys"));
    rows.addAll(visits("C4", 40, 50, 66, LocalDate.of(2025, 7, 14), "2026-02-02", "Demijohns"));
    rows.add("2026-02-23 | C2 | Shore 25 | 60 | | | a first small bottling");
    rows.add("2026-02-23 | Tank 1 | C2 | 58 | | | filled up again");
    rows.add("2026-02-23 | Shore 25 | loss | 1 | | | on the line");
    return rows.stream()
        .sorted(java.util.Comparator.comparing(row -> row.substring(0, 10)))
        .collect(Collectors.joining("\n"));
  }

  /** A dip every five weeks, and a topping to the bung's edge. */
  private static List<String> visits(
      String cask,
      double head,
      double bilge,
      double length,
      LocalDate filled,
      String last,
      String from) {
    Cask sizes = new Cask(head, bilge, length, Cask.Shape.ELLIPSE);
    double full = Gauging.volume(sizes);
    List<String> rows = new ArrayList<>();
    double held = full - 0.4;
    LocalDate before = filled;
    for (LocalDate day = filled.plusDays(28);
        !day.isAfter(LocalDate.parse(last));
        day = day.plusDays(35)) {
      held -= full * LOSS / 100 * ChronoUnit.DAYS.between(before, day) / 365.25;
      double dip = Forward.rounded(Gauging.dip(sizes, held), 1);
      double topped = Forward.rounded(full - 0.4 - held, 1);
      rows.add(day + " | gauge | " + cask + " | | " + dip + " | |");
      rows.add(day + " | " + from + " | " + cask + " | " + topped + " | | 0.1 | topped up");
      held += topped;
      before = day;
    }
    return rows;
  }

  @Override
  public String readings() {
    return ferment(
            "Heather 25",
            "2025-03-03",
            1.1065,
            Forward.fall(1.108, 0.9965, 13, 0.27),
            0,
            2,
            4,
            7,
            10,
            14,
            18,
            23,
            28,
            35,
            42,
            49,
            56)
        + ferment(
            "Bochet 25",
            "2025-04-07",
            1.128,
            Forward.fall(1.1295, 1.0245, 14, 0.24),
            0,
            3,
            7,
            10,
            14,
            18,
            23,
            28,
            35,
            42,
            49,
            56,
            63)
        + ferment(
            "Cherry 25",
            "2025-04-21",
            1.092,
            Forward.fall(1.0932, 0.998, 11, 0.3),
            0,
            2,
            4,
            7,
            10,
            14,
            18,
            25,
            35,
            46,
            56,
            63,
            70)
        + ferment(
            "Bochet 26",
            "2025-12-01",
            1.118,
            Forward.fall(1.1195, 1.041, 12, 0.28),
            0,
            3,
            7,
            10,
            14,
            21,
            28,
            42,
            56,
            63,
            70,
            77,
            84)
        + ferment(
            "Heather 26",
            "2026-01-26",
            1.106,
            Forward.fall(1.1075, 0.9958, 16, 0.22),
            0,
            2,
            4,
            7,
            9,
            11,
            14,
            16,
            18,
            21,
            23,
            25,
            28,
            30)
        + AT_REST;
  }

  /** A mead at rest, read in the warm. */
  private static final String AT_REST =
      """
      2025-12-29 | C1 | 0.9945 | 20 | a bottle of it, kept warm
      2026-01-05 | C2 | 0.9960 | 20 | a bottle of it, kept warm
      2026-01-19 | C2 | 0.9955 | 20 |
      2026-02-02 | C2 | 0.9960 | 20 |
      2026-02-16 | C2 | 0.9955 | 20 |
      2026-03-02 | C2 | 0.9960 | 20 |
      """;

  /** A fall of gravity, as a hydrometer shows it in a cellar that cools from 19 to 13 °C. */
  private static String ferment(
      String lot, String pitched, double original, DoubleUnaryOperator gravity, int... days) {
    StringBuilder rows = new StringBuilder();
    for (int day : days) {
      double temperature = Forward.rounded(13 + 6 * Math.exp(-day / 25.0), 1);
      double reading = Forward.hydrometer(gravity.applyAsDouble(day), temperature, original);
      rows.append(LocalDate.parse(pitched).plusDays(day))
          .append(" | " + lot + " | " + reading + " | " + temperature + " |\n");
    }
    return rows.toString();
  }

  @Override
  public String analyses() {
    return """
        Heather 25 | 2025-03-03 | sugar | 262 | 4 | must, by refractometer
        Heather 25 | 2025-03-03 | strength | 0 | 0.1 | must
        Heather 25 | 2025-03-03 | titratable acidity | 3.4 | 0.1 |
        Heather 25 | 2025-03-03 | total SO2 | 0 | 1 |
        Heather 24 | 2025-05-12 | strength | 14.1 | 0.1 | last year's
        Heather 24 | 2025-05-12 | sugar | 4 | 0.5 |
        Heather 24 | 2025-05-12 | titratable acidity | 5.6 | 0.1 |
        Heather 24 | 2025-05-12 | total SO2 | 70 | 5 |
        rye in the staves | 2025-05-12 | strength | 60 | 3 |
        rye in the staves | 2025-05-12 | sugar | 0 | 0.5 |
        rye in the staves | 2025-05-12 | titratable acidity | 0.4 | 0.2 |
        rye in the staves | 2025-05-12 | total SO2 | 0 | 1 |
        Tank 1 | 2025-05-12 | strength | 14.3 | 0.1 | laboratory
        Tank 1 | 2025-05-12 | sugar | 4.0 | 0.5 | enzymatic
        Tank 1 | 2025-05-12 | titratable acidity | 5.2 | 0.1 |
        Tank 1 | 2025-05-12 | total SO2 | 65 | 5 |
        Tank 1 | 2025-05-12 | pH | 3.46 | 0.02 |
        Tank 2 | 2025-06-16 | strength | 13.4 | 0.1 | laboratory
        Tank 2 | 2025-06-16 | sugar | 62 | 2 | enzymatic
        Tank 2 | 2025-06-16 | titratable acidity | 4.6 | 0.1 |
        Tank 2 | 2025-06-16 | total SO2 | 60 | 5 |
        Tank 3 | 2025-07-14 | strength | 12.4 | 0.1 | laboratory
        Tank 3 | 2025-07-14 | sugar | 6.5 | 0.5 | enzymatic
        Tank 3 | 2025-07-14 | titratable acidity | 7.4 | 0.1 |
        Tank 3 | 2025-07-14 | total SO2 | 62 | 5 |
        C1 | 2025-10-20 | free SO2 | 44 | 2 |
        C1 | 2025-10-20 | pH | 3.48 | 0.02 |
        C1 | 2025-11-17 | free SO2 | 41 | 2 |
        C1 | 2025-12-15 | free SO2 | 38 | 2 |
        C1 | 2026-01-19 | free SO2 | 35 | 2 |
        C1 | 2026-02-16 | free SO2 | 32 | 2 |
        C1 | 2026-02-16 | pH | 3.51 | 0.02 |
        C1 | 2026-02-16 | volatile acidity | 0.42 | 0.03 |
        C1 | 2026-02-16 | strength | 15.1 | 0.1 | laboratory
        C2 | 2025-11-17 | free SO2 | 34 | 2 |
        C2 | 2025-12-15 | free SO2 | 30 | 2 |
        C2 | 2026-01-19 | free SO2 | 26 | 2 |
        C2 | 2026-02-16 | free SO2 | 22 | 2 |
        C2 | 2026-02-16 | pH | 3.47 | 0.02 |
        C2 | 2026-02-16 | volatile acidity | 0.38 | 0.03 |
        C3 | 2025-12-15 | free SO2 | 30 | 2 |
        C3 | 2025-12-15 | pH | 3.62 | 0.02 |
        Shore 25 | 2026-02-27 | total SO2 | 78 | 4 | laboratory, from a bottle
        """;
  }

  @Override
  public String tastings() {
    return panel("C1", "2025-08-18", 10.9, "spirit, raw grain", "A", "B", "C", "D")
        + panel("C2", "2025-08-18", 11.8, "heather, bitter herb", "A", "B", "C", "D")
        + panel("C3", "2025-08-18", 9.6, "sawdust, caramel", "A", "B", "C")
        + panel("C1", "2025-10-20", 12.4, "rye bread, lean", "A", "B", "C", "D")
        + panel("C2", "2025-10-20", 12.9, "wormwood, heather", "A", "B", "C", "D")
        + panel("C4", "2025-11-17", 12.3, "cherry stone", "A", "B", "D")
        + panel("C1", "2025-12-15", 13.8, "vanilla, grain", "A", "B", "C", "D")
        + panel("C2", "2025-12-15", 13.8, "orange peel, herb", "A", "B", "C", "D")
        + panel("C3", "2025-12-15", 11.2, "caramel, nut", "A", "C", "D")
        + panel("C1", "2026-02-16", 15.3, "rye crust, honeycomb", "A", "B", "C", "D", "E", "F")
        + panel("C2", "2026-02-16", 14.9, "long, bitter-sweet", "A", "B", "C", "D", "E", "F")
        + panel("C3", "2026-02-16", 11.6, "caramel, stale nut", "A", "B", "C", "D", "E", "F")
        + panel("C4", "2026-02-16", 14.3, "cherry, almond", "A", "B", "C", "D", "E", "F");
  }

  /** Each taster has a habit and a mood; both are invented. */
  private static String panel(
      String vessel, String day, double mean, String words, String... tasters) {
    StringBuilder rows = new StringBuilder();
    for (String taster : tasters) {
      int letter = taster.charAt(0) - 'A';
      double mood = (letter * 7 + vessel.hashCode() * 3 + day.hashCode()) % 5 * 0.25;
      double score = Forward.rounded(2 * (mean + (letter % 3 - 1) * 0.5 + mood), 0) / 2;
      rows.append(day + " | " + vessel + " | " + taster + " | " + score)
          .append(" | 2 | 5 | 4 | " + (int) (mean / 2.5) + " | " + (int) mean + " | none | ")
          .append(mean > 14 ? "blend" : "wait")
          .append(taster.equals("A") ? " | " + words : " |")
          .append("\n");
    }
    return rows.toString();
  }

  @Override
  public String additions() {
    return """
        2025-03-03 | Tank 1 | organic nutrient | 120 | g |
        2025-03-05 | Tank 1 | ammonium phosphate | 90 | g |
        2025-05-12 | Tank 1 | potassium metabisulfite | 52 | g | before the casks
        2025-10-13 | C1 | potassium metabisulfite | 12 | g |
        2025-11-10 | C2 | potassium metabisulfite | 9 | g |
        2025-12-08 | C3 | potassium metabisulfite | 10 | g |
        2026-01-26 | Tank 2 | organic nutrient | 60 | g |
        """;
  }

  @Override
  public String checks() {
    return """
        Hydrometer 1  | 2025-03-01 | hydrometer    | water |    | 20 | 20 | 1.0005 | 0.0003 | tall jar
        Hydrometer 1  | 2025-03-01 | hydrometer    | sugar | 12 | 20 | 20 | 1.0490 | 0.0003 |
        Hydrometer 1  | 2025-09-01 | hydrometer    | water |    | 16 | 20 | 1.0015 | 0.0003 |
        Hydrometer 1  | 2026-02-20 | hydrometer    | water |    | 20 | 20 | 1.0010 | 0.0003 |
        Hydrometer 1  | 2026-02-20 | hydrometer    | sugar | 12 | 20 | 20 | 1.0495 | 0.0003 |
        Refractometer | 2025-03-01 | refractometer | water |    |    |    | 0.1    | 0.05   | set to zero the day before
        Refractometer | 2025-03-01 | refractometer | sugar | 20 | 20 |    | 20.2   | 0.05   |
        Refractometer | 2025-09-01 | refractometer | salt  | 5  | 20 |    | 6.2    | 0.05   |
        Refractometer | 2026-02-20 | refractometer | sugar | 20 | 20 |    | 20.3   | 0.05   |
        Thermometer   | 2025-03-01 | thermometer   | ice   |    |    |    | 0.2    | 0.05   | crushed ice and water, stirred
        Thermometer   | 2026-02-20 | thermometer   | ice   |    |    |    | 0.3    | 0.05   |
        """;
  }
}
