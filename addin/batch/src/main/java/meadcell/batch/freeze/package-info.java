/** Puts results in the place of our formulas. */
package meadcell.batch.freeze;
