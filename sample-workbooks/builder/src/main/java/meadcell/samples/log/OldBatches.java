package meadcell.samples.log;

import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import meadcell.catalogue.Refusal;

/**
 * The sheets of the old log's batches. Readings follow a logistic fall, seen through a hydrometer
 * at the cellar's temperature, with noise.
 */
final class OldBatches {
  /** One batch of one season, and how its sheet was kept. */
  private record Batch(
      String sheet,
      String title,
      LocalDate pitched,
      double litres,
      double honeyKg,
      double moisture,
      double original,
      double last,
      double halfway,
      double perDay,
      Habit habit) {}

  /** The headers and units of one season's sheets. */
  private record Habit(
      String date, String gravity, String temperature, boolean fahrenheit, String note) {}

  private static final Habit FIRST_SEASON =
      new Habit("Date", "Hydrometer", "Temp", false, "Remarks");
  private static final Habit SECOND_SEASON = new Habit("Date", "SG", "Temp (°C)", false, "Remarks");
  private static final Habit THIRD_SEASON = new Habit("Day", "Reading", "Temp (°F)", true, "Notes");

  private static final List<Batch> BATCHES =
      List.of(
          batch(
              "HH-22",
              "Heather honey, traditional",
              "2022-10-03",
              620,
              188,
              18.6,
              1.012,
              21,
              FIRST_SEASON),
          batch(
              "SC-22", "Sour cherry melomel", "2022-10-19", 400, 96, 17.4, 1.004, 16, FIRST_SEASON),
          batch(
              "HH-23",
              "Heather honey, traditional",
              "2023-09-25",
              640,
              196,
              18.9,
              1.010,
              23,
              SECOND_SEASON),
          batch(
              "BB-23", "Buckwheat bochet", "2023-11-06", 300, 108, 16.8, 1.028, 26, SECOND_SEASON),
          batch(
              "SC-24",
              "Sour cherry melomel",
              "2024-10-14",
              420,
              101,
              17.4,
              1.003,
              15,
              SECOND_SEASON),
          batch(
              "BB-24", "Buckwheat bochet", "2024-11-04", 300, 110, 17.0, 1.030, 27, THIRD_SEASON));

  private static Batch batch(
      String sheet,
      String title,
      String pitched,
      double litres,
      double honeyKg,
      double moisture,
      double last,
      double halfway,
      Habit habit) {
    double honey = OldLog.number("HONEY.GRAVITY", litres, honeyKg, moisture);
    // cherry juice and the caramel of a bochet: a little above or below what the honey gives
    double shift = title.startsWith("Sour") ? 0.007 : title.startsWith("Buck") ? -0.004 : 0;
    double original = Math.round((honey + shift) * 1000) / 1000.0;
    return new Batch(
        sheet,
        title,
        LocalDate.parse(pitched),
        litres,
        honeyKg,
        moisture,
        original,
        last,
        halfway,
        0.19,
        habit);
  }

  private OldBatches() {}

  static void write(LogWriter log) {
    BATCHES.forEach(batch -> write(log, batch));
  }

  private static void write(LogWriter log, Batch batch) {
    Habit habit = batch.habit;
    Random chance = new Random(batch.sheet.hashCode());
    log.sheet(batch.sheet, 14, 12, 12, 34);
    log.title(batch.title);
    log.blank();
    log.label("Batch", batch.sheet);
    log.label("Pitched", batch.pitched);
    log.label("Volume (L)", batch.litres);
    log.label("Honey (kg)", batch.honeyKg);
    log.label("Moisture %", batch.moisture);
    log.label("OG", batch.original);
    if (batch.sheet.startsWith("HH")) {
      log.label("OG by the honey", null);
    }
    log.blank();
    log.header(habit.date, habit.gravity, habit.temperature, habit.note);
    int reading = 0;
    for (int day = 0; day <= 150; day += step(day, chance)) {
      double temperature = cellarTemperature(batch.pitched.plusDays(day), day, chance);
      double shown = reading(batch, trueGravity(batch, day), temperature, chance);
      if (day > 40 && reading % 6 == 0) {
        log.blank();
      }
      Object when = habit.date.equals("Day") ? (Object) (double) day : batch.pitched.plusDays(day);
      log.row(
          when,
          asTyped(batch.sheet, reading, shown),
          temperatureAsTyped(batch, reading, temperature),
          remark(batch, reading, day));
      reading++;
    }
  }

  private static int step(int day, Random chance) {
    return day < 30
        ? 1 + chance.nextInt(3)
        : day < 70 ? 5 + chance.nextInt(4) : 12 + chance.nextInt(9);
  }

  /** A cool cellar: warm from the ferment at first, then the season's own. */
  private static double cellarTemperature(LocalDate date, int day, Random chance) {
    double season = 12.5 + 4 * Math.cos((date.getDayOfYear() - 200) / 365.0 * 2 * Math.PI);
    double ferment = 6.5 * Math.exp(-Math.pow((day - 12) / 14.0, 2));
    return Math.round(2 * (season + ferment + 0.4 * chance.nextGaussian())) / 2.0;
  }

  private static double trueGravity(Batch batch, double day) {
    DoubleUnaryOperator fall = t -> 1 / (1 + Math.exp(batch.perDay * (t - batch.halfway)));
    double left = fall.applyAsDouble(day) / fall.applyAsDouble(0);
    return batch.last + (batch.original - batch.last) * left;
  }

  /** What the hydrometer shows at that temperature, to the thousandth or half of it. */
  private static double reading(Batch batch, double gravity, double temperature, Random chance) {
    double low = gravity - 0.02;
    double high = gravity + 0.02;
    while (high - low > 1e-7) {
      double middle = (low + high) / 2;
      if (isTooHigh(batch, middle, temperature, gravity)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    boolean atPitching = gravity == batch.original; // its reading is where OG comes from
    double noise = atPitching ? -0.00025 : 0.0003 * chance.nextGaussian();
    return Math.round((low + noise) * 2000) / 2000.0;
  }

  private static boolean isTooHigh(
      Batch batch, double reading, double temperature, double gravity) {
    try {
      return OldLog.number("GRAVITY.CORRECT", reading, temperature, null, batch.original) > gravity;
    } catch (Refusal aboveTheOriginal) {
      return true;
    }
  }

  private static Object asTyped(String sheet, int reading, double shown) {
    String text = String.format(java.util.Locale.ROOT, "%.3f", shown);
    return switch (sheet + " " + reading) {
      case "HH-22 4" -> text + " sg";
      case "HH-22 11" -> "~" + text;
      case "SC-22 3" -> text.replace('.', ',');
      case "SC-22 9" -> text + "?";
      case "HH-23 6" -> (double) Math.round(shown * 1000);
      case "HH-23 13" -> text + "-" + String.format(java.util.Locale.ROOT, "%.3f", shown + 0.002);
      case "BB-23 8" -> "not read";
      case "BB-24 5" -> text + " SG";
      default -> shown;
    };
  }

  private static Object temperatureAsTyped(Batch batch, int reading, double celsius) {
    double shown = batch.habit.fahrenheit ? Math.round(celsius * 1.8 + 32) : celsius;
    return switch (batch.sheet + " " + reading) {
      case "HH-22 7" -> shown + " C";
      case "SC-22 6" -> Math.round(celsius * 1.8 + 32) + "F";
      case "HH-23 9" -> String.valueOf(shown).replace('.', ',');
      case "BB-23 4" -> null;
      default -> shown;
    };
  }

  private static String remark(Batch batch, int reading, int day) {
    return switch (reading) {
      case 0 -> "pitched";
      case 2 -> "lively";
      case 5 -> batch.sheet.startsWith("SC") ? "pressed cap down twice" : "fed";
      case 10 -> "slowing";
      default -> day > 90 && day < 105 ? "racked off the lees" : null;
    };
  }
}
