/** The proof as a document: every check value, what came out, and on which machine. */
package meadcell.batch.proof;
