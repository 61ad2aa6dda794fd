/** Tasting panels: tests, ranks, scores. */
package meadcell.panel;
