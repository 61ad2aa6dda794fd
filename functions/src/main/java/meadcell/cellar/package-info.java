/**
 * Functions about the functions: version, reasons for a refusal, sources, whole columns at once.
 */
package meadcell.cellar;
