package meadcell.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import meadcell.bottle.Gas;
import meadcell.bottle.Labelling.Carbonation;
import meadcell.catalogue.Refusal;
import meadcell.catalogue.UnitSystem;
import meadcell.catalogue.Words;
import meadcell.property.Between;
import meadcell.property.Property;
import org.junit.jupiter.api.Test;

class DutyTest {
  private static final Gas STILL = new Gas(0, Carbonation.NATURAL, false);
  private static final double GALLON = 3.785411784;
  private static final double TODAY = 46100;

  private static double serial(String date) {
    return ChronoUnit.DAYS.between(LocalDate.of(1899, 12, 30), LocalDate.parse(date));
  }

  private static List<String[]> table(String name) throws IOException {
    try (InputStream in = DutyTest.class.getResourceAsStream("/meadcell/duty/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.split("\t", -1))
          .toList();
    }
  }

  @Test
  void everyRateHasItsDayAndItsSource() throws IOException {
    for (String name : List.of("us-wine.tsv", "us-credit.tsv", "uk-alcohol.tsv")) {
      for (String[] row : table(name)) {
        assertEquals(serial(row[1]), Double.parseDouble(row[0]), name);
        assertTrue(row[row.length - 1].length() > 5, "source in " + name);
      }
    }
    String end = "";
    for (String[] row : table("uk-alcohol.tsv")) {
      assertEquals(serial(row[3]), Double.parseDouble(row[2]));
      if (!end.isEmpty() && !row[3].equals(end)) {
        assertEquals(LocalDate.parse(end).plusDays(1), LocalDate.parse(row[1]), "no gap");
      }
      end = row[3];
    }
  }

  /** However a year's wine is cut into lots, its credit is the same. */
  @Property
  void creditsOfLotsAddUp(
      @Between(min = 0, max = 900_000, decimals = 1) double before,
      @Between(min = 0.1, max = 400_000, decimals = 1) double first,
      @Between(min = 0.1, max = 400_000, decimals = 1) double second) {
    double together = tax(before, first + second).credit();
    double apart = tax(before, first).credit() + tax(before + first, second).credit();
    assertEquals(together, apart, 1e-6 * (1 + together));
    assertTrue(tax(before, first).due() >= 0);
    assertTrue(tax(before, first).credit() <= tax(before, first).gallons() + 1e-6);
  }

  private static Duty.UsTax tax(double beforeGallons, double gallons) {
    return Duty.usa(gallons * GALLON, 14, TODAY, beforeGallons * GALLON, STILL);
  }

  @Property
  void ukStrengthIsCutToTenths(
      @Between(min = 0.5, max = 59.9, decimals = 1) double abv,
      @Between(max = 0.0999) double more) {
    assertEquals(
        Duty.uk(100, abv, TODAY, false, 0).duty(),
        Duty.uk(100, abv + more, TODAY, false, 0).duty(),
        1e-9);
  }

  @Property
  void ukDutyGoesWithTheAlcohol(
      @Between(min = 1, max = 10_000, decimals = 1) double litres,
      @Between(min = 8.5, max = 22, decimals = 1) double abv) {
    Duty.UkDuty lot = Duty.uk(litres, abv, TODAY, false, 0);
    assertEquals(litres * abv / 100, lot.alcoholL(), 1e-9);
    assertEquals(
        lot.duty(), Duty.ownRate(litres, abv, lot.rate(), Duty.Basis.LITRE_OF_ALCOHOL), 1e-6);
    assertEquals(2 * lot.duty(), Duty.uk(2 * litres, abv, TODAY, false, 0).duty(), 1e-6);
  }

  private static String refused(Runnable call) {
    return assertThrows(Refusal.class, call::run).getMessage();
  }

  @Test
  void daysOutsideTheTablesAreRefused() {
    double start = serial("2023-08-01");
    double end = serial("2027-01-31");
    assertEquals(28.5, Duty.uk(1, 12, start, false, 0).rate());
    assertEquals(30.62, Duty.uk(1, 12, end, false, 0).rate());
    assertEquals(30.62, Duty.uk(1, 12, end + 0.99, false, 0).rate());
    assertEquals(
        "day is 2023-07-31; the rates known here begin on 2023-08-01. Take the rate from the law of"
            + " that day and use DUTY.OWNRATE.",
        refused(() -> Duty.uk(1, 12, start - 1, false, 0)));
    assertEquals(
        "day is 2027-02-01; the rates known here end on 2027-01-31. Take the rate from the authority"
            + " and use DUTY.OWNRATE.",
        refused(() -> Duty.uk(1, 12, end + 1, false, 0)));
    double us = serial("2018-01-01");
    assertEquals(1.07, Duty.usa(GALLON, 12, us, 0, STILL).tax(), 1e-12);
    assertThrows(Refusal.class, () -> Duty.usa(GALLON, 12, us - 1, 0, STILL));
    assertEquals(1.07, Duty.usa(GALLON, 12, 60_000, 0, STILL).tax(), 1e-12);
  }

  @Test
  void classesAndReliefsEndWhereTheLawSays() {
    assertEquals(3.15, Duty.usa(GALLON, 24, TODAY, 0, STILL).tax(), 1e-12);
    assertEquals(
        "abv is 24.1 % vol; above 24 % vol the law taxes distilled spirits, by another rule.",
        refused(() -> Duty.usa(GALLON, 24.1, TODAY, 0, STILL)));
    assertEquals(19.45, Duty.uk(1, 8.4, TODAY, true, 0).rate());
    String none =
        "abv is 8.5 % vol; draught and small producer reliefs are for drinks below 8.5 % vol only.";
    assertEquals(none, refused(() -> Duty.uk(1, 8.5, TODAY, true, 0)));
    assertEquals(none, refused(() -> Duty.uk(1, 8.5, TODAY, false, 0.01)));
    assertEquals(0, Duty.uk(1, 8.4, TODAY, false, 26.61).rate(), 1e-12);
    assertEquals(
        "relief is 26.62 GBP, more than the rate of 26.61 GBP.",
        refused(() -> Duty.uk(1, 8.4, TODAY, false, 26.62)));
    assertEquals(
        "start is 5; it must be less than production, 5: take the band that production falls in.",
        refused(() -> Duty.ukRelief(5, 5, 49.8, 2.53)));
    assertEquals(9.96, Duty.ukRelief(5.000001, 5, 49.8, 2.53));
  }

  @Test
  void whyNamesTheRateAndItsDay() {
    String us =
        Duty.usa(1000, 13.5, TODAY, 5000, STILL).because().text(UnitSystem.US, Words.ENGLISH);
    assertEquals(
        "Class \"still to 16 % vol\": 1.07 USD a wine gallon, in force since 2018-01-01, text of November"
            + " 2024; 264.2 wine gallons to the nearest tenth, 1320.86 of the year before them.",
        us);
    assertEquals(
        "30.62 GBP für einen Liter reinen Alkohol, in Kraft seit 2026-02-01; 31,5 L davon, nach einer Stärke von 14 % vol.",
        Duty.uk(225, 14, TODAY, false, 0)
            .because()
            .text(UnitSystem.METRIC, Words.in("de"))
            .replace("30,62", "30.62"));
  }
}
