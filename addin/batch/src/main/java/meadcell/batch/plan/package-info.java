/** Plans: what to fill, written by the meadmaker in a small workbook. */
package meadcell.batch.plan;
