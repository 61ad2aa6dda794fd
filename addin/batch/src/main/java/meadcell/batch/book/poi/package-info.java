/** What the formats that Apache POI reads share. */
package meadcell.batch.book.poi;
