/** What is in which vessel, since when, and what was lost. */
package meadcell.vessel;
