/** Sulfur dioxide and sorbate. */
package meadcell.sulfite;
