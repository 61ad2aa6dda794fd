/** Puts results in the place of our formulas, and the formulas back. */
package meadcell.batch.freeze;
