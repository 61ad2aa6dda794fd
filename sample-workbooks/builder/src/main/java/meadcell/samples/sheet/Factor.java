package meadcell.samples.sheet;

import static meadcell.samples.sheet.Field.of;

import meadcell.catalogue.Quantity;

/** What the units switch multiplies by. Exact: the definitions of the US units. */
public enum Factor {
  /** In US gallons of 231 in³. */
  LITRE("1/3.785411784"),
  /** In avoirdupois pounds. */
  KILOGRAM("1/0.45359237"),
  /** In inches. */
  CENTIMETRE("1/2.54"),
  /** In square feet. */
  SQUAREMETRE("1/0.3048^2"),
  /** In cubic feet. */
  CUBICMETRE("1/0.3048^3"),
  /** In pounds on a square inch. */
  KILOPASCAL("0.64516/(0.45359237*9.80665)"),
  /** A degree Celsius in Fahrenheit. */
  DEGREE("1.8"),
  /** What is then added to a temperature. */
  FREEZING("32");

  private final String us;

  Factor(String us) {
    this.us = us;
  }

  /** The name that formulas use. */
  public String title() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }

  /** Puts the factor under its name on a sheet. */
  public void put(Block block, String note) {
    block.result(title(), of(Quantity.NUMBER, 6), formula(block.isKeeping()), title(), note);
  }

  /** In a book that keeps what is typed in its unit, the way may also be back to metric. */
  private String formula(boolean keeping) {
    String same = this == FREEZING ? "0" : "1";
    String back = this == FREEZING ? "-32/1.8" : "1/(" + us + ")";
    return keeping
        ? "IF((units=\"US\")=(kept=\"US\")," + same + ",IF(units=\"US\"," + us + "," + back + "))"
        : "IF(units=\"US\"," + us + "," + same + ")";
  }
}
