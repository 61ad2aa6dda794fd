/** The old log that the batch tool is tried on, and its plan. */
package meadcell.samples.log;
