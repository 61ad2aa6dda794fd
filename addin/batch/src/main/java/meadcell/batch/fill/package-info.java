/** Fills computed columns and cells of existing workbooks by a plan. */
package meadcell.batch.fill;
