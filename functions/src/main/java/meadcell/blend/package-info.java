/** Blending: shares, strength, plans, and what is in a lot. */
package meadcell.blend;
