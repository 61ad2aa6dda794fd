/**
 * Makes what people are given: a package to install, a folder to run, guide, samples, checksums.
 */
package meadcell.release;
