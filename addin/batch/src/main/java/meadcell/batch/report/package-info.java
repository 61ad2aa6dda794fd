/** What happened to a workbook, cell by cell. */
package meadcell.batch.report;
