/** What an instrument says, made true: hydrometer and refractometer readings and their scales. */
package meadcell.gravity;
