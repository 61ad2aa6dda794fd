package meadcell.samples;

import java.time.LocalDate;

/**
 * A season of sixty casks, invented: three liquids of two tanks, a dip and a topping every forty
 * days, a cask sold, one emptied and filled anew, a blend, tastings, analyses, ferments.
 */
final class Season {
  static final LocalDate FILLED = LocalDate.of(2025, 5, 23);
  static final LocalDate TODAY = FILLED.plusDays(250);
  static final int CASKS = 60;
  static final String REFILLED = name(20);
  static final String SOLD = name(21);
  static final String[] BLENDED = {name(3), name(10), name(5)};

  private static final int VISITS = 6;
  private static final int EVERY = 40;
  private static final String HEATHER = "Tank H";
  private static final String BOCHET = "Tank B";

  private final Facts facts = new Facts();

  private Season() {}

  static String name(int cask) {
    return "No. " + (100 + cask);
  }

  static Facts facts() {
    Season season = new Season();
    season.registers();
    for (int i = 0; i < CASKS; i++) {
      season.cask(i);
    }
    season.blend();
    season.ferments();
    return season.facts;
  }

  private static LocalDate day(int after) {
    return FILLED.plusDays(after);
  }

  private void registers() {
    tank(HEATHER, "tank", 20_000.0);
    tank(BOCHET, "tank", 12_000.0);
    tank("Rest", "tank", 600.0);
    for (int i = 0; i < CASKS; i++) {
      facts.vessels.add(
          new Facts.Vessel(name(i), "cask", i % 4, new Casks.Size(50, 62, 75 + i % 9), null));
    }
    tank("Blend", "tank", 400.0);
    tank("Shore", "bottles", null);
    lot("Heather", -90, 1.106, 0.996, -30, "closed");
    lot("Bochet", -80, 1.128, 1.024, -10, "closed");
    for (String tank : new String[] {HEATHER, BOCHET}) {
      facts.analyses.add(new Facts.Analysis(tank, day(0), "strength", 14.1));
    }
    facts.move(day(0), "Heather", HEATHER, 18_000);
    facts.move(day(0), "Bochet", BOCHET, 9_000);
  }

  private void tank(String name, String kind, Double litres) {
    facts.vessels.add(new Facts.Vessel(name, kind, 0, null, litres));
  }

  private void lot(
      String name, int pitched, double original, double end, Integer closed, String truth) {
    facts.lots.add(
        new Facts.Lot(
            name, day(pitched), original, end, closed == null ? null : day(closed), truth));
  }

  private void cask(int i) {
    Casks.Size size = facts.vessel(name(i)).size();
    double full = tenths(size.full());
    String own = i % 3 == 2 ? BOCHET : HEATHER;
    int filled = i < 20 ? 0 : 30;
    facts.move(day(filled), own, name(i), full - 0.5);
    double held = full - 0.5;
    for (int visit = 1; visit <= VISITS; visit++) {
      boolean emptied = i == 20 || i == 21;
      if (emptied && visit == 3) {
        // by the flow meter; the dregs are found gone
        facts.move(day(100), name(i), "Rest", tenths(held - 0.3));
        facts.move(day(100), "gauge", name(i), 0);
        if (i == 21) {
          break;
        }
        own = HEATHER;
        facts.move(day(130), own, name(i), full - 0.5);
        held = full - 0.5;
        continue;
      }
      double dip = size.bilge() - 3 - 0.1 * ((i + visit) % 6);
      facts.dip(day(EVERY * visit), name(i), dip);
      double found = size.contents(dip);
      double topped = i % 5 == 0 && visit == VISITS ? 0.1 : tenths(full - 0.5 - found);
      String from = i % 7 == 3 && visit == 4 ? (own.equals(HEATHER) ? BOCHET : HEATHER) : own;
      facts.move(day(EVERY * visit), from, name(i), topped);
      held = found + topped;
    }
    tasted(i);
    analysed(i);
  }

  private void tasted(int i) {
    if (i % 4 == 0) {
      panel(i, 60);
    }
    if (i % 8 == 0) {
      panel(i, 180);
    }
    if (i == 20) {
      panel(i, 205);
    }
  }

  private void panel(int i, int after) {
    for (int taster = 0; taster < 3; taster++) {
      facts.tastings.add(
          new Facts.Tasting(
              day(after),
              name(i),
              "ABC".substring(taster, taster + 1),
              11 + (i + after + taster) % 7 * 0.5));
    }
  }

  private void analysed(int i) {
    analysis(i, 45, "free SO2", 30 - i % 5);
    analysis(i, 45, "pH", 3.40 + 0.02 * (i % 10));
    if (i % 10 == 0) {
      facts.additions.add(
          new Facts.Addition(day(45), name(i), "potassium metabisulfite", 8 + i % 3));
    }
    if (i % 12 == 1) { // surely falling
      analysis(i, 85, "free SO2", 26 - i % 5);
      analysis(i, 125, "free SO2", 21 - i % 5);
      analysis(i, 165, "free SO2", 16 - i % 5);
    } else if (i % 2 == 0) {
      analysis(i, 150, "free SO2", 70 + i % 5);
    }
    if (i == 24) {
      facts.additions.add(new Facts.Addition(day(140), name(i), "SO2 5 %", 9));
    }
    if (i == 27) { // voids what was read before
      facts.additions.add(new Facts.Addition(day(190), name(i), "potassium metabisulfite", 9));
    }
  }

  private void analysis(int i, int after, String what, double value) {
    facts.analyses.add(new Facts.Analysis(name(i), day(after), what, value));
  }

  private void blend() {
    for (String cask : BLENDED) {
      facts.move(day(205), cask, "Blend", 80);
    }
    facts.move(day(205), BOCHET, "Blend", 60);
    facts.move(day(206), "Blend", "loss", 6);
    for (String cask : BLENDED) {
      facts.move(day(207), HEATHER, cask, 80);
    }
    facts.move(day(220), "Blend", "Shore", 150);
  }

  private void ferments() {
    ferment("Down", 236, 248, 2, 1.100, 0.998, 0.998, "falling");
    ferment("Done", 170, 246, 4, 1.100, 0.998, 0.998, "finished");
    ferment("Stuck", 175, 247, 4, 1.110, 1.045, 1.005, "stalled");
    ferment("Young", 247, 247, 1, 1.104, 0.998, 0.998, "cannot tell");
    lot("Unread", 240, 1.100, 0.998, null, "");
    lot("Ahead", 260, 1.100, 0.998, null, "");
    lot("Over", 120, 1.100, 0.998, 200, "closed");
  }

  /** A logistic fall, read to half a thousandth. */
  private void ferment(
      String name, int from, int to, int every, double og, double ends, double end, String truth) {
    lot(name, from, og, end, null, truth);
    for (int after = from; after <= to; after += every) {
      double gravity = ends + (og - ends) / (1 + Math.exp(0.3 * (after - from - 12)));
      facts.readings.add(new Facts.Reading(day(after), name, Math.round(gravity * 2000) / 2000.0));
    }
  }

  private static double tenths(double litres) {
    return Math.round(litres * 10) / 10.0;
  }
}
