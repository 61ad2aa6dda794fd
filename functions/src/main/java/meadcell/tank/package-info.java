/** Upright tanks. */
package meadcell.tank;
