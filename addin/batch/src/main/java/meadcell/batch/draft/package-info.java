/** Drafts plans: reads logs of any layout, writes none of them. */
package meadcell.batch.draft;
