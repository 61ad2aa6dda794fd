/** Excise on a lot. */
package meadcell.duty;
