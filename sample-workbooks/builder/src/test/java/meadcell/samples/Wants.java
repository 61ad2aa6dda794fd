package meadcell.samples;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/** What a cellar wants, from what was typed and from what the page says of its rules. */
final class Wants {
  /** The house's rules, as Start has them. */
  record House(
      double limit, double lossPercent, int taste, int analyse, int read, double molecular) {
    static final House AS_SHIPPED = new House(2, 4, 60, 60, 4, 0.5);
  }

  /** {@code now} cannot wait. */
  record Task(LocalDate due, boolean now, String where, String what, String why) {}

  /** Of free SO₂, mg/L; of the mean's limits, 95 of 100. */
  private static final double READING = 2;

  private static final double COVERAGE = 1.96;

  private final Facts facts;
  private final Ledger ledger;
  private final LocalDate today;
  private final House house;
  private final List<Task> tasks = new ArrayList<>();

  private Wants(Facts facts, LocalDate today, House house) {
    this.facts = facts;
    this.today = today;
    this.house = house;
    ledger = new Ledger(facts, today);
  }

  /** All that is due up to a week ahead: first what cannot wait; each the longest due first. */
  static List<Task> of(Facts facts, LocalDate today, House house) {
    Wants wants = new Wants(facts, today, house);
    facts.vessels.stream()
        .filter(vessel -> vessel.isCask() && wants.ledger.holdsAnything(vessel.name()))
        .forEach(wants::cask);
    facts.lots.forEach(wants::ferment);
    return wants.tasks.stream()
        .filter(task -> !task.due().isAfter(today.plusDays(7)))
        .sorted(Comparator.comparing((Task task) -> !task.now()).thenComparing(Task::due))
        .toList();
  }

  private void cask(Facts.Vessel cask) {
    String name = cask.name();
    LocalDate since = ledger.since(name);
    double full = cask.size().full();
    double space = full - ledger.litres(name);
    LocalDate touched =
        facts.moves.stream()
            .filter(m -> m.from().equals(name) || m.to().equals(name))
            .map(Facts.Move::day)
            .filter(day -> !day.isAfter(today))
            .max(Comparator.naturalOrder())
            .orElseThrow();
    long days =
        space >= house.limit
            ? 0
            : (long) Math.floor((house.limit - space) / (full * house.lossPercent / 100 / 365.25));
    double lacks =
        space + full * house.lossPercent / 100 * ChronoUnit.DAYS.between(touched, today) / 365.25;
    task(
        touched.plusDays(days),
        lacks >= 2 * house.limit,
        name,
        "top up",
        "lacks %.1f L by the log; with a loss of %.1f %% a year, by now %.1f L",
        space,
        house.lossPercent,
        lacks);

    Optional<LocalDate> tasted =
        last(
            facts.tastings.stream()
                .filter(t -> t.vessel().equals(name))
                .map(Facts.Tasting::day)
                .toList(),
            since);
    task(
        tasted.orElse(since).plusDays(house.taste),
        false,
        name,
        "taste",
        tasted.isEmpty() ? "not tasted since it was filled" : "last tasted %d days ago",
        tasted.map(this::ago).orElse(0L));
    sulfite(cask, since);
  }

  private void sulfite(Facts.Vessel cask, LocalDate since) {
    String name = cask.name();
    LocalDate sulfited =
        last(
                facts.additions.stream()
                    .filter(a -> a.vessel().equals(name) && a.what().matches(".*(sulfite|SO2).*"))
                    .map(Facts.Addition::day)
                    .toList(),
                since)
            .orElse(since);
    List<Facts.Analysis> free = analyses(name, "free SO2", sulfited);
    List<Facts.Analysis> ph = analyses(name, "pH", since);
    if (free.isEmpty() || ph.isEmpty()) {
      task(
          sulfited.plusDays(14),
          false,
          name,
          "analyse",
          free.isEmpty()
              ? "no free SO2 since the last filling or sulfite"
              : "no pH since it was filled");
    }
    if (free.isEmpty()) {
      return;
    }
    LocalDate read =
        free.stream().map(Facts.Analysis::day).max(Comparator.naturalOrder()).orElseThrow();
    if (ph.isEmpty()) {
      return;
    }
    task(
        read.plusDays(house.analyse),
        false,
        name,
        "analyse",
        "last analysed %d days ago",
        ago(read));
    double found = mean(free, read);
    LocalDate phDay =
        ph.stream().map(Facts.Analysis::day).max(Comparator.naturalOrder()).orElseThrow();
    double acidity = mean(ph, phDay);
    // 1.81: pK of sulfurous acid in dilute water
    double need = house.molecular * (1 + Math.pow(10, acidity - 1.81));
    OptionalDouble earliest =
        found <= need
            ? OptionalDouble.of(CellarFile.serial(read))
            : earliest(free, need, cask.size());
    if (earliest.isPresent()) {
      LocalDate due = LocalDate.ofEpochDay((long) Math.floor(earliest.getAsDouble()) - 25569);
      task(
          due,
          !due.isAfter(today),
          name,
          "sulfite",
          "free SO2 was %.0f mg/L %d days ago, and %.0f are needed at pH %.2f",
          found,
          ago(read),
          need,
          acidity);
    }
  }

  /** As page Today says: from readings if they surely fall, else from oxygen. */
  private static OptionalDouble earliest(List<Facts.Analysis> free, double need, Casks.Size size) {
    double[] day = free.stream().mapToDouble(a -> CellarFile.serial(a.day())).toArray();
    double[] value = free.stream().mapToDouble(Facts.Analysis::value).toArray();
    double first = java.util.Arrays.stream(day).min().orElseThrow();
    if (java.util.Arrays.stream(day).distinct().count() > 1) {
      double[] plain = new double[day.length];
      double[] logs = new double[day.length];
      double[] spread = new double[day.length];
      double[] logSpread = new double[day.length];
      for (int i = 0; i < day.length; i++) {
        plain[i] = value[i];
        logs[i] = Math.log(value[i]);
        spread[i] = READING;
        logSpread[i] = READING / value[i];
      }
      Band amount = Band.of(day, plain, spread);
      Band share = Band.of(day, logs, logSpread);
      if (amount.falls && share.falls) {
        return OptionalDouble.of(
            Math.min(down(amount.lower, need, first), down(share.lower, Math.log(need), first)));
      }
    }
    double mean = java.util.Arrays.stream(value).average().orElseThrow();
    double from = java.util.Arrays.stream(day).average().orElseThrow();
    if (mean < need) {
      return OptionalDouble.empty();
    }
    // 10 mg/L of oxygen a year in 225 L, of which a mg takes 2.83 mg of SO2
    double reference = new Casks.Size(50.1, 63.6, 81.1).woodPerLitre();
    double perDay = 2.83 * 10 * size.woodPerLitre() / reference / 365.25;
    double span = (mean - need) / perDay;
    double factor = Math.exp(Math.hypot(Math.log(2), Math.log(Math.sqrt(2))));
    double u = COVERAGE * READING / Math.sqrt(value.length) / perDay;
    return OptionalDouble.of(Math.max(from, from + span - Math.hypot(span * (1 - 1 / factor), u)));
  }

  /** A straight line by the normal equations, and 1.96 standard uncertainties below it. */
  private record Band(boolean falls, DoubleUnaryOperator lower) {
    static Band of(double[] x, double[] y, double[] u) {
      double origin = x[0];
      double s = 0;
      double sx = 0;
      double sy = 0;
      double sxx = 0;
      double sxy = 0;
      for (int i = 0; i < x.length; i++) {
        double w = 1 / (u[i] * u[i]);
        double t = x[i] - origin;
        s += w;
        sx += w * t;
        sy += w * y[i];
        sxx += w * t * t;
        sxy += w * t * y[i];
      }
      double det = s * sxx - sx * sx;
      double slope = (s * sxy - sx * sy) / det;
      double start = (sxx * sy - sx * sxy) / det;
      double chi = 0;
      for (int i = 0; i < x.length; i++) {
        double off = (y[i] - start - slope * (x[i] - origin)) / u[i];
        chi += off * off;
      }
      double scatter = x.length > 2 ? Math.max(1, Math.sqrt(chi / (x.length - 2))) : 1;
      double a = sxx / det;
      double b = -sx / det;
      double c = s / det;
      return new Band(
          slope + COVERAGE * scatter * Math.sqrt(c) < 0,
          at -> {
            double t = at - origin;
            return start + slope * t - COVERAGE * scatter * Math.sqrt(a + 2 * b * t + c * t * t);
          });
    }
  }

  private static double down(DoubleUnaryOperator course, double to, double first) {
    double day = first;
    for (double step = 100; step > 1e-4; step /= 10) {
      while (course.applyAsDouble(day + step) > to) {
        day += step;
      }
    }
    return day;
  }

  private void ferment(Facts.Lot lot) {
    if (lot.pitched() == null
        || lot.pitched().isAfter(today)
        || lot.closed() != null && !lot.closed().isAfter(today)) {
      return;
    }
    Optional<LocalDate> read =
        last(
            facts.readings.stream()
                .filter(r -> r.lot().equals(lot.name()))
                .map(Facts.Reading::day)
                .toList(),
            LocalDate.MIN);
    if (read.isEmpty()) {
      task(lot.pitched(), false, lot.name(), "read", "no reading yet");
      return;
    }
    boolean rests = lot.truth().equals("finished") || lot.truth().equals("stalled");
    task(
        rests ? read.get() : read.get().plusDays(house.read),
        lot.truth().equals("stalled"),
        lot.name(),
        switch (lot.truth()) {
          case "finished" -> "rack or close";
          case "stalled" -> "wake or decide";
          default -> "read";
        },
        "last read %d days ago: " + lot.truth(),
        ago(read.get()));
  }

  private List<Facts.Analysis> analyses(String vessel, String what, LocalDate from) {
    return facts.analyses.stream()
        .filter(a -> a.vessel().equals(vessel) && a.what().equals(what))
        .filter(a -> !a.day().isBefore(from) && !a.day().isAfter(today))
        .toList();
  }

  private static double mean(List<Facts.Analysis> found, LocalDate day) {
    return found.stream()
        .filter(a -> a.day().equals(day))
        .mapToDouble(Facts.Analysis::value)
        .average()
        .orElseThrow();
  }

  private Optional<LocalDate> last(List<LocalDate> days, LocalDate from) {
    return days.stream()
        .filter(day -> !day.isBefore(from) && !day.isAfter(today))
        .max(Comparator.naturalOrder());
  }

  private long ago(LocalDate day) {
    return ChronoUnit.DAYS.between(day, today);
  }

  private void task(
      LocalDate due, boolean now, String where, String what, String why, Object... values) {
    String reason = String.format(Locale.ROOT, why, values);
    tasks.add(new Task(due, now, where, what, now ? "Cannot wait: " + reason : reason));
  }
}
