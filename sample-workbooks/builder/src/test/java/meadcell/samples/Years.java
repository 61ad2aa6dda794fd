package meadcell.samples;

import java.time.LocalDate;

/** Three seasons of sixty casks and forty lots, invented. */
final class Years {
  static final LocalDate FIRST = LocalDate.of(2023, 9, 1);
  static final LocalDate TODAY = FIRST.plusDays(2 * 365 + 320);
  private static final int CASKS = 60;
  private static final int LOTS = 40;
  private static final int TANKS = 13;

  private final Facts facts = new Facts();

  private Years() {}

  static Facts facts() {
    Years years = new Years();
    for (int tank = 0; tank <= TANKS; tank++) {
      years.facts.vessels.add(new Facts.Vessel("T" + tank, "tank", 0, null, 2500.0));
    }
    years.facts.vessels.add(new Facts.Vessel("Store", "tank", 0, null, 16_000.0));
    for (int i = 0; i < CASKS; i++) {
      Casks.Size size = new Casks.Size(50 + i % 3, 62, 75 + i % 9);
      years.facts.vessels.add(new Facts.Vessel(Season.name(i), "cask", 0, size, null));
    }
    for (int season = 0; season < 3; season++) {
      years.facts.vessels.add(new Facts.Vessel("Shore " + season, "bottles", 0, null, null));
      years.season(season);
    }
    return years.facts;
  }

  private void season(int season) {
    LocalDate start = FIRST.plusDays(365L * season);
    for (int lot = TANKS * season; lot < (season == 2 ? LOTS : TANKS * (season + 1)); lot++) {
      lot(lot, lot - TANKS * season, start.plusDays(lot % TANKS));
    }
    for (int i = 0; i < CASKS; i++) {
      cask(i, start.plusDays(30), season == 2);
    }
    if (season < 2) {
      for (int tank = 0; tank < TANKS; tank++) {
        facts.move(start.plusDays(355), "gauge", "T" + tank, 0);
      }
      facts.move(start.plusDays(360), "Store", "Shore " + season, 12_000);
      facts.move(start.plusDays(361), "gauge", "Store", 0);
    }
  }

  private void lot(int lot, int tank, LocalDate pitched) {
    String name = "Lot " + (10 + lot);
    LocalDate closed = pitched.plusDays(60);
    facts.lots.add(
        new Facts.Lot(name, pitched, 1.1, 0.998, closed.isAfter(TODAY) ? null : closed, "closed"));
    facts.move(pitched, name, "T" + tank, 2000 + lot);
    for (int day = 0; day < 48; day += 4) {
      double gravity = 0.998 + 0.102 / (1 + Math.exp(0.3 * (day - 12)));
      facts.readings.add(
          new Facts.Reading(pitched.plusDays(day), name, Math.round(gravity * 2000) / 2000.0));
    }
  }

  private void cask(int i, LocalDate filled, boolean last) {
    String name = Season.name(i);
    String tank = "T" + i % TANKS;
    Casks.Size size = facts.vessel(name).size();
    double full = Math.round(size.full() * 10) / 10.0;
    facts.move(filled, tank, name, full - 0.5);
    double held = full - 0.5;
    for (int visit = 1; visit <= 7; visit++) {
      LocalDate day = filled.plusDays(40L * visit);
      double dip = size.bilge() - 3 - 0.1 * ((i + visit) % 6);
      double topped = Math.round((full - 0.5 - size.contents(dip)) * 10) / 10.0;
      facts.dip(day, name, dip);
      facts.move(day, tank, name, topped);
      held = size.contents(dip) + topped;
    }
    for (int month = 2; month <= 9; month += 7) {
      LocalDate day = filled.plusDays(30L * month);
      facts.analyses.add(new Facts.Analysis(name, day, "free SO2", 40 - i % 7 - month));
      facts.analyses.add(new Facts.Analysis(name, day, "pH", 3.4 + i % 5 * 0.02));
      for (int taster = 0; taster < 3; taster++) {
        facts.tastings.add(
            new Facts.Tasting(day, name, "ABC".substring(taster, taster + 1), 10 + taster));
      }
    }
    if (!last) {
      facts.move(filled.plusDays(320), name, "Store", Math.round(held * 10 - 3) / 10.0);
      facts.move(filled.plusDays(320), "gauge", name, 0);
    }
  }
}
