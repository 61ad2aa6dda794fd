/** The log of transfers and its replay: what moved where, what was lost, what came of what. */
package meadcell.transfers;
