/** One small class per command. */
package meadcell.batch.command;
