/** The barrel: contents, headspace, wood, air and samples. */
package meadcell.barrel;
