/** Lists of text, {@code .csv}: read into a workbook, and written as one. */
package meadcell.batch.book.csv;
