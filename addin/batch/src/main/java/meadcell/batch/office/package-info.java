/** The use of an installed LibreOffice. */
package meadcell.batch.office;
