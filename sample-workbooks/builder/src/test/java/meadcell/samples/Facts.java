package meadcell.samples;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** What happened in a cellar, as it is typed into the book's logs. Invented. */
final class Facts {
  /** Volume in litres, or the wet depth of a dip in cm; the other is null. */
  record Move(LocalDate day, String from, String to, Double litres, Double dipCm) {
    Object[] cells() {
      return new Object[] {day, from, to, litres, dipCm};
    }
  }

  record Reading(LocalDate day, String lot, double gravity) {
    Object[] cells() {
      return new Object[] {day, lot, gravity, 20};
    }
  }

  record Analysis(String vessel, LocalDate day, String what, double value) {
    Object[] cells() {
      return new Object[] {vessel, day, what, value};
    }
  }

  record Tasting(LocalDate day, String vessel, String taster, double score) {
    Object[] cells() {
      return new Object[] {day, vessel, taster, score};
    }
  }

  record Addition(LocalDate day, String vessel, String what, double grams) {
    Object[] cells() {
      return new Object[] {day, vessel, what, grams, "g"};
    }
  }

  /** {@code capacity} of what is no cask, else the cask's sizes in cm. */
  record Vessel(String name, String kind, int fillsBefore, Casks.Size size, Double capacity) {
    Object[] cells() {
      return size == null
          ? new Object[] {name, kind, null, null, null, null, null, null, null, capacity}
          : new Object[] {
            name, kind, null, null, null, fillsBefore, size.head(), size.bilge(), size.length()
          };
    }

    boolean isCask() {
      return size != null;
    }
  }

  /** {@code truth} is what its readings were made to be. */
  record Lot(
      String name, LocalDate pitched, double original, double end, LocalDate closed, String truth) {
    Object[] cells() {
      return new Object[] {name, "traditional", pitched, original, end, 20, closed};
    }
  }

  final List<Move> moves = new ArrayList<>();
  final List<Reading> readings = new ArrayList<>();
  final List<Analysis> analyses = new ArrayList<>();
  final List<Tasting> tastings = new ArrayList<>();
  final List<Addition> additions = new ArrayList<>();
  final List<Vessel> vessels = new ArrayList<>();
  final List<Lot> lots = new ArrayList<>();

  void move(LocalDate day, String from, String to, double litres) {
    moves.add(new Move(day, from, to, litres, null));
  }

  void dip(LocalDate day, String cask, double cm) {
    moves.add(new Move(day, "gauge", cask, null, cm));
  }

  Vessel vessel(String name) {
    return vessels.stream().filter(v -> v.name().equals(name)).findFirst().orElseThrow();
  }

  /** Types all of it, cell by cell. */
  void type(CellarFile book) throws Exception {
    for (Vessel vessel : vessels) {
      book.type("Vessels", vessel.cells());
    }
    for (Lot lot : lots) {
      book.type("Lots", lot.cells());
    }
    for (Move move : moves) {
      book.type("Movements", move.cells());
    }
    for (Reading reading : readings) {
      book.type("Readings", reading.cells());
    }
    for (Analysis analysis : analyses) {
      book.type("Analyses", analysis.cells());
    }
    for (Tasting tasting : tastings) {
      book.type("Tastings", tasting.cells());
    }
    for (Addition addition : additions) {
      book.type("Additions", addition.cells());
    }
  }

  /** The same at once. */
  void fill(CellarFile book) throws Exception {
    book.fill("Vessels", vessels.stream().map(Vessel::cells).toList());
    book.fill("Lots", lots.stream().map(Lot::cells).toList());
    book.fill("Movements", moves.stream().map(Move::cells).toList());
    book.fill("Readings", readings.stream().map(Reading::cells).toList());
    book.fill("Analyses", analyses.stream().map(Analysis::cells).toList());
    book.fill("Tastings", tastings.stream().map(Tasting::cells).toList());
    book.fill("Additions", additions.stream().map(Addition::cells).toList());
  }
}
