package meadcell.batch.book;

/**
 * A name that a workbook's author gave to cells or to a formula.
 *
 * @param sheet position of the only sheet on which it holds, or {@link #ANYWHERE}
 * @param formula in A1 notation, or null where the name stands for none
 * @param isFunction whether it is called like a function, such as a macro
 */
public record DefinedName(String name, int sheet, String formula, boolean isFunction) {
  public static final int ANYWHERE = -1;
}
