/** What the formats that are zip packages of XML parts share. */
package meadcell.batch.book.zip;
