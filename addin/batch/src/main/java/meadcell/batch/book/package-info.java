/** Workbooks at the level of cells, whatever their file format. */
package meadcell.batch.book;
