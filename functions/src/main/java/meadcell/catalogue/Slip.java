package meadcell.catalogue;

/**
 * What a user most likely did when a value is out of range.
 *
 * @param what the kind of slip
 * @param meant the number that was likely meant; NaN where none can be told
 */
public record Slip(What what, double meant) {

  /** The slips that are recognised. */
  public enum What implements Message {
    /** A blank cell, which arrives as 0. */
    ZERO_OR_BLANK("It is 0 or a blank cell."),
    /** A gravity without its decimal point, 1085 for 1.085. */
    THOUSANDFOLD("Did you mean {meant}?"),
    /** Degrees Brix where a specific gravity is due. */
    BRIX_FOR_GRAVITY("Is it °Brix? Use GRAVITY.FROMBRIX."),
    /** A fraction of 1, as a cell in percent format holds it. */
    PERCENT_FORMAT("A cell formatted as percent holds a hundredth: give {meant}."),
    /** Degrees Fahrenheit where degrees Celsius are due. */
    FAHRENHEIT("Is it °F? Then end the call with \"US\".");

    private final String english;

    What(String english) {
      this.english = english;
    }

    @Override
    public String english() {
      return english;
    }
  }

  static Slip of(What what) {
    return new Slip(what, Double.NaN);
  }
}
