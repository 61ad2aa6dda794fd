/** The catalogue's functions inside Apache POI's formula evaluator. */
package meadcell.batch.calculation;
