/** The use of an installed LibreOffice from outside: it runs, converts, computes, and ends. */
package meadcell.office;
