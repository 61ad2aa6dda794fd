package meadcell.batch.draft;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import meadcell.batch.plan.Concept;
import meadcell.catalogue.Unit;

/** The lines about barrels: by drop, by dipstick, by weight, by toppings. */
record Barrels(Lines lines) {
  void barrel() {
    Operand head = lines.any(Concept.HEAD);
    Operand bilge = lines.any(Concept.BILGE);
    Operand length = lines.any(Concept.LENGTH);
    boolean hasSizes = head != null && bilge != null && length != null;
    String sizes = head + "; " + bilge + "; " + length;
    Input drop = lines.column(Concept.DROP);
    if (hasSizes && drop != null && lines.column(Concept.HEADSPACE) == null) {
      Operand stave = lines.any(Concept.STAVE);
      lines.add(
          "Headspace (" + Lines.volume(drop) + ")",
          "BARREL.HEADSPACE("
              + sizes
              + "; "
              + Lines.row(drop)
              + (stave == null ? "" : "; " + stave)
              + ")",
          "0.0",
          "What is missing since it was last topped up full"
              + (stave == null ? "." : "; drop measured from the outside of the bung hole."),
          head,
          bilge,
          length,
          Lines.row(drop),
          stave);
    }
    Input dip = lines.column(Concept.DIP);
    if (hasSizes && dip != null) {
      lines.add(
          "Holds (" + Lines.volume(dip) + ")",
          "BARREL.CONTENTS(" + sizes + "; " + Lines.row(dip) + ")",
          "0.0",
          "Contents of a lying barrel by its dipstick.",
          head,
          bilge,
          length,
          Lines.row(dip));
    }
    byWeight();
    loss(hasSizes ? "BARREL.VOLUME(" + sizes + ")" : null, head, bilge, length);
  }

  private void byWeight() {
    Input gross = lines.column(Concept.GROSS);
    Operand wet = lines.any(Concept.EMPTY);
    Operand tare = lines.any(Concept.TARE);
    Operand density = lines.any(Concept.DENSITY);
    if (gross == null || wet == null && tare == null || density == null) {
      return;
    }
    Operand empty =
        wet != null
            ? wet
            : tare.doubting("the tare must be that of the wet barrel: soaked wood weighs more.");
    lines.add(
        "Weighs (" + (gross.unit() == Unit.POUND ? "gal" : "L") + ")",
        "BARREL.BYWEIGHT(" + Lines.row(gross) + "; " + empty + "; " + density + ")",
        "0.0",
        "Contents by the scale.",
        Lines.row(gross),
        empty,
        density);
  }

  private void loss(String volume, Operand... sizes) {
    Input topped = lines.column(Concept.TOPPED);
    Input day =
        lines.column(Concept.DATE) == null ? lines.column(Concept.DAY) : lines.column(Concept.DATE);
    Operand capacity = lines.label(Concept.CAPACITY);
    boolean isLong = day != null && day.different() > Lines.MOST_SO_FAR;
    if (lines.site().isOfSeveral()
        || isLong
        || topped == null
        || day == null
        || volume == null && capacity == null) {
      return;
    }
    List<Operand> takes = new ArrayList<>(List.of(Lines.row(topped), Lines.row(day)));
    takes.addAll(capacity == null ? Arrays.asList(sizes) : List.of(capacity));
    lines.add(
        "Loss (% a year)",
        "INDEX(BARREL.LOSSRATE("
            + Lines.soFar(day)
            + "; "
            + Lines.soFar(topped)
            + "; "
            + (capacity == null ? volume : capacity)
            + "); 1)",
        "0.0",
        "Loss of a year, from the toppings so far; each must fill to the same mark.",
        takes.toArray(Operand[]::new));
  }
}
