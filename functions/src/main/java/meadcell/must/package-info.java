/** The must before it ferments: recipe, fruit, nutrients, acid. */
package meadcell.must;
