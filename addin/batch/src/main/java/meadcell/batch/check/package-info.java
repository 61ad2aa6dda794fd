/** Looks for what a workbook's owner should see. */
package meadcell.batch.check;
