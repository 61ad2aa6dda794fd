/** OpenDocument spreadsheets, {@code .ods} (OASIS OpenDocument 1.3). */
package meadcell.batch.book.ods;
