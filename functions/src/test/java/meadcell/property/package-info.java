/** Tests of what holds for all arguments. */
package meadcell.property;
