/** Bottling: counts, label, tax, sweetness, pressure. */
package meadcell.bottle;
