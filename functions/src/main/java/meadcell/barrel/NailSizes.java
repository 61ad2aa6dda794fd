package meadcell.barrel;

import java.util.Arrays;
import meadcell.catalogue.Refusal;

/** Shanks of nails by penny size. */
final class NailSizes {
  private static final int[] PENNIES = {2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16};

  private static final double[] COMMON_INCHES = {
    0.072, 0.080, 0.099, 0.099, 0.113, 0.113, 0.131, 0.131, 0.148, 0.148, 0.162
  };
  private static final double[] BOX_INCHES = {
    0.067, 0.076, 0.080, 0.080, 0.099, 0.099, 0.113, 0.113, 0.128, 0.128, 0.135
  };
  private static final double[] FINISHING_INCHES = {
    0.058, 0.067, 0.072, 0.072, 0.091, 0.091, 0.099, 0.099, 0.113, 0.113, 0.120
  };

  private static final double MILLIMETRES_PER_INCH = 25.4;

  private NailSizes() {}

  static double shankMm(int penny, Sampling.Nail kind) {
    int size = Arrays.binarySearch(PENNIES, penny);
    if (size < 0) {
      throw new Refusal(BarrelReason.NO_SUCH_NAIL)
          .with("penny", penny)
          .with("sizes", Arrays.stream(PENNIES).boxed().toList());
    }
    double[] inches =
        switch (kind) {
          case COMMON -> COMMON_INCHES;
          case BOX -> BOX_INCHES;
          case FINISHING -> FINISHING_INCHES;
        };
    return inches[size] * MILLIMETRES_PER_INCH;
  }
}
