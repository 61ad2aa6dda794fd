/** Formulas as texts, in the ways that people and files write them. Nothing is computed here. */
package meadcell.formula;
