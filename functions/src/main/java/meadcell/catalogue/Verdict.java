package meadcell.catalogue;

/**
 * A word that judges, and what it rests on: a cell shows the word, {@code CELLAR.WHY} says the
 * rest.
 *
 * @param word as the function's help lists it
 * @param because the numbers behind it
 */
public record Verdict(String word, Statement because) implements Explained {}
