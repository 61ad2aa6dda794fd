package meadcell.batch.draft;

import meadcell.batch.plan.Concept;

/** The lines about sulfite and honey, and those of labelled cells without a table. */
record Others(Lines lines) {
  void sulfite() {
    Input free = lines.column(Concept.FREE_SO2);
    Operand ph = lines.any(Concept.PH);
    if (free != null && ph != null) {
      lines.add(
          "Molecular SO2 (mg/L)",
          "SULFITE.MOLECULAR(" + Lines.row(free) + "; " + ph + ")",
          "0.00",
          "The part of the free SO2 that holds microbes down.",
          Lines.row(free),
          ph);
    }
  }

  void honey() {
    Input volume = lines.column(Concept.VOLUME);
    Input honey = lines.column(Concept.HONEY);
    if (volume != null && honey != null) {
      honey(
          Lines.row(volume),
          Lines.row(honey),
          lines.column(Concept.MOISTURE) == null
              ? lines.label(Concept.MOISTURE)
              : Lines.row(lines.column(Concept.MOISTURE)));
    }
  }

  private void honey(Operand volume, Operand honey, Operand moisture) {
    Operand water =
        moisture != null
            ? moisture
            : Operand.guess("", "the honey's moisture is not there; it is taken as 17.2 %.");
    lines.add(
        "OG by the honey",
        "HONEY.GRAVITY("
            + volume
            + "; "
            + honey
            + (water.text().isEmpty() ? "" : "; " + water)
            + ")",
        "0.000",
        "What the honey alone gives, to compare with the reading.",
        volume,
        honey,
        water);
  }

  /** Labelled cells without a table. */
  void block() {
    Operand original = lines.label(Concept.ORIGINAL);
    Operand end = lines.label(Concept.FINAL);
    if (original != null && end != null) {
      lines.add(
          "ABV (% vol)",
          "ALCOHOL.ABV(" + original + "; " + end + ")",
          "0.0",
          "Alcohol from original and final gravity.",
          original,
          end);
    }
    Operand volume = lines.label(Concept.VOLUME);
    Operand honey = lines.label(Concept.HONEY);
    if (volume != null && honey != null) {
      honey(volume, honey, lines.label(Concept.MOISTURE));
    }
    Operand free = lines.label(Concept.FREE_SO2);
    Operand ph = lines.label(Concept.PH);
    if (free != null && ph != null) {
      lines.add(
          "Molecular SO2 (mg/L)",
          "SULFITE.MOLECULAR(" + free + "; " + ph + ")",
          "0.00",
          "The part of the free SO2 that holds microbes down.",
          free,
          ph);
    }
  }
}
