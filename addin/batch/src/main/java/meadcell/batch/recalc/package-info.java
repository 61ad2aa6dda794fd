/** Computes again what rests on the catalogue's functions, and only that. */
package meadcell.batch.recalc;
