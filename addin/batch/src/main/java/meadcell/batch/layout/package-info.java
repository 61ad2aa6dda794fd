/** Where tables and labelled cells stand on a sheet, found by what is written, not by address. */
package meadcell.batch.layout;
