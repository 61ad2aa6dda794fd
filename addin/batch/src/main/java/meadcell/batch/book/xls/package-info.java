/** Old binary workbooks, {@code .xls}. */
package meadcell.batch.book.xls;
