package meadcell.batch.calculation;

/** Which formulas a calculation computes anew; all others stand for their stored results. */
public interface Live {
  boolean isLive(int sheet, int row, int column);
}
