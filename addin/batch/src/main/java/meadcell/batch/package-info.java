/** The command line tool: fills, recalculates and checks workbooks; holds no formula of its own. */
package meadcell.batch;
