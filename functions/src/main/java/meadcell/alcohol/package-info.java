/** Strength, extract and sugar left. */
package meadcell.alcohol;
