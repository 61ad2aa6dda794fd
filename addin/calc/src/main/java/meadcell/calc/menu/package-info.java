/**
 * The menu. It is compiled for Java 8 and lies in a jar of its own, so that it can still say what
 * is wrong where Java is too old for the functions; everything that needs them goes through {@link
 * meadcell.calc.menu.Functions}.
 */
package meadcell.calc.menu;
