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
    ZERO_OR_BLANK("It is 0 or a blank cell."),
    THOUSANDFOLD("Did you mean {meant}?"),
    BRIX_FOR_GRAVITY("Is it °Brix? Use GRAVITY.FROMBRIX."),
    PERCENT_FORMAT("A cell formatted as percent holds a hundredth: give {meant}."),
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
