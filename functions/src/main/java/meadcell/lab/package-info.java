/** Titration arithmetic. */
package meadcell.lab;
