/** What a mead maker meets in law, said once for all functions it touches. */
package meadcell.law;
