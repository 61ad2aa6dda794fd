/** Workbooks of today, {@code .xlsx} and {@code .xlsm} (ECMA-376). */
package meadcell.batch.book.xlsx;
