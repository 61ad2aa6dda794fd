/** What the two formats share that Apache POI reads. */
package meadcell.batch.book.poi;
