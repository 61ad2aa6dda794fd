/** Honey by its moisture: sugar, density, gravity, amounts. */
package meadcell.honey;
