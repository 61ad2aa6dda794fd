package meadcell.calc;

import java.util.Locale;

/** How a family is named in the office's component model: the only link to generated code. */
public final class UnoNames {
  /** Module of the generated interfaces, which is their Java package too. */
  public static final String MODULE = "meadcell.uno";

  private static final String IMPLEMENTATION = "meadcell.calc.";

  private UnoNames() {}

  /** Simple name of the interface that declares a family's functions: {@code XBarrel}. */
  public static String interfaceOf(String family) {
    return "X" + family.charAt(0) + family.substring(1).toLowerCase(Locale.ROOT);
  }

  /** Name under which a family's service is registered. The service itself is the bare family. */
  public static String implementationOf(String family) {
    return IMPLEMENTATION + family;
  }

  /** The family of a registered name. */
  static String familyOf(String implementation) {
    return implementation.substring(IMPLEMENTATION.length());
  }
}
