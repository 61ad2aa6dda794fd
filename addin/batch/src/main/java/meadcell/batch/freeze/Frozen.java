package meadcell.batch.freeze;

import java.util.List;
import meadcell.batch.book.Place;
import meadcell.batch.book.Value;

/**
 * A formula that was frozen, and what its cell is to be known by.
 *
 * @param array the cells that the formula fills as one, such as {@code B2:B9}; empty if only its
 *     own
 * @param gave what it gave when it was frozen
 * @param reads the cells that it reads, by their addresses
 * @param labels of the cells that it reads
 */
record Frozen(
    String sheet,
    Place place,
    String formula,
    String array,
    Value gave,
    Label row,
    Label column,
    String reads,
    List<Label> labels) {}
